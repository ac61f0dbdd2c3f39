import { createHash } from 'node:crypto';
import { Problem } from '@core/problems/problem';
import type { SqlValue } from '../../database';

/**
 * The change log as bytes. The first line says which library it belongs to and which state it continues:
 *
 *     stillroom-log 1 <library id> <sequence> <chain>
 *
 * Then one line per transaction: the length of its JSON in bytes, a check, the JSON:
 *
 *     <bytes> <check> {"seq":7,"at":"2026-01-31T10:20:30.000Z","do":[["UPDATE … WHERE id = ?","x"]]}
 *
 * A check is the first 32 hex digits of SHA-256 over the check before it and the JSON, so that a record holds
 * only after exactly the records it was written after: a lost, doubled or foreign record cannot pass.
 */
export const LOG_FORMAT = 1;

/** A state of the library: how many transactions led to it, and the check of the last one. */
export interface Position {
  sequence: number;
  chain: string;
}

export interface LogHeader extends Position {
  libraryId: string;
}

export type LoggedStatement = [sql: string, ...values: SqlValue[]];

export interface LogRecord extends Position {
  at: string;
  statements: LoggedStatement[];
  /** Where the record ends in the log, in bytes. */
  end: number;
}

export interface LogContents {
  header: LogHeader;
  records: LogRecord[];
  /** How many bytes of the log hold; what follows was never acknowledged. */
  length: number;
  /** Bytes after that: a record that was being written when the power or the program went. */
  torn: number;
}

const HEADER = /^stillroom-log (\d+) (.*)$/;
const HEADER_REST = /^(\S+) (\d+) ([0-9a-f]{32})$/;
/** The dot takes U+2028 and U+2029 too, which JSON does not escape. */
const FRAME = /^(\d+) ([0-9a-f]{32}) (\{.*\})$/s;
/** How every record begins. Inside a value it cannot stand: JSON escapes the quotes there. */
export const RECORD_START = /[0-9a-f]{32} \{"seq":(\d+),"at":/g;
export const NEWLINE = 0x0a;

/** The check that follows `previous` for this text. */
export function chainAfter(previous: string, text: string): string {
  return createHash('sha256').update(previous).update(text).digest('hex').slice(0, 32);
}

export function encodeHeader(header: LogHeader): Uint8Array {
  return Buffer.from(`stillroom-log ${LOG_FORMAT} ${header.libraryId} ${header.sequence} ${header.chain}\n`);
}

/** One transaction as a line of the log, and the check it leaves behind. */
export function encodeRecord(
  previous: Position,
  at: string,
  statements: readonly LoggedStatement[],
): { bytes: Uint8Array; position: Position } {
  const sequence = previous.sequence + 1;
  const json = JSON.stringify({ seq: sequence, at, do: statements });
  const chain = chainAfter(previous.chain, json);
  return {
    bytes: Buffer.from(`${Buffer.byteLength(json)} ${chain} ${json}\n`),
    position: { sequence, chain },
  };
}

/**
 * Reads a log. A last record that is not whole is dropped; anything wrong before the last record is damage.
 * Throws Problem library-damaged or library-newer.
 */
export function decodeLog(bytes: Uint8Array): LogContents {
  const headerEnd = bytes.indexOf(NEWLINE);
  const header = decodeHeader(textOf(bytes, 0, headerEnd < 0 ? Math.min(bytes.length, 200) : headerEnd));
  const records: LogRecord[] = [];
  let position: Position = header;
  let start = headerEnd + 1;
  while (start < bytes.length) {
    const lineEnd = bytes.indexOf(NEWLINE, start);
    const line = lineEnd < 0 ? undefined : readFrame(textOf(bytes, start, lineEnd));
    if (!line) break;
    const record = decodeRecord(line, position, lineEnd + 1);
    if (record) {
      if (record.sequence !== position.sequence + 1)
        throw damagedLog(`change ${position.sequence + 1} is missing`);
      records.push(record);
      position = record;
    } else if (!records.some((known) => known.chain === line.check)) break;
    start = lineEnd + 1;
  }
  if (start < bytes.length) refuseMoreThanOneTorn(bytes, start, position.sequence);
  return { header, records, length: start, torn: bytes.length - start };
}

/** Part of the log as text. */
export function textOf(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
}

function decodeHeader(line: string): LogHeader {
  const [, format, rest = ''] = HEADER.exec(line) ?? [];
  if (Number(format) > LOG_FORMAT) {
    throw new Problem({
      code: 'library-newer',
      title: 'This library was last used with a newer version of Stillroom.',
      advice: 'Open it with that version or a later one. Nothing was changed.',
    });
  }
  const [, libraryId, sequence, chain] = HEADER_REST.exec(rest) ?? [];
  if (libraryId === undefined || chain === undefined) throw damagedLog('its first line cannot be read');
  return { libraryId, sequence: Number(sequence), chain };
}

/** One line of the log taken apart, or undefined when it is no whole record. */
export function readFrame(line: string): { check: string; json: string } | undefined {
  const [, length, check, json] = FRAME.exec(line) ?? [];
  if (check === undefined || json === undefined || Buffer.byteLength(json) !== Number(length))
    return undefined;
  return { check, json };
}

/** The record in a line, if its check shows that it was written right after `previous`. */
export function decodeRecord(
  line: { check: string; json: string },
  previous: Position,
  end: number,
): LogRecord | undefined {
  const chain = chainAfter(previous.chain, line.json);
  if (line.check !== chain) return undefined;
  const {
    seq,
    at,
    do: statements,
  } = JSON.parse(line.json) as { seq: number; at: string; do: LoggedStatement[] };
  return { sequence: seq, chain, at, statements, end };
}

/**
 * Records are flushed one by one, so only the last can be torn: one that begins after a broken one, or one that is
 * not next in line, shows that an acknowledged change was lost.
 */
function refuseMoreThanOneTorn(bytes: Uint8Array, brokenStart: number, lastGood: number): void {
  const rest = Buffer.from(bytes.buffer, bytes.byteOffset + brokenStart, bytes.length - brokenStart).toString(
    'latin1',
  );
  const starts = [...rest.matchAll(RECORD_START)].map((match) => Number(match[1]));
  if (starts.length > 1 || (starts[0] ?? lastGood + 1) !== lastGood + 1) {
    throw damagedLog(`change ${lastGood + 1} is missing or broken, though later ones are there`);
  }
}

/** A log that cannot be followed. Whoever opens the library adds what of it still holds: see salvage. */
export function damagedLog(what: string): Problem {
  return new Problem({
    code: 'library-damaged',
    title: `The change log of this library is damaged: ${what}.`,
    advice: 'Nothing was changed.',
    facts: { file: 'library.log' },
  });
}
