import type { SqlValue, Writer } from '@db/database';
import type { LoggedStatement } from '@db/library/log/log-format';

/** So many values the log takes in one go without holding the process for long. */
const MOST_VALUES = 10_000;

/** Writes, and notes what it wrote as long as that is little: it can then be repeated elsewhere as one change. */
export class NotingWriter implements Writer {
  #statements: LoggedStatement[] | null = [];
  #values = 0;

  constructor(private readonly to: Writer) {}

  /** All that was written; null where it was much. */
  get statements(): LoggedStatement[] | null {
    return this.#statements;
  }

  all<Row>(sql: string, ...values: SqlValue[]): Row[] {
    return this.to.all<Row>(sql, ...values);
  }

  get<Row>(sql: string, ...values: SqlValue[]): Row | undefined {
    return this.to.get<Row>(sql, ...values);
  }

  run(sql: string, ...values: SqlValue[]): void {
    this.to.run(sql, ...values);
    if (!this.#statements) return;
    this.#values += values.length + 1;
    if (this.#values > MOST_VALUES) this.#statements = null;
    else this.#statements.push([sql, ...values]);
  }
}
