/** What a statement may bind and a column may hold. Booleans are 0 and 1. */
export type SqlValue = string | number | null;

/** Reading: any number of rows, or the first. Every `?` has exactly one value, or it is a bug and throws. */
export interface Reader {
  all<Row>(sql: string, ...values: SqlValue[]): Row[];
  get<Row>(sql: string, ...values: SqlValue[]): Row | undefined;
}

/** Writing, inside a transaction only. Statements are deterministic: ids and times are bound, never made by SQL. */
export interface Writer extends Reader {
  run(sql: string, ...values: SqlValue[]): void;
}

/** The library's database. Repositories see only this. */
export interface Database extends Reader {
  /**
   * Runs `work` as one transaction. When it returns, the change is durable: its record stands in the log and
   * is flushed. When `work` or the log throws, nothing has changed. Synchronous, so nothing can interleave.
   */
  transaction<T>(work: (tx: Writer) => T): T;
}
