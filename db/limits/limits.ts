import { LIMIT_FIELDS } from '@core/limits/fields';
import { limit, type Limit, type LimitContent } from '@core/limits/limit';
import { LIMITS_LISTED, type LimitEntry } from '@core/limits/list';
import { LIMIT } from '@core/limits/noun';
import type { Reader } from '../database';
import { columnName } from '../record/columns';
import type { GlanceTable } from '../record/glance';
import { RecordTable } from '../record/record-table';
import type { Repository } from '../record/repository';
import { among } from '../some-ids';

/** The limits of law that the library holds. */
export const limits = new RecordTable<Limit>('legal_limit', LIMIT_FIELDS, (read) => limit.parse(read));

export const limitRecords: Repository<Limit, LimitContent> = {
  noun: LIMIT,
  read: (db, id) => limits.read(db, id),
  insert: (tx, added) => limits.insert(tx, added),
  insertMany: (tx, added) => limits.insertMany(tx, added),
  update: (tx, before, after) => limits.update(tx, before, after),
  remove: (tx, id) => limits.remove(tx, id),
};

/** Every limit, by what it is about. */
export function readLimits(db: Reader): Limit[] {
  const ids = db.all<{ id: string }>('SELECT id FROM legal_limit ORDER BY subject COLLATE NOCASE, id');
  return [
    ...limits
      .readMany(
        db,
        ids.map(({ id }) => id),
      )
      .values(),
  ];
}

const SCALARS = LIMITS_LISTED.filter(({ field }) => field.shape.kind !== 'words');
const LISTS = LIMITS_LISTED.filter(({ field }) => field.shape.kind === 'words');
const KEY_OF_LIST = new Map(LISTS.map(({ key, field }) => [columnName(key, field), key]));
const EXPRESSIONS = SCALARS.map(({ key, field }) => [key, columnName(key, field)] as const);
const COLUMNS = EXPRESSIONS.map(([key, column]) => `${column} AS "${key}"`);

/** What of all limits can be read at a glance. */
export const LIMITS_TABLE: GlanceTable = {
  from: 'legal_limit',
  keys: {
    ...Object.fromEntries(EXPRESSIONS),
    from: 'holds_from',
    until: 'holds_until',
    updatedAt: 'updated_at',
  },
};

/** Limits as their list knows them, all or some. */
export function readLimitEntries(db: Reader, ids?: readonly string[]): LimitEntry[] {
  const { where, values } = among('id', ids);
  const entries = db
    .all<Omit<LimitEntry, 'regions' | 'kinds' | 'notForUsers'>>(
      `SELECT id, percent, min_percent AS minPercent, holds_from AS "from", holds_until AS "until",
         updated_at AS updatedAt, ${COLUMNS.join(', ')} FROM legal_limit ${where}`,
      ...values,
    )
    .map((row): LimitEntry => ({ ...row, regions: [], kinds: [], notForUsers: [] }));
  const byId = new Map(entries.map((entry) => [entry.id, entry as unknown as Record<string, string[]>]));
  const of = among('legal_limit_id', ids);
  const words = db.all<{ id: string; list: string; word: string }>(
    `SELECT legal_limit_id AS id, list, word FROM legal_limit_word ${of.where} ORDER BY legal_limit_id, list, position`,
    ...of.values,
  );
  for (const { id, list, word } of words) byId.get(id)?.[KEY_OF_LIST.get(list) ?? '']?.push(word);
  return entries;
}
