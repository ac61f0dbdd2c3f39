import { createHash } from 'node:crypto';
import { Problem } from '@core/problems/problem';
import type { SqlValue } from '../database';

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

const HEADER = /^stillroom-log (\d+) (\S+) (\d+) ([0-9a-f]{32})$/;
const FRAME = /^(\d+) ([0-9a-f]{32}) (\{.*\})$/;
const NEWLINE = 0x0a;

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
  const header = decodeHeader(text(bytes, 0, headerEnd < 0 ? Math.min(bytes.length, 200) : headerEnd));
  const records: LogRecord[] = [];
  let position: Position = header;
  let start = headerEnd + 1;
  while (start < bytes.length) {
    const lineEnd = bytes.indexOf(NEWLINE, start);
    const record = lineEnd < 0 ? undefined : decodeRecord(bytes, start, lineEnd, position);
    if (!record) break;
    records.push(record);
    position = record;
    start = record.end;
  }
  if (start < bytes.length) refuseRecordsAfter(bytes, start, position.sequence);
  return { header, records, length: start, torn: bytes.length - start };
}

function text(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
}

function decodeHeader(line: string): LogHeader {
  const [, format, libraryId, sequence, chain] = HEADER.exec(line) ?? [];
  if (Number(format) > LOG_FORMAT) {
    throw new Problem({
      code: 'library-newer',
      title: 'This library was last used with a newer version of Stillroom.',
      advice: 'Open it with that version or a later one. Nothing was changed.',
    });
  }
  if (libraryId === undefined || chain === undefined) throw damagedLog('its first line cannot be read');
  return { libraryId, sequence: Number(sequence), chain };
}

function decodeRecord(
  bytes: Uint8Array,
  start: number,
  lineEnd: number,
  previous: Position,
): LogRecord | undefined {
  const [, length, check, json] = FRAME.exec(text(bytes, start, lineEnd)) ?? [];
  if (json === undefined || Buffer.byteLength(json) !== Number(length)) return undefined;
  const chain = chainAfter(previous.chain, json);
  if (check !== chain) return undefined;
  const { seq, at, do: statements } = JSON.parse(json) as { seq: number; at: string; do: LoggedStatement[] };
  if (seq !== previous.sequence + 1) throw damagedLog(`change ${previous.sequence + 1} is missing`);
  return { sequence: seq, chain, at, statements, end: lineEnd + 1 };
}

/** Records are flushed one by one, so a whole record after a broken one means that the broken one was acknowledged. */
function refuseRecordsAfter(bytes: Uint8Array, brokenStart: number, lastGood: number): void {
  let lineEnd = bytes.indexOf(NEWLINE, brokenStart);
  while (lineEnd >= 0) {
    const start = lineEnd + 1;
    lineEnd = bytes.indexOf(NEWLINE, start);
    if (lineEnd < 0) return;
    const [, length, , json] = FRAME.exec(text(bytes, start, lineEnd)) ?? [];
    if (json !== undefined && Buffer.byteLength(json) === Number(length)) {
      throw damagedLog(`change ${lastGood + 1} is missing or broken, though later ones are there`);
    }
  }
}

/** A log that cannot be followed; nothing is replayed beyond doubt. */
export function damagedLog(what: string): Problem {
  return new Problem({
    code: 'library-damaged',
    title: `The change log of this library is damaged: ${what}.`,
    advice:
      'Nothing was changed. Restore the newest good backup, or open the library as it was when its file was last ' +
      'written whole; the log is then kept aside.',
    facts: { file: 'library.log' },
  });
}
