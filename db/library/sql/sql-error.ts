export type SqlErrorKind =
  'unique' | 'foreign-key' | 'check' | 'not-null' | 'constraint' | 'damaged' | 'memory' | 'sql';

const KINDS: readonly [RegExp, SqlErrorKind][] = [
  [/^UNIQUE constraint failed/, 'unique'],
  [/^FOREIGN KEY constraint failed/, 'foreign-key'],
  [/^CHECK constraint failed/, 'check'],
  [/^NOT NULL constraint failed/, 'not-null'],
  [/constraint failed|^cannot store /, 'constraint'],
  [/malformed|not a database|corrupt/, 'damaged'],
  [/out of memory|database or disk is full|too big/, 'memory'],
];

/** A statement that SQLite refused. sql.js throws errors and bare strings; both arrive here. */
export class SqlError extends Error {
  readonly kind: SqlErrorKind;
  readonly sql: string;

  constructor(cause: unknown, sql: string) {
    const message = cause instanceof Error ? cause.message : String(cause);
    super(message, { cause });
    this.name = 'SqlError';
    this.kind = KINDS.find(([pattern]) => pattern.test(message))?.[1] ?? 'sql';
    this.sql = sql;
  }
}
