import { WHOLE_PPM } from '@core/quantities/share';
import type { Reader } from '../database';

/** A record that needs a look, by its name. */
export interface Named {
  id: string;
  name: string;
}

/** Records that need a look for one reason: how many there are, and the first of them. */
export interface Some {
  total: number;
  first: Named[];
}

/** What needs a look, reason by reason. */
export interface Attention {
  /** Drafts whose lines do not make 100 %. */
  notWhole: Some;
  /** Materials of current formulas that have no price at all. */
  withoutPrice: Some;
  /** Materials of current formulas whose newest price is older than the day asked for. */
  oldPrice: Some;
  /** Non-ionic emulsifiers without an HLB; it does not describe polymers and particles. */
  withoutHlb: Some;
}

/** As many as are named; the others are counted. */
const FIRST = 3;

function some(db: Reader, sql: string, ...values: string[]): Some {
  const rows = db.all<Named>(sql, ...values);
  return { total: rows.length, first: rows.slice(0, FIRST) };
}

const USED = `SELECT DISTINCT l.material_id FROM formula_line l JOIN formula f ON f.id = l.formula_id WHERE f.archived = 0`;
const PRICED = 'SELECT 1 FROM material_offer o WHERE o.material_id = m.id AND o.price_minor IS NOT NULL';
const BY_NAME = 'ORDER BY name COLLATE NOCASE';

/**
 * What of the library needs a look.
 * @param pricesFrom a day (ISO 8601): newest prices from before it count as old
 */
export function readAttention(db: Reader, pricesFrom: string): Attention {
  return {
    notWhole: some(
      db,
      `SELECT f.id, f.name FROM formula f JOIN formula_line l ON l.formula_id = f.id WHERE f.archived = 0
       GROUP BY f.id HAVING CASE WHEN max(l.to_hundred) = 1
         THEN sum(CASE WHEN l.to_hundred = 1 THEN 0 ELSE l.ppm END) > ${WHOLE_PPM}
         ELSE sum(l.ppm) <> ${WHOLE_PPM} END ${BY_NAME}`,
    ),
    withoutPrice: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.id IN (${USED}) AND NOT EXISTS (${PRICED}) ${BY_NAME}`,
    ),
    oldPrice: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.id IN (${USED}) AND EXISTS (${PRICED})
       AND NOT EXISTS (${PRICED} AND o.date >= ?) ${BY_NAME}`,
      pricesFrom,
    ),
    withoutHlb: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.charge = 'non-ionic' AND m.status <> 'archived'
       AND coalesce(m.architecture, 'classic') = 'classic'
       AND EXISTS (SELECT 1 FROM material_word w WHERE w.material_id = m.id AND w.list = 'function' AND w.word = 'emulsifier')
       AND NOT EXISTS (SELECT 1 FROM material_figure g WHERE g.material_id = m.id AND g.kind = 'hlb') ${BY_NAME}`,
    ),
  };
}
