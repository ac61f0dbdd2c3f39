import { Problem } from '@core/problems/problem';
import type { Engine } from '../sql/engine';
import { decodeRecord, encodeHeader, readFrame, textOf, type LogRecord, type Position } from './log-format';
import { firstStarts, NEWLINE } from './log-tail';
import type { LibraryMeta } from '../file/meta';
import { replay } from './replay';

/** What can be had from a log that cannot be followed as a whole. */
export interface Salvage {
  /** Changes that the file does not hold and that follow on it without a gap. */
  taken: number;
  /** Entries of the log after those, which cannot be used. */
  left: number;
  /** A log of the taken changes alone, continuing the file, without the zeros that follow. */
  bytes: Uint8Array;
}

/** `facts.goodLog` of a Problem about the log: what opening with the good part of it would give. */
export type GoodLog = Pick<Salvage, 'taken' | 'left'>;

/** How a line about the library file begins. */
const FILE_LINE = 'file ';

/** Whether the log, and not the file, is what a library cannot be opened with. */
export function isAboutLog(error: unknown): error is Problem {
  return (
    error instanceof Problem &&
    (error.code === 'library-damaged' || error.code === 'library-changed-outside') &&
    error.facts.file === 'library.log'
  );
}

/**
 * Repeats the changes of a log up to the damage. Only a record whose check proves that it was written right after the
 * state reached is taken, from the file's own state on: so a broken first line costs nothing, and no gap is jumped.
 * The engine then holds them. Nothing is written.
 * @param fileSha256 the hash of the file that the engine was opened from
 */
export function salvageLog(
  engine: Engine,
  meta: LibraryMeta,
  bytes: Uint8Array,
  fileSha256: string,
): Salvage {
  const { id: libraryId, sequence, chain } = meta;
  let reached: Position = { sequence, chain };
  const parts = [encodeHeader({ libraryId, ...reached, fileSha256 })];
  const lines = linesOf(bytes);
  for (const line of lines) {
    const record = following(line, reached);
    if (!record) continue;
    // All that follows builds on a change that cannot be repeated.
    if (!repeats(engine, line, record)) break;
    parts.push(line, Uint8Array.of(NEWLINE));
    reached = { sequence: record.sequence, chain: record.chain };
  }
  const left = lines.filter((line, at) => isBeyond(line, at === 0, reached.sequence)).length;
  return { taken: reached.sequence - sequence, left, bytes: Buffer.concat(parts) };
}

/**
 * The same Problem, saying how much of the log holds and what would become of the rest.
 * @param vouched the log knows the library file by its hash; otherwise only its form is known to be sound
 */
export function withGoodPart(
  problem: Problem,
  { taken, left }: Salvage,
  { keptIn, vouched }: { keptIn: string; vouched: boolean },
): Problem {
  const { code, message: title, advice, facts } = problem;
  const how =
    taken === 0
      ? 'without this log, since no change in it can be proven to follow on the file'
      : `with ${taken === 1 ? 'one change of the log that still holds' : `${taken} changes of the log that still hold`}`;
  const missing = left === 1 ? '1 entry of the log' : `${left} entries of the log`;
  const after = taken === 0 ? 'Not in it then' : 'What comes after the damage is not in it then';
  const goodLog: GoodLog = { taken, left };
  return new Problem(
    {
      code,
      title,
      advice:
        `${advice} The library file itself ${vouched ? 'is whole' : 'can be read'}: it can be opened ${how}. ` +
        `${left === 0 ? '' : `${after}: ${missing}. `}The whole log is first kept, as it is, in ${keptIn}.`,
      facts: { ...facts, goodLog },
    },
    { cause: problem },
  );
}

/** The lines, without the zeros after the last. */
function linesOf(bytes: Uint8Array): Uint8Array[] {
  const lines: Uint8Array[] = [];
  for (let start = 0; start < bytes.length;) {
    const found = bytes.indexOf(NEWLINE, start);
    const end = found < 0 ? bytes.length : found;
    if (end > start && (found >= 0 || bytes[start] !== 0)) lines.push(bytes.subarray(start, end));
    start = end + 1;
  }
  return lines;
}

/** The record in a line that follows on what was reached; to be read from the line itself. */
function following(line: Uint8Array, reached: Position): LogRecord | undefined {
  const frame = readFrame(line);
  const record = frame && decodeRecord(frame, reached, line.length + 1);
  return record?.sequence === reached.sequence + 1 ? record : undefined;
}

function repeats(engine: Engine, line: Uint8Array, record: LogRecord): boolean {
  try {
    replay(engine, line, [record]);
    return true;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** Whether a line holds a change that was not reached; one that cannot be read at all counts as one. */
function isBeyond(line: Uint8Array, isFirst: boolean, reached: number): boolean {
  if (textOf(line, 0, Math.min(line.length, FILE_LINE.length)) === FILE_LINE) return false;
  const [start] = firstStarts(line);
  // The first line names the library, unless its end was lost and a record hangs on it.
  return start === undefined ? !isFirst : start > reached;
}
