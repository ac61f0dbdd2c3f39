import { Problem } from '@core/problems/problem';
import type { SqlValue, Writer } from '../../database';
import { SqlError } from './sql-error';
import { handedOver } from './handed-over';
import { loadSqlJs, type SqlJs } from './load-sql-js';
import { readSql } from './sql-text';

type RawDatabase = InstanceType<SqlJs['Database']>;
type RawStatement = ReturnType<RawDatabase['prepare']>;

interface Prepared {
  raw: RawStatement;
  columns: string[];
  parameters: number;
  writes: boolean;
}

const READING_VERBS = new Set(['SELECT', 'WITH', 'VALUES']);
const WRITING_VERBS = new Set(['INSERT', 'UPDATE', 'DELETE', 'REPLACE', 'WITH']);
const STATEMENTS_KEPT = 400;
const LONE_SURROGATE = /\p{Surrogate}/u;

/**
 * One SQLite database in memory, behind exact parameters and one kind of error. Statements are kept prepared;
 * `exportBytes` and `script` free them first, so none outlives a change of schema or an export.
 */
export class Engine implements Writer {
  readonly #raw: RawDatabase;
  readonly #statements = new Map<string, Prepared>();

  private constructor(raw: RawDatabase) {
    this.#raw = raw;
  }

  /**
   * Opens a copy of `bytes`, or an empty database. Throws SqlError 'damaged' when SQLite cannot read it.
   * @param given the bytes are the engine's from now on: it works in them, and nobody else may look at them any more
   */
  static async open(bytes?: Uint8Array, { given = false } = {}): Promise<Engine> {
    const sqlJs = await loadSqlJs();
    // A Buffer would be written into: its `slice`, which sql.js copies with, shares the memory.
    const copyable = bytes && new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const engine = new Engine(
      new sqlJs.Database(copyable && given ? handedOver(copyable) : (copyable ?? null)),
    );
    try {
      engine.configureConnection();
    } catch (cause) {
      engine.close();
      throw cause;
    }
    return engine;
  }

  /** Sets what SQLite forgets between connections, and reads it back: a setting that did not take is a bug. */
  configureConnection(): void {
    // Nobody else has this copy in memory: SQLite need not ask before each read whether it changed.
    this.script(
      'PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF; PRAGMA temp_store = MEMORY; ' +
        // What SQLite has at hand it need not copy again from the file that it believes to read.
        'PRAGMA journal_mode = MEMORY; PRAGMA locking_mode = EXCLUSIVE; PRAGMA cache_size = -32768',
    );
    if (this.pragma('foreign_keys') !== 1 || this.pragma('trusted_schema') !== 0) {
      throw new Error('SQLite did not accept foreign_keys = ON and trusted_schema = OFF.');
    }
  }

