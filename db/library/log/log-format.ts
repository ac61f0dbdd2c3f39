import { createHash } from 'node:crypto';
import { Problem } from '@core/problems/problem';
import type { SqlValue } from '../../database';
import { LONGEST_RECORD, recordTooLong } from './log-limits';
import { describeTail, NEWLINE } from './log-tail';

/**
 * The change log as bytes. The first line says which library it belongs to, which state it continues, and the
 * SHA-256 of the library file that holds that state (`-` when it is not known); the last word checks the line:
 *
 *     stillroom-log 2 <library id> <sequence> <chain> <sha256> <check>
 *
 * Then one line per transaction: the length of its JSON in bytes, a check, the JSON:
 *
 *     <bytes> <check> {"seq":7,"at":"2026-01-31T10:20:30.000Z","do":[["UPDATE … WHERE id = ?","x"]]}
 *
 * A check is the first 32 hex digits of SHA-256 over the check before it and the JSON, so that a record holds
 * only after exactly the records it was written after: a lost, doubled or foreign record cannot pass.
 * Before the library file is replaced, a line says what it is going to be, bound to its place in the same way:
 *
 *     file <sha256> <check>
 *
 * Zero bytes follow, at least one, and none stands before: space taken beforehand, so that a flush need not change
 * the file's length, and so that a log whose end was cut off can be told. Format 1 had neither zeros, hash nor `file`.
 * Every later format keeps how the first line begins, and the check at its end: so a newer log is told from a damaged one.
 */
export const LOG_FORMAT = 2;

/** A state of the library: how many transactions led to it, and the check of the last one. */
export interface Position {
  sequence: number;
  chain: string;
}

export interface LogHeader extends Position {
  libraryId: string;
  /** SHA-256 of the library file at this state; undefined when it is not known. */
  fileSha256: string | undefined;
}

export type LoggedStatement = [sql: string, ...values: SqlValue[]];

/** Where a record stands in the log. What it says is read when it is repeated: a log may be larger than memory likes. */
export interface LogRecord extends Position {
  /** Where its JSON starts, and where the record ends, in bytes. */
  start: number;
  end: number;
}

export interface LogContents {
  /** The log as found. */
  bytes: Uint8Array;
  format: number;
  header: LogHeader;
  /** One after another, without a gap. */
  records: LogRecord[];
  /** The hashes that the library file may have: the header's, and those it was going to be replaced by. */
  files: string[];
  /** How many bytes of the log hold; what follows is a torn record, and zeros. */
  length: number;
  /** Bytes of a record that was being written when the power or the program went. */
  torn: number;
}

