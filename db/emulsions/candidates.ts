import type { PriceRecord } from '@core/costing/offers';
import {
  candidateFrom,
  type CandidateRecord,
  type ShelfCandidate,
} from '@core/emulsions/optimise/candidates';
import type { InciPart } from '@core/materials/composition';
import type { Material } from '@core/materials/material';
import type { Currency } from '@core/quantities/money';
import type { Reader } from '../database';

type Row = Pick<
  Material,
  'id' | 'tradeName' | 'charge' | 'architecture' | 'emulsionType' | 'form' | 'consistency' | 'origin'
> & { low: number | null; value: number | null; high: number | null } & Record<
    'isBase' | 'hasUsage' | 'hasHlb',
    number
  > & { minPpm: number | null; maxPpm: number | null };

const WHERE = `m.status <> 'archived' AND m.withdrawn_on = '' AND EXISTS (SELECT 1 FROM material_word w
    WHERE w.material_id = m.id AND w.list = 'function' AND w.word = 'emulsifier')`;
const EMULSIFIERS = `SELECT m.id, m.trade_name AS tradeName, m.charge, m.architecture, m.emulsion_type AS emulsionType,
    m.form, m.consistency, m.origin, m.usage_min_ppm AS minPpm, m.usage_max_ppm AS maxPpm,
    m.usage_provenance IS NOT NULL AS hasUsage, f.kind IS NOT NULL AS hasHlb, f.low, f.value, f.high,
    EXISTS (SELECT 1 FROM material_word w
      WHERE w.material_id = m.id AND w.list = 'function' AND w.word = 'base') AS isBase
  FROM material m LEFT JOIN material_figure f ON f.material_id = m.id AND f.kind = 'hlb'
  WHERE ${WHERE} ORDER BY m.trade_name, m.id`;
const COMPOSITIONS = `SELECT i.material_id AS id, i.inci, i.low_ppm AS lowPpm, i.high_ppm AS highPpm
  FROM material_inci i JOIN material m ON m.id = i.material_id WHERE ${WHERE} ORDER BY i.material_id, i.position`;
const OFFERS = `SELECT o.material_id AS id, o.pack_mg AS packMg, o.price_minor AS priceMinor, o.currency, o.date
  FROM material_offer o JOIN material m ON m.id = o.material_id
  WHERE o.currency = ? AND ${WHERE} ORDER BY o.material_id, o.position`;

function byId<One extends { id: string }>(rows: readonly One[]): Map<string, One[]> {
  const found = new Map<string, One[]>();
  for (const row of rows) {
    const list = found.get(row.id);
    if (list) list.push(row);
    else found.set(row.id, [row]);
  }
  return found;
}

function recordOf(row: Row, composition: InciPart[], offers: PriceRecord[]): CandidateRecord {
  const { low, value, high, isBase, hasUsage, hasHlb, minPpm, maxPpm, ...known } = row;
  return {
    ...known,
    composition,
    offers,
    functions: isBase ? ['emulsifier', 'base'] : ['emulsifier'],
    usage: hasUsage ? { minPpm, maxPpm } : null,
    figures: hasHlb ? { hlb: { low, value, high } } : {},
  };
}

/**
 * Every emulsifier in the library that is neither archived nor withdrawn, as a candidate, by name. Only the columns that the projection
 * asks for are read: a shelf of a thousand emulsifiers answers in milliseconds.
 *
 * @param currency of the costs, minor units per kg
 */
export function readCandidates(db: Reader, currency: Currency): ShelfCandidate[] {
  const compositions = byId(db.all<InciPart & { id: string }>(COMPOSITIONS));
  const offers = byId(db.all<PriceRecord & { id: string }>(OFFERS, currency));
  return db
    .all<Row>(EMULSIFIERS)
    .map((row) =>
      candidateFrom(recordOf(row, compositions.get(row.id) ?? [], offers.get(row.id) ?? []), currency),
    );
}
