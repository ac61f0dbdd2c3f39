import { LONGEST_RECORD } from './log-limits';

/** How every record begins after its check. Inside a value it cannot stand: JSON escapes the quotes there. */
const RECORD_MARK = ' {"seq":';
const CHECK_LENGTH = 32;
const RECORD_START = /^[0-9a-f]{32} \{"seq":(\d+),"at":/;
const LONGEST_START = 70;
export const NEWLINE = 0x0a;

/** What follows the last record that holds: bytes of an unfinished one, or what shows that changes were lost. */
export interface Tail {
  torn: number;
  damage?: string;
}

/** What a disk writes at once or not at all: 512 bytes on the smallest. */
const SECTOR = 512;
/** No whole line is shorter, in bytes. */
const SHORTEST_LINE = 70;
/** The beginnings of a record, of any length, up to where its text starts. */
const RECORD_BEGINNING = /^(?:\d+|\d+ [0-9a-f]{0,32}|\d+ [0-9a-f]{32} (\{.*)?)$/s;
/** More than a line about the file has, and than stands before the text of a record, in bytes. */
const LONGEST_BEGINNING = 256;
const FILE_BEGINNING = /^file? ?$|^fi?$|^file [0-9a-f]{0,64}$|^file [0-9a-f]{64} [0-9a-f]{0,32}$/;

/**
 * Tells the end of a log exactly. Records are flushed one by one, so only one that was never acknowledged can be
 * unfinished: it breaks off, or whole sectors of it are missing. One that is there to its last byte and is wrong was
 * written in full, and is damaged; and a padded log always ends with a zero, or its end was cut off.
 * @param start where the last record that holds ends
 * @param next the number of the change that may be unfinished
 */
export function describeTail(
  bytes: Uint8Array,
  start: number,
  { next, padded }: { next: number; padded: boolean },
): Tail {
  if (padded && bytes.at(-1) !== 0)
    return { torn: 0, damage: `its end was cut off, and with it what came after change ${next - 1}` };
  const tail = Buffer.from(bytes.buffer, bytes.byteOffset + start, lastWritten(bytes, start) - start);
  if (tail.length === 0) return { torn: padded ? 0 : bytes.length - start };
  const starts = firstStarts(tail);
  if (starts.length > 1 || (starts[0] ?? next) !== next)
    return { torn: 0, damage: `change ${next} is missing or broken, though later ones are there` };
  if (breaksOff(tail) || missesSector(tail, start))
    return { torn: padded ? tail.length : bytes.length - start };
  return { torn: 0, damage: `change ${next} was written in full and is broken` };
}

/** The numbers of the first two records that begin in these bytes. */
export function firstStarts(bytes: Uint8Array): number[] {
  const tail = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const starts: number[] = [];
  for (let at = tail.indexOf(RECORD_MARK); at >= 0 && starts.length < 2;) {
    const from = Math.max(0, at - CHECK_LENGTH);
    const [, sequence] = RECORD_START.exec(tail.toString('latin1', from, from + LONGEST_START)) ?? [];
    if (sequence !== undefined) starts.push(Number(sequence));
    at = tail.indexOf(RECORD_MARK, at + 1);
  }
  return starts;
}

/** Where the last byte that is not zero ends. */
function lastWritten(bytes: Uint8Array, from: number): number {
  let end = bytes.length;
  while (end > from && bytes[end - 1] === 0) end -= 1;
  return end;
}

/** Whether this is how a line begins, and not a whole one. */
function breaksOff(tail: Buffer): boolean {
  if (tail.length < SHORTEST_LINE) return true;
  if (tail.length > LONGEST_RECORD) return false;
  if (tail.includes(0) || tail.includes(NEWLINE)) return false;
  const text = tail.toString('latin1', 0, LONGEST_BEGINNING);
  if (FILE_BEGINNING.test(text)) return true;
  const [whole, json = ''] = RECORD_BEGINNING.exec(text) ?? [];
  if (whole === undefined) return false;
  const rest = json === '' ? 0 : tail.length - text.length;
  return (rest > 0 || tail.length <= LONGEST_BEGINNING) && json.length + rest <= Number.parseInt(whole, 10);
}

/** Whether its beginning or a whole sector of it is zeros. */
function missesSector(tail: Buffer, start: number): boolean {
  if (tail[0] === 0) return true;
  if (!tail.includes(0)) return false;
  for (let at = 0; at < tail.length;) {
    const end = Math.min(tail.length, at + SECTOR - ((start + at) % SECTOR));
    if (at > 0 && tail.subarray(at, end).every((byte) => byte === 0)) return true;
    at = end;
  }
  return false;
}
