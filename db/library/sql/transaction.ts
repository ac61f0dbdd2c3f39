import { Problem } from '@core/problems/problem';
import type { SqlValue, Writer } from '../../database';
import type { Engine } from './engine';
import type { ChangeLog } from '../log/log';
import { encodeRecord, type LoggedStatement, type Position } from '../log/log-format';
import { writePosition } from '../file/meta';

export interface TransactionPlace {
  engine: Engine;
  log: ChangeLog;
  position: Position;
  now: () => Date;
  /** Told what could not be saved because the library had just become someone else's. */
  onUnsaved: (statements: readonly LoggedStatement[]) => void;
}

/** Writes to the engine and notes what it wrote, while its transaction lasts. */
class RecordingWriter implements Writer {
  readonly statements: LoggedStatement[] = [];
  readonly #engine: Engine;
  #open = true;
  #failure: { error: unknown } | undefined;

  constructor(engine: Engine) {
    this.#engine = engine;
  }

  all<Row>(sql: string, ...values: SqlValue[]): Row[] {
    this.#check();
    return this.#engine.all<Row>(sql, ...values);
  }

  get<Row>(sql: string, ...values: SqlValue[]): Row | undefined {
    this.#check();
    return this.#engine.get<Row>(sql, ...values);
  }

  run(sql: string, ...values: SqlValue[]): void {
    this.#check();
    try {
      this.#engine.run(sql, ...values);
    } catch (error) {
      this.#failure ??= { error };
      throw error;
    }
    this.statements.push([sql, ...values]);
  }

  /** Ends the writer. A failed change fails the transaction, even if `work` went on: SQLite may have undone more. */
  end(): void {
    this.#open = false;
    if (this.#failure) throw this.#failure.error;
  }

  #check(): void {
    if (!this.#open) throw new Error('This transaction has ended; start another.');
  }
}

/**
 * Runs `work` as one transaction: changes in memory, record in the log and flushed, then COMMIT. Returns where the
 * library then stands. When anything throws, memory and log are as before.
 */
export function runTransaction<T>(
  place: TransactionPlace,
  work: (tx: Writer) => T,
): { result: T; position: Position } {
  const { engine, log } = place;
  const writer = new RecordingWriter(engine);
  engine.control('BEGIN');
  try {
    const result = work(writer);
    if (result instanceof Promise) throw new Error('A transaction is synchronous: it cannot await.');
    writer.end();
    if (writer.statements.length === 0) {
      engine.control('COMMIT');
      return { result, position: place.position };
    }
    const record = encodeRecord(place.position, place.now().toISOString(), writer.statements);
    writePosition(engine, record.position);
    const lengthBefore = log.length;
    append(place, record, writer.statements);
    commit(engine, () => log.truncate(lengthBefore, place.position));
    return { result, position: record.position };
  } catch (error) {
    rollBack(engine);
    throw error;
  }
}

function append(
  { log, onUnsaved }: TransactionPlace,
  record: ReturnType<typeof encodeRecord>,
  statements: readonly LoggedStatement[],
): void {
  try {
    log.append(record);
  } catch (error) {
    const isLost =
      error instanceof Problem &&
      (error.code === 'library-locked' || error.code === 'library-changed-outside');
    if (isLost) onUnsaved(statements);
    throw error;
  }
}

function commit(engine: Engine, takeBack: () => void): void {
  try {
    engine.control('COMMIT');
  } catch (error) {
    takeBack();
    throw error;
  }
}

function rollBack(engine: Engine): void {
  try {
    engine.control('ROLLBACK');
  } catch {
    // Some errors make SQLite roll back by itself.
  }
}
