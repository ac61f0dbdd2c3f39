import { Problem } from '@core/problems/problem';
import type { Engine } from '../sql/engine';
import { damagedLog, statementsOf, type LogContents, type LogRecord, type Position } from './log-format';
import { writePosition, type LibraryMeta } from '../file/meta';
import { SqlError } from '../sql/sql-error';

/**
 * The records that the file does not hold yet. A record already in the file is passed over, so replaying twice
 * changes nothing. Throws Problem when the log does not continue this file.
 */
export function recordsBeyond(meta: LibraryMeta, log: LogContents): LogRecord[] {
  if (log.header.libraryId !== meta.id) throw foreignLog('belongs to another library');
  if (log.header.sequence > meta.sequence) {
    throw foreignLog(
      `starts at change ${log.header.sequence + 1}, but the file ends at change ${meta.sequence}`,
    );
  }
  const meeting = stateAt(meta.sequence, log);
  if (meeting && meeting.chain !== meta.chain) throw foreignLog('continues another state of this library');
  return log.records.slice(Math.max(0, meta.sequence - log.header.sequence));
}

/** Whether the log goes through the state of this file, whatever the library is called in the two. */
export function meets({ sequence, chain }: Position, log: LogContents): boolean {
  return stateAt(sequence, log)?.chain === chain;
}

/** The state that the log goes through at this change, if it does. */
export function stateAt(sequence: number, { header, records }: LogContents): Position | undefined {
  return sequence === header.sequence ? header : records[sequence - header.sequence - 1];
}

/** Which change a log leads to. */
export function endOf(log: LogContents): Position {
  const { sequence, chain } = log.records.at(-1) ?? log.header;
  return { sequence, chain };
}

/**
 * Repeats logged transactions, in one transaction of its own. Throws Problem library-damaged; then none took.
 * @param bytes what the records stand in
 */
export function replay(engine: Engine, bytes: Uint8Array, records: readonly LogRecord[]): void {
  const steps = replaySteps(engine, bytes, records);
  while (!steps.next().done);
}

/** For so long, in ms, requests may wait. */
const AT_ONCE_MS = 25;

/** As `replay`, letting other work go on in between. `told` hears where the records end that were repeated. */
export async function replayInPieces(
  engine: Engine,
  bytes: Uint8Array,
  records: readonly LogRecord[],
  told: (end: number) => void,
): Promise<void> {
  let since = performance.now();
  for (const { end } of replaySteps(engine, bytes, records)) {
    if (performance.now() - since < AT_ONCE_MS) continue;
    told(end);
    await new Promise((goOn) => setImmediate(goOn));
    since = performance.now();
  }
}

function* replaySteps(
  engine: Engine,
  bytes: Uint8Array,
  records: readonly LogRecord[],
): Generator<LogRecord, void> {
  const last = records.at(-1);
  if (!last) return;
  let current = last.sequence;
  engine.control('BEGIN');
  try {
    for (const record of records) {
      current = record.sequence;
      for (const [sql, ...values] of statementsOf(bytes, record)) engine.run(sql, ...values);
      yield record;
    }
    writePosition(engine, last);
    engine.control('COMMIT');
  } catch (error) {
    engine.control('ROLLBACK');
    if (error instanceof SqlError)
      throw damagedLog(`change ${current} cannot be repeated (${error.message})`);
    throw error;
  }
}

function foreignLog(what: string): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: `The change log beside this library ${what}.`,
    advice:
      'One of the two files was replaced from outside, for instance by a synchronising program. ' +
      'Nothing was changed. You can put the right file back and try again.',
    facts: { file: 'library.log' },
  });
}
