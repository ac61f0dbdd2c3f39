import initSqlJs from 'sql.js';

export type SqlJs = Awaited<ReturnType<typeof initSqlJs>>;

let loading: Promise<SqlJs> | undefined;

/** Loads SQLite itself, once per process. */
export function loadSqlJs(): Promise<SqlJs> {
  loading ??= initSqlJs();
  return loading;
}
