import { pricePerKgMinor } from '@core/costing/offers';
import { USUAL_HIGHEST_USE } from '@core/emulsions/optimise/candidates';
import type { Candidate } from '@core/emulsions/optimise/demand';
import { bodyCharacter } from '@core/emulsions/systems/character';
import { figureValue } from '@core/materials/figure';
import type { Material } from '@core/materials/material';
import type { Currency } from '@core/quantities/money';
import { percentFromPpm } from '@core/quantities/share';
import type { Reader } from '../database';

/** An emulsifier of the library as the optimiser takes it, with what candidates are filtered by. */
export interface ShelfCandidate extends Candidate {
  form: Material['form'];
  origin: Material['origin'];
}

interface Row extends Pick<
  Material,
  'id' | 'tradeName' | 'charge' | 'architecture' | 'emulsionType' | 'form' | 'consistency' | 'origin'
> {
  inci: string | null;
  low: number | null;
  value: number | null;
  high: number | null;
  minPpm: number | null;
  maxPpm: number | null;
}

const EMULSIFIERS = `SELECT m.id, m.trade_name AS tradeName, m.charge, m.architecture, m.emulsion_type AS emulsionType,
    m.form, m.consistency, m.origin, m.usage_min_ppm AS minPpm, m.usage_max_ppm AS maxPpm, f.low, f.value, f.high,
    (SELECT inci FROM material_inci i WHERE i.material_id = m.id ORDER BY high_ppm + low_ppm DESC, position LIMIT 1) AS inci
  FROM material m
  JOIN material_word w ON w.material_id = m.id AND w.list = 'function' AND w.word = 'emulsifier'
  LEFT JOIN material_figure f ON f.material_id = m.id AND f.kind = 'hlb'
  WHERE m.status <> 'archived' ORDER BY m.trade_name, m.id`;

/** The newest price of each material in a currency, minor units per kg; of one date, the one listed later. */
function prices(db: Reader, currency: Currency): Map<string, number> {
  const rows = db.all<{ id: string; packMg: number; priceMinor: number }>(
    `SELECT material_id AS id, pack_mg AS packMg, price_minor AS priceMinor FROM material_offer
     WHERE currency = ? AND price_minor IS NOT NULL ORDER BY material_id, date, position`,
    currency,
  );
  return new Map(rows.map((row) => [row.id, pricePerKgMinor(row)]));
}

/**
 * Every emulsifier in the library that is not archived. Costs in minor units per kg of the currency; where no usage
 * range is recorded, up to `USUAL_HIGHEST_USE` may be used.
 */
export function readCandidates(db: Reader, currency: Currency): ShelfCandidate[] {
  const costs = prices(db, currency);
  return db.all<Row>(EMULSIFIERS).map((row) => ({
    id: row.id,
    name: row.tradeName,
    inci: row.inci ?? '',
    hlb: figureValue(row),
    charge: row.charge,
    architecture: row.architecture,
    emulsionType: row.emulsionType,
    character: bodyCharacter(row),
    costPerKg: costs.get(row.id) ?? null,
    minPercent: percentFromPpm(row.minPpm ?? 0),
    maxPercent:
      row.maxPpm === null
        ? Math.max(USUAL_HIGHEST_USE, percentFromPpm(row.minPpm ?? 0))
        : percentFromPpm(row.maxPpm),
    form: row.form,
    origin: row.origin,
  }));
}
