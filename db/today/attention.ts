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
  /** Materials of current formulas that were withdrawn, or will be. */
  withdrawn: Some;
  /** Materials of current formulas that have no price at all. */
  withoutPrice: Some;
  /** Materials of current formulas whose newest price is older than the day asked for. */
  oldPrice: Some;
  /** Non-ionic emulsifiers without an HLB; it does not describe polymers and particles. */
  withoutHlb: Some;
  /** Materials' documents whose last day is over, unless a newer one of their kind is on file. */
  pastDocuments: Some;
  /** Those whose last day is near. */
  pastSoon: Some;
  /** Materials whose newest safety data sheet is older than the day asked for. */
  oldDataSheets: Some;
}

/** The days that tell what is old, or soon will be; ISO 8601. */
export interface AttentionDays {
  today: string;
  /** Newest prices from before it count as old. */
  pricesFrom: string;
  /** Newest safety data sheets from before it count as old. */
  dataSheetsFrom: string;
  /** Documents that hold no longer than this are told of. */
  validPast: string;
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

/** A safety data sheet or specification gives way to a newer one (`isPast` in shared-core/materials/document). */
const REPLACED = `d.kind IN ('safety data sheet', 'specification') AND EXISTS (SELECT 1 FROM material_document n
   WHERE n.material_id = d.material_id AND n.kind = d.kind AND n.dated > d.dated)`;

/** Documents that hold until some day, each told by its material and title. */
function documentsUntil(db: Reader, between: string, ...days: string[]): Some {
  return some(
    db,
    `SELECT m.id, m.trade_name || ': ' || d.title AS name FROM material_document d JOIN material m ON m.id = d.material_id
     WHERE m.status <> 'archived' AND d.valid_until <> '' AND ${between} AND NOT (${REPLACED})
     ORDER BY d.valid_until, name`,
    ...days,
  );
}

/** What of the library needs a look. */
export function readAttention(db: Reader, days: AttentionDays): Attention {
  return {
    notWhole: some(
      db,
      `SELECT f.id, f.name FROM formula f JOIN formula_line l ON l.formula_id = f.id WHERE f.archived = 0
       GROUP BY f.id HAVING CASE WHEN max(l.to_hundred) = 1
         THEN sum(CASE WHEN l.to_hundred = 1 THEN 0 ELSE l.ppm END) > ${WHOLE_PPM}
         ELSE sum(l.ppm) <> ${WHOLE_PPM} END ${BY_NAME}`,
    ),
    withdrawn: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.withdrawn_on <> '' AND m.id IN (${USED}) ${BY_NAME}`,
    ),
    withoutPrice: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.id IN (${USED}) AND NOT EXISTS (${PRICED}) ${BY_NAME}`,
    ),
    oldPrice: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.id IN (${USED}) AND EXISTS (${PRICED})
       AND NOT EXISTS (${PRICED} AND o.date >= ?) ${BY_NAME}`,
      days.pricesFrom,
    ),
    withoutHlb: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m WHERE m.charge = 'non-ionic' AND m.status <> 'archived'
       AND coalesce(m.architecture, 'classic') = 'classic'
       AND EXISTS (SELECT 1 FROM material_word w WHERE w.material_id = m.id AND w.list = 'function' AND w.word = 'emulsifier')
       AND NOT EXISTS (SELECT 1 FROM material_figure g WHERE g.material_id = m.id AND g.kind = 'hlb') ${BY_NAME}`,
    ),
    pastDocuments: documentsUntil(db, 'd.valid_until < ?', days.today),
    pastSoon: documentsUntil(db, 'd.valid_until >= ? AND d.valid_until <= ?', days.today, days.validPast),
    oldDataSheets: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m JOIN material_document d ON d.material_id = m.id
       WHERE m.status <> 'archived' AND d.kind = 'safety data sheet' AND d.dated <> ''
       GROUP BY m.id HAVING max(d.dated) < ? ${BY_NAME}`,
      days.dataSheetsFrom,
    ),
  };
}