const HEADER = /^stillroom-log (\d+) (.*)$/;
const HEADER_REST = /^(\S+) (\d+) ([0-9a-f]{32})$/;
const HEADER_TAIL = /^(.*) ([0-9a-f]{64}|-) [0-9a-f]{32}$/;
const FRAME_START = /^(\d+) ([0-9a-f]{32}) \{/;
const SEQUENCE = /^\{"seq":(\d+),/;
const FILE_LINE = /^file ([0-9a-f]{64}) ([0-9a-f]{32})$/;

/** More than any first line, any line about the file, or the beginning of any record has, in bytes. */
const SHORT = 1024;
const BRACE = '}'.charCodeAt(0);

/** The check that follows `previous` for this text, or for its bytes. */
export function chainAfter(previous: string, text: string | Uint8Array): string {
  return createHash('sha256').update(previous).update(text).digest('hex').slice(0, 32);
}

export function encodeHeader({ libraryId, sequence, chain, fileSha256 }: LogHeader): Uint8Array {
  const line = `stillroom-log ${LOG_FORMAT} ${libraryId} ${sequence} ${chain} ${fileSha256 ?? '-'}`;
  return Buffer.from(`${line} ${chainAfter('', line)}\n`);
}

/** One transaction as a line of the log, and the check it leaves behind. Throws Problem too-large. */
export function encodeRecord(
  previous: Position,
  at: string,
  statements: readonly LoggedStatement[],
): { bytes: Uint8Array; position: Position } {
  const sequence = previous.sequence + 1;
  const json = JSON.stringify({ seq: sequence, at, do: statements });
  const size = Buffer.byteLength(json);
  if (size > LONGEST_RECORD) throw recordTooLong();
  const chain = chainAfter(previous.chain, json);
  return { bytes: Buffer.from(`${size} ${chain} ${json}\n`), position: { sequence, chain } };
}

/** The line that stands in the log before the library file is replaced by one of this hash. */
export function encodeFileLine(at: Position, sha256: string): Uint8Array {
  return Buffer.from(`file ${sha256} ${chainAfter(at.chain, `file ${sha256}`)}\n`);
}

/**
 * Reads a log. A last record that is not whole is dropped; anything else that is wrong is damage.
 * Throws Problem library-damaged or library-newer.
 * @param part the bytes are the beginning of a log, up to the end of a line: no zeros follow
 */
export function decodeLog(bytes: Uint8Array, { part = false } = {}): LogContents {
  const headerEnd = bytes.indexOf(NEWLINE);
  const { format, header } = decodeHeader(
    textOf(bytes, 0, Math.min(headerEnd < 0 ? bytes.length : headerEnd, SHORT)),
  );
  if (headerEnd < 0) throw damagedLog('its first line is cut short');
  const files = header.fileSha256 === undefined ? [] : [header.fileSha256];
  const { records, length } = decodeLines(bytes, header, headerEnd + 1, files);
  const at = (records.at(-1) ?? header).sequence;
  const { torn, damage } = describeTail(bytes, length, { next: at + 1, padded: format > 1 && !part });
  if (damage !== undefined) throw damagedLog(damage);
  return { bytes, format, header, records, files, length, torn };
}

function decodeLines(
  bytes: Uint8Array,
  header: LogHeader,
  from: number,
  files: string[],
): { records: LogRecord[]; length: number } {
  const records: LogRecord[] = [];
  let position: Position = header;
  let start = from;
  while (start < bytes.length && bytes[start] !== 0) {
    const lineEnd = bytes.indexOf(NEWLINE, start);
    if (lineEnd < 0) break;
    const line = bytes.subarray(start, lineEnd);
    const file = fileOf(line, position);
    if (file !== undefined) files.push(file);
    else {
      const frame = readFrame(line);
      if (!frame) break;
      const record = decodeRecord(frame, position, lineEnd + 1);
      if (record) {
        if (record.sequence !== position.sequence + 1)
          throw damagedLog(`change ${position.sequence + 1} is missing`);
        records.push(record);
        position = record;
      } else if (!records.some(({ chain }) => chain === frame.check)) break;
    }
    start = lineEnd + 1;
  }
  return { records, length: start };
}

/** Part of the log as text. */
export function textOf(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
}

function decodeHeader(line: string): { format: number; header: LogHeader } {
  const [, number, rest = ''] = HEADER.exec(line) ?? [];
  const format = Number(number);
  const whole = format === 1 || line.endsWith(` ${chainAfter('', line.slice(0, line.lastIndexOf(' ')))}`);
  if (whole && format > LOG_FORMAT) throw newerLog();
  const [, beginning, sha256] = format === 1 ? [] : (HEADER_TAIL.exec(rest) ?? []);
  const [, libraryId, sequence, chain] = (whole && HEADER_REST.exec(beginning ?? rest)) || [];
  if (libraryId === undefined || chain === undefined) throw damagedLog('its first line cannot be read');
  const fileSha256 = sha256 === '-' ? undefined : sha256;
  return { format, header: { libraryId, sequence: Number(sequence), chain, fileSha256 } };
}

function newerLog(): Problem {
  return new Problem({
    code: 'library-newer',
    title: 'This library was last used with a newer version of Stillroom.',
    advice: 'Open it with that version or a later one. Nothing was changed.',
  });
}

/** The hash in a line about the file, if its check shows that it was written at this place. */
function fileOf(line: Uint8Array, at: Position): string | undefined {
  if (line.length > SHORT) return undefined;
  const [, sha256, check] = FILE_LINE.exec(textOf(line, 0, line.length)) ?? [];
  return sha256 !== undefined && check === chainAfter(at.chain, `file ${sha256}`) ? sha256 : undefined;
}

/** A whole record taken apart. */
export interface Frame {
  check: string;
  json: Uint8Array;
}

/** One line of the log, without its end, taken apart; undefined when it is no whole record. */
export function readFrame(line: Uint8Array): Frame | undefined {
  const [start, size, check] = FRAME_START.exec(textOf(line, 0, Math.min(line.length, SHORT))) ?? [];
  if (start === undefined || check === undefined) return undefined;
  const json = line.subarray(start.length - 1);
  const isWhole = json.length === Number(size) && json.length <= LONGEST_RECORD && json.at(-1) === BRACE;
  return isWhole ? { check, json } : undefined;
}

/**
 * The record in a line, if its check shows that it was written right after `previous`.
 * @param end where the line ends, its newline included, in the bytes that the record is going to be read from
 */
export function decodeRecord({ check, json }: Frame, previous: Position, end: number): LogRecord | undefined {
  if (check !== chainAfter(previous.chain, json)) return undefined;
  const [, sequence] = SEQUENCE.exec(textOf(json, 0, Math.min(json.length, SHORT))) ?? [];
  return { sequence: Number(sequence), chain: check, start: end - 1 - json.length, end };
}

/** What a record says. */
export function statementsOf(bytes: Uint8Array, { start, end }: LogRecord): LoggedStatement[] {
  const { do: statements } = JSON.parse(textOf(bytes, start, end - 1)) as { do: LoggedStatement[] };
  return statements;
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
