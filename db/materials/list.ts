import { figureValue } from '@core/materials/figure';
import { pricePerKgMinor } from '@core/costing/offers';
import { MATERIAL_FIELDS } from '@core/materials/fields';
import { MATERIALS_LISTED, type MaterialEntry } from '@core/materials/list';
import type { Reader } from '../database';
import { columnName } from '../record/columns';
import type { GlanceTable } from '../record/glance';
import { among } from '../some-ids';

/** The listed fields that stand in columns of the material's own table, and those that are lists of words. */
const SCALARS = MATERIALS_LISTED.filter(({ field }) => field.shape.kind !== 'words');
const WORDS = MATERIALS_LISTED.filter(({ field }) => field.shape.kind === 'words');
const KEY_OF_LIST = new Map(WORDS.map(({ key, field }) => [columnName(key, field), key]));
const EXPRESSIONS = SCALARS.map(
  ({ key, field, group }) => [key, columnName(key, field, group ?? '')] as const,
);
const PHOTO = columnName('photo', MATERIAL_FIELDS.photo);
const COLUMNS = EXPRESSIONS.map(([key, column]) => `${column} AS ${key}`);

/** What of all materials can be read at a glance. */
export const MATERIALS_TABLE: GlanceTable = {
  from: 'material',
  where: "status <> 'archived'",
  keys: { ...Object.fromEntries(EXPRESSIONS), updatedAt: 'updated_at' },
};

type Scalars = Pick<
  MaterialEntry,
  'id' | 'photo' | 'updatedAt' | 'code' | 'tradeName' | 'charge' | 'architecture'
> &
  Pick<
    MaterialEntry,
    'emulsionType' | 'phaseOfUse' | 'form' | 'consistency' | 'origin' | 'status' | 'withdrawnOn' | 'notes'
  >;

/** Materials as their list shows them, all or some: a handful of passes, so that opening stays quick at 100,000. */
export function readMaterialEntries(db: Reader, ids?: readonly string[]): MaterialEntry[] {
  const { where, values } = among('id', ids);
  const entries = db
    .all<Scalars>(
      `SELECT id, updated_at AS updatedAt, ${PHOTO} AS photo, ${COLUMNS.join(', ')} FROM material ${where}`,
      ...values,
    )
    .map((row): MaterialEntry => ({
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
  const children = new Children(db, ids);
  addComposition(children, byId);
  addWords(children, byId);
  addFigures(children, byId);
  addOffers(children, byId);
  return entries;
}

/** Reads the rows that belong to the materials wanted. */
class Children {
  private readonly which: ReturnType<typeof among>;

  constructor(
    private readonly db: Reader,
    ids: readonly string[] | undefined,
  ) {
    this.which = among('material_id', ids);
  }

  /** @param select up to the table; @param kinds a further condition; @param order of the rows of a material */
  all<Row>(select: string, kinds: string | null, order: string): Row[] {
    const { where, values } = this.which;
    const conditions = kinds === null ? where : where === '' ? `WHERE ${kinds}` : `${where} AND ${kinds}`;
    return this.db.all<Row>(`${select} ${conditions} ORDER BY material_id, ${order}`, ...values);
  }
}

function addComposition(children: Children, byId: Map<string, MaterialEntry>): void {
  const parts = children.all<{ id: string; inci: string }>(
    'SELECT material_id AS id, inci FROM material_inci',
    null,
    'high_ppm + low_ppm DESC, position',
  );
  for (const { id, inci } of parts) {
    const entry = byId.get(id);
    if (entry) entry.inci = entry.inci ? `${entry.inci}, ${inci}` : inci;
  }
}

function addWords(children: Children, byId: Map<string, MaterialEntry>): void {
  const lists = [...KEY_OF_LIST.keys()].map((list) => `'${list}'`).join(', ');
  const rows = children.all<{ id: string; list: string; word: string }>(
    'SELECT material_id AS id, list, word FROM material_word',
    `list IN (${lists})`,
    'list, position',
  );
  for (const { id, list, word } of rows) {
    const entry = byId.get(id) as Record<string, unknown> | undefined;
    const key = KEY_OF_LIST.get(list);
    if (entry && key) ((entry[key] ??= []) as string[]).push(word);
  }
}

function addFigures(children: Children, byId: Map<string, MaterialEntry>): void {
  const rows = children.all<{
    id: string;
    kind: 'hlb' | 'requiredHlbOw' | 'meltingPoint';
    low: number | null;
    value: number | null;
    high: number | null;
  }>(
    'SELECT material_id AS id, kind, low, value, high FROM material_figure',
    "kind IN ('hlb', 'requiredHlbOw', 'meltingPoint')",
    'kind',
  );
  for (const { id, kind, low, value, high } of rows) {
    const entry = byId.get(id);
    if (entry) entry[kind] = figureValue({ low, value, high });
  }
}

function addOffers(children: Children, byId: Map<string, MaterialEntry>): void {
  type OfferRow = {
    id: string;
    supplier: string;
    packMg: number;
    priceMinor: number | null;
    currency: string;
  };
  const rows = children.all<OfferRow>(
    `SELECT material_id AS id, supplier, pack_mg AS packMg, price_minor AS priceMinor, currency
     FROM material_offer`,
    null,
    'date DESC, position DESC',
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