  all<Row>(sql: string, ...values: SqlValue[]): Row[] {
    const prepared = this.#reading(sql);
    const rows: Row[] = [];
    this.#execute(prepared, sql, values, () => {
      while (prepared.raw.step()) rows.push(this.#row<Row>(prepared));
    });
    return rows;
  }

  get<Row>(sql: string, ...values: SqlValue[]): Row | undefined {
    const prepared = this.#reading(sql);
    let row: Row | undefined;
    this.#execute(prepared, sql, values, () => {
      if (prepared.raw.step()) row = this.#row<Row>(prepared);
    });
    return row;
  }

  run(sql: string, ...values: SqlValue[]): void {
    const prepared = this.#prepare(sql);
    if (!prepared.writes) throw new Error(`Not a change: ${sql}`);
    this.#execute(prepared, sql, values, () => {
      while (prepared.raw.step());
    });
  }

  /** Statements of the kernel and of migrations, without parameters. Stops at the first error, keeping the rest. */
  script(sql: string): void {
    this.#freeStatements();
    try {
      this.#raw.run(sql);
    } catch (cause) {
      throw new SqlError(cause, sql);
    }
  }

  /** BEGIN, COMMIT and ROLLBACK, which leave prepared statements alone. */
  control(command: 'BEGIN' | 'COMMIT' | 'ROLLBACK'): void {
    try {
      this.#raw.run(command);
    } catch (cause) {
      throw new SqlError(cause, command);
    }
  }

  /** The first value of a pragma such as `user_version` or `quick_check(1)`. */
  pragma(name: string): SqlValue {
    const sql = `PRAGMA ${name}`;
    try {
      const value = this.#raw.exec(sql)[0]?.values[0]?.[0];
      return value === undefined || value instanceof Uint8Array ? null : value;
    } catch (cause) {
      throw new SqlError(cause, sql);
    }
  }

  /** The whole database as the bytes of an SQLite file. Never inside a transaction. */
  exportBytes(): Uint8Array {
    this.#freeStatements();
    try {
      return this.#raw.export();
    } catch (cause) {
      throw new SqlError(cause, 'export');
    } finally {
      this.configureConnection();
    }
  }

  close(): void {
    this.#freeStatements();
    this.#raw.close();
  }

  #reading(sql: string): Prepared {
    const prepared = this.#prepare(sql);
    if (prepared.writes) throw new Error(`Changes go through run(): ${sql}`);
    return prepared;
  }

  #prepare(sql: string): Prepared {
    const kept = this.#statements.get(sql);
    if (kept) return kept;
    const facts = readSql(sql);
    const reads = READING_VERBS.has(facts.verb);
    if (!reads && !WRITING_VERBS.has(facts.verb)) throw new Error(`Not a statement for a repository: ${sql}`);
    try {
      const writes = !reads || (facts.verb === 'WITH' && this.#changesSomething(sql));
      const raw = this.#raw.prepare(sql);
      const prepared = { raw, columns: raw.getColumnNames(), parameters: facts.parameters, writes };
      if (this.#statements.size >= STATEMENTS_KEPT) this.#freeOldest();
      this.#statements.set(sql, prepared);
      return prepared;
    } catch (cause) {
      throw new SqlError(cause, sql);
    }
  }

  /** `WITH … INSERT` starts like `WITH … SELECT`; SQLite's own plan tells them apart (Transaction, P2 = 1). */
  #changesSomething(sql: string): boolean {
    const plan = this.#raw.exec(`EXPLAIN ${sql}`)[0]?.values ?? [];
    return plan.some((step) => step[1] === 'Transaction' && step[3] !== 0);
  }

  #execute(prepared: Prepared, sql: string, values: SqlValue[], work: () => void): void {
    checkValues(prepared.parameters, values, sql);
    try {
      prepared.raw.bind(values);
      work();
    } catch (cause) {
      throw new SqlError(cause, sql);
    } finally {
      prepared.raw.reset();
    }
  }

  #row<Row>(prepared: Prepared): Row {
    const values = prepared.raw.get();
    const row: Record<string, unknown> = {};
    prepared.columns.forEach((column, index) => {
      row[column] = values[index];
    });
    return row as Row;
  }

  #freeOldest(): void {
    const [sql, oldest] = this.#statements.entries().next().value ?? [];
    oldest?.raw.free();
    if (sql !== undefined) this.#statements.delete(sql);
  }

  #freeStatements(): void {
    for (const { raw } of this.#statements.values()) raw.free();
    this.#statements.clear();
  }
}

function checkValues(parameters: number, values: readonly SqlValue[], sql: string): void {
  if (values.length !== parameters) {
    throw new Error(`${parameters} parameters, ${values.length} values: ${sql}`);
  }
  for (const value of values) {
    if (typeof value === 'string') checkText(value);
    else if (value !== null && !(typeof value === 'number' && Number.isFinite(value))) {
      throw new Error(`Cannot be stored (${String(value)}): ${sql}`);
    }
  }
}

/** SQLite text ends at NUL and is UTF-8: both kinds of text would come back changed, so they do not go in. */
function checkText(text: string): void {
  if (text.includes('\0') || LONE_SURROGATE.test(text)) {
    throw new Problem({
      code: 'invalid-input',
      title: 'A text contains a character that cannot be stored.',
      advice:
        'Remove control characters or broken symbols from the text, then try again. Nothing was changed.',
    });
  }
}
