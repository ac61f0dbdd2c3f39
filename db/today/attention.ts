import { REPLACED_KINDS } from '@core/materials/document';
import { WHOLE_PPM } from '@core/quantities/share';
import type { Reader } from '../database';

/** A record that needs a look, by its name. */
export interface Named {
  id: string;
  name: string;
}

/** Records that need a look for one reason: how many there are, and the first of them. */
export interface Some<T extends Named = Named> {
  total: number;
  first: T[];
}

/** A paper that needs a look, by the record that holds it. */
export interface NamedPaper extends Named {
  of: 'material' | 'formula' | 'batch';
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
  /** Documents, of whichever record, whose last day is over, unless a newer one of their kind is on file. */
  pastDocuments: Some<NamedPaper>;
  /** Those whose last day is near. */
  pastSoon: Some<NamedPaper>;
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

function some<T extends Named = Named>(db: Reader, sql: string, ...values: string[]): Some<T> {
  const rows = db.all<T>(sql, ...values);
  return { total: rows.length, first: rows.slice(0, FIRST) };
}

const USED = `SELECT DISTINCT l.material_id FROM formula_line l JOIN formula f ON f.id = l.formula_id WHERE f.archived = 0`;
const PRICED = 'SELECT 1 FROM material_offer o WHERE o.material_id = m.id AND o.price_minor IS NOT NULL';
const BY_NAME = 'ORDER BY name COLLATE NOCASE';

/** Every paper that bears a last day, with what holds it; archived materials and formulas are left alone. */
const PAPERS = `SELECT 'material' AS of, m.id, m.trade_name AS holder, d.kind, d.title, d.dated, d.valid_until
    FROM material_document d JOIN material m ON m.id = d.material_id WHERE m.status <> 'archived'
  UNION ALL
  SELECT 'formula', f.id, f.name, r.value ->> 'kind', r.value ->> 'title', coalesce(r.value ->> 'dated', ''),
    coalesce(r.value ->> 'validUntil', '')
    FROM formula f, json_each(f.reports) r WHERE f.archived = 0
  UNION ALL
  SELECT 'batch', b.id, 'Batch ' || b.number, d.kind, d.title, d.dated, d.valid_until
    FROM batch_document_now d JOIN batch b ON b.id = d.batch_id`;

/** A kind that is replaced gives way to a newer one (`isPast` in shared-core/materials/document). */
const REPLACED = `p.kind IN (${REPLACED_KINDS.map((kind) => `'${kind}'`).join(', ')}) AND EXISTS (
  SELECT 1 FROM papers n WHERE n.id = p.id AND n.kind = p.kind AND n.dated > p.dated)`;

/** Documents that hold until some day, each told by its holder and title. */
function documentsUntil(db: Reader, between: string, ...days: string[]): Some<NamedPaper> {
  return some<NamedPaper>(
    db,
    `WITH papers AS MATERIALIZED (${PAPERS})
     SELECT p.of, p.id, p.holder || ': ' || p.title AS name FROM papers p
     WHERE p.valid_until <> '' AND ${between} AND NOT (${REPLACED}) ORDER BY p.valid_until, name`,
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
    pastDocuments: documentsUntil(db, 'p.valid_until < ?', days.today),
    pastSoon: documentsUntil(db, 'p.valid_until >= ? AND p.valid_until <= ?', days.today, days.validPast),
    oldDataSheets: some(
      db,
      `SELECT m.id, m.trade_name AS name FROM material m JOIN material_document d ON d.material_id = m.id
       WHERE m.status <> 'archived' AND d.kind = 'safety data sheet' AND d.dated <> ''
       GROUP BY m.id HAVING max(d.dated) < ? ${BY_NAME}`,
      days.dataSheetsFrom,
    ),
  };
}
