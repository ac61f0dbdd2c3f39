import type { SqlValue } from './database';

/** Some records only, or all of them: the end of a statement that reads a list, and what it binds. */
export function among(
  column: string,
  ids: readonly string[] | undefined,
): { where: string; values: SqlValue[] } {
  if (ids === undefined) return { where: '', values: [] };
  return { where: `WHERE ${column} IN (SELECT value FROM json_each(?))`, values: [JSON.stringify(ids)] };
}
