import { figureValue } from '@core/materials/figure';
import { pricePerKgMinor } from '@core/costing/offers';
import type { ShelfEntry } from '@core/shelf/query';
import type { Reader } from '../database';

interface Row {
  id: string;
  code: string;
  tradeName: string;
  charge: string | null;
  architecture: string | null;
  emulsionType: string | null;
  phaseOfUse: string | null;
  form: string | null;
  consistency: string | null;
  origin: string | null;
  status: string;
  notes: string;
  updatedAt: string;
}

/** Every material of the library as the list shows it: a handful of passes, so that opening stays quick at 100,000. */
export function readShelfEntries(db: Reader): ShelfEntry[] {
  const entries = db
    .all<Row>(
      `SELECT id, code, trade_name AS tradeName, charge, architecture, emulsion_type AS emulsionType,
         phase_of_use AS phaseOfUse, form, consistency, origin, status, notes, updated_at AS updatedAt FROM material`,
    )
    .map((row): ShelfEntry => ({
      ...row,
      inci: '',
      supplier: '',
      suppliers: [],
      functions: [],
      keepFrom: [],
      hlb: null,
      requiredHlbOw: null,
      meltingPoint: null,
      pricePerKg: null,
      currency: null,
    }));
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  addComposition(db, byId);
  addWords(db, byId);
  addFigures(db, byId);
  addOffers(db, byId);
  return entries;
}

function addComposition(db: Reader, byId: Map<string, ShelfEntry>): void {
  const parts = db.all<{ id: string; inci: string }>(
    'SELECT material_id AS id, inci FROM material_inci ORDER BY material_id, high_ppm + low_ppm DESC, position',
  );
  for (const { id, inci } of parts) {
    const entry = byId.get(id);
    if (entry) entry.inci = entry.inci ? `${entry.inci}, ${inci}` : inci;
  }
}

function addWords(db: Reader, byId: Map<string, ShelfEntry>): void {
  const rows = db.all<{ id: string; list: string; word: string }>(
    `SELECT material_id AS id, list, word FROM material_word WHERE list IN ('function', 'keep from')
     ORDER BY material_id, list, position`,
  );
  for (const { id, list, word } of rows) {
    const entry = byId.get(id);
    if (entry) (list === 'function' ? entry.functions : entry.keepFrom).push(word);
  }
}

function addFigures(db: Reader, byId: Map<string, ShelfEntry>): void {
  const rows = db.all<{
    id: string;
    kind: 'hlb' | 'requiredHlbOw' | 'meltingPoint';
    low: number | null;
    value: number | null;
    high: number | null;
  }>(
    `SELECT material_id AS id, kind, low, value, high FROM material_figure
     WHERE kind IN ('hlb', 'requiredHlbOw', 'meltingPoint')`,
  );
  for (const { id, kind, low, value, high } of rows) {
    const entry = byId.get(id);
    if (entry) entry[kind] = figureValue({ low, value, high });
  }
}

function addOffers(db: Reader, byId: Map<string, ShelfEntry>): void {
  type OfferRow = {
    id: string;
    supplier: string;
    packMg: number;
    priceMinor: number | null;
    currency: string;
  };
  const rows = db.all<OfferRow>(
    `SELECT material_id AS id, supplier, pack_mg AS packMg, price_minor AS priceMinor, currency
     FROM material_offer ORDER BY material_id, date DESC, position DESC`,
  );
  for (const { id, supplier, packMg, priceMinor, currency } of rows) {
    const entry = byId.get(id);
    if (!entry) continue;
    if (!entry.suppliers.includes(supplier)) entry.suppliers.push(supplier);
    entry.supplier ||= supplier;
    if (entry.currency !== null || priceMinor === null) continue;
    entry.currency = currency;
    entry.pricePerKg = Math.round(pricePerKgMinor({ priceMinor, packMg }));
  }
}
