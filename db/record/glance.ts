import type { ListEntry } from '@core/lists/description';
import type { Reader } from '../database';

/** The keys of a list that can be read of all records at once, each by an expression over a table: texts, whole numbers. */
export interface GlanceTable {
  from: string;
  /** Which of them the list shows until it is asked for others; all when left out. */
  where?: string;
  keys: Readonly<Record<string, string>>;
}

/** How many records there are, those put aside among them. */
export function countAll(db: Reader, { from }: GlanceTable): number {
  return db.get<{ held: number }>(`SELECT count(*) AS held FROM ${from}`)?.held ?? 0;
}

/** All records that the list shows, with these keys only; undefined where one of them takes reading them whole. */
export function readGlances(
  db: Reader,
  { from, where, keys: known }: GlanceTable,
  wanted: readonly string[],
): ListEntry[] | undefined {
  const keys = [...new Set(wanted)];
  if (keys.some((key) => known[key] === undefined)) return undefined;
  // One text for all of them comes out of SQLite many times faster than row by row.
  const columns = ['id', ...keys.map((key) => known[key])].join(', ');
  const sql = `SELECT json_group_array(json_array(${columns})) AS rows FROM ${from}${where ? ` WHERE ${where}` : ''}`;
  const rows = JSON.parse(db.get<{ rows: string }>(sql)?.rows ?? '[]') as [string, ...unknown[]][];
  return rows.map(([id, ...values]) => {
    const glance: Record<string, unknown> = { id };
    keys.forEach((key, at) => (glance[key] = values[at]));
    return glance as unknown as ListEntry;
  });
}
