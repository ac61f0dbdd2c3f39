import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Problem } from '@core/problems/problem';
import type { SqlValue } from '@db/database';
import {
  chainAfter,
  decodeLog,
  encodeFileLine,
  encodeHeader,
  encodeRecord,
  statementsOf,
  type LoggedStatement,
  type Position,
} from '@db/library/log/log-format';
import { problemOf } from './sample-library';

const FILE_HASH = 'a1'.repeat(32);
const HEADER = { libraryId: 'lib-1', sequence: 4, chain: chainAfter('', 'lib-1'), fileSha256: FILE_HASH };
const ZEROS = 1000;
const AT = '2026-01-31T10:20:30.000Z';

function logOf(changes: LoggedStatement[][], header = HEADER): { bytes: Buffer; ends: number[] } {
  const parts = [Buffer.from(encodeHeader(header))];
  let position: Position = header;
  for (const statements of changes) {
    const record = encodeRecord(position, AT, statements);
    parts.push(Buffer.from(record.bytes));
    position = record.position;
  }
  let end = 0;
  // Zeros follow, as in every log on a disk.
  return {
    bytes: Buffer.concat([...parts, Buffer.alloc(ZEROS)]),
    ends: parts.map((part) => (end += part.length)),
  };
}

const THREE: LoggedStatement[][] = [
  [['INSERT INTO jar VALUES (?, ?, ?)', 'a', 'Crème\n🧴', 1 / 3]],
  [['UPDATE jar SET grams = ?', null]],
  [['DELETE FROM jar WHERE id = ?', 'a'], ['DELETE FROM label']],
];

describe('the change log', () => {
  it('gives back every statement and value exactly', () => {
    const value: fc.Arbitrary<SqlValue> = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => n + 0),
      fc.constant(null),
    );
    const statement = fc
      .tuple(fc.string(), fc.array(value))
      .map(([sql, values]): LoggedStatement => [sql, ...values]);
    fc.assert(
      fc.property(fc.array(fc.array(statement, { minLength: 1 })), (changes) => {
        const { bytes, ends } = logOf(changes);
        const log = decodeLog(bytes);
        const written = JSON.parse(JSON.stringify(changes)) as unknown;
        expect(log.records.map((record) => statementsOf(bytes, record))).toEqual(written);
        expect(log.records.map((record) => record.end)).toEqual(ends.slice(1));
        expect(log).toMatchObject({ header: HEADER, length: ends.at(-1), torn: 0, files: [FILE_HASH] });
      }),
    );
  });

  it('keeps a note with the line and paragraph separators that a web page or a letter was copied with', () => {
    const changes: LoggedStatement[][] = [
      [['UPDATE jar SET note = ?', 'melt\u2028stir\u2029cool\u0085pour']],
      [['DELETE FROM jar']],
    ];
    const { bytes, records } = decodeLog(logOf(changes).bytes);
    expect(records.map((record) => statementsOf(bytes, record))).toEqual(changes);
  });

  it('drops a record that broke off at any byte while it was being written, and keeps all before it', () => {
    const { bytes, ends } = logOf(THREE);
    for (let at = ends[0] ?? 0; at <= (ends[3] ?? 0); at += 1) {
      const broken = Buffer.from(bytes).fill(0, at);
      const log = decodeLog(broken);
      const whole = ends.filter((end) => end <= at).length - 1;
      expect(log.records).toHaveLength(whole);
      expect(log.length).toBe(ends[whole]);
      expect(log.torn).toBe(at - (ends[whole] ?? 0));
    }
  });

  it('drops a last record of which a part of the disk’s blocks is missing', () => {
    const long: LoggedStatement[][] = [...THREE, [['UPDATE jar SET name = ?', 'x'.repeat(3000)]]];
    const { bytes, ends } = logOf(long);
    const [start = 0, end = 0] = ends.slice(-2);
    for (let block = Math.ceil(start / 512) * 512; block + 512 < end; block += 512) {
      const log = decodeLog(Buffer.from(bytes).fill(0, block, block + 512));
      expect(log).toMatchObject({ length: start, torn: end - start });
    }
  });

  it('cut off at any byte is refused, unless only zeros are missing', async () => {
    const { bytes, ends } = logOf(THREE);
    for (let cut = 0; cut <= (ends[3] ?? 0); cut += 1) {
      const problem = await problemOf(() => decodeLog(bytes.subarray(0, cut)), 'library-damaged');
      if (cut >= (ends[0] ?? 0)) expect(problem.message).toContain('cut off');
    }
    for (let cut = (ends[3] ?? 0) + 1; cut <= bytes.length; cut += 1)
      expect(decodeLog(bytes.subarray(0, cut)).records).toHaveLength(3);
  });

  it('with any bit flipped up to its end is refused; a bit among the zeros loses nothing', async () => {
    const { bytes, ends } = logOf(THREE);
    for (let bit = 0; bit < bytes.length * 8; bit += 1) {
      const at = bit >> 3;
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ (1 << (bit & 7));
      const decode = () => decodeLog(flipped);
      if (at === bytes.length - 1) expect(decode).toThrow('cut off');
      else if (at >= (ends[3] ?? 0)) expect(decode().records).toHaveLength(3);
      else expect(decode, `bit ${bit}`).toThrow(Problem);
    }
  });

  it('says what the library file was going to be, also in the midst of changes', () => {
    const { bytes, ends } = logOf(THREE);
    const [, , second = 0] = ends;
    const at = decodeLog(bytes).records[1] ?? HEADER;
    const line = encodeFileLine(at, 'b2'.repeat(32));
    const log = decodeLog(Buffer.concat([bytes.subarray(0, second), line, bytes.subarray(second)]));
    expect(log.files).toEqual([FILE_HASH, 'b2'.repeat(32)]);
    expect(log.records).toHaveLength(3);
  });

  it('of the first format is read as it was written: no hash, no zeros', async () => {
    const { bytes, ends } = logOf(THREE);
    const { libraryId, sequence, chain } = HEADER;
    const header = Buffer.from(`stillroom-log 1 ${libraryId} ${sequence} ${chain}\n`);
    const old = Buffer.concat([header, bytes.subarray(ends[0], ends[3])]);
    expect(decodeLog(old)).toMatchObject({ format: 1, files: [], length: old.length, torn: 0 });
    expect(decodeLog(old).records).toHaveLength(3);
    expect(decodeLog(old.subarray(0, old.length - 5)).records).toHaveLength(2);
    const flipped = Buffer.from(old);
    flipped[old.length - 5] = 0x41;
    await problemOf(() => decodeLog(flipped), 'library-damaged');
    await problemOf(() => decodeLog(header.subarray(0, header.length - 1)), 'library-damaged');
  });

  it('passes over a record that stands there twice', () => {
    const { bytes, ends } = logOf(THREE);
    const second = bytes.subarray(ends[1], ends[2]);
    const third = bytes.subarray(ends[2], ends[3]);
    const doubled = Buffer.concat([
      bytes.subarray(0, ends[2]),
      second,
      second,
      third,
      third,
      Buffer.alloc(9),
    ]);
    expect(decodeLog(doubled).records.map((record) => record.sequence)).toEqual([5, 6, 7]);
    expect(decodeLog(doubled)).toMatchObject({ length: doubled.length - 9, torn: 0 });
  });

  it('refuses a record left out, out of order, or put in from elsewhere', async () => {
    const { bytes, ends } = logOf(THREE);
    const [header, first, second] = ends.map((end, index) => bytes.subarray(ends[index - 1] ?? 0, end));
    const third = bytes.subarray(ends[2], ends[3]);
    const other = logOf([[['DELETE FROM jar']], [['DELETE FROM jar']]], {
      ...HEADER,
      chain: chainAfter('', 'lib-2'),
    });
    const foreign = other.bytes.subarray(other.ends[0], other.ends[1]);
    const parts = [header, first, second].filter((part) => part !== undefined);
    expect(parts).toHaveLength(3);
    for (const wrong of [
      [header, first, third],
      [header, second, third],
      [header, second, first],
      [header, first, foreign, second, third],
    ]) {
      await problemOf(
        () => decodeLog(Buffer.concat([...wrong.filter((part) => part !== undefined), Buffer.alloc(9)])),
        'library-damaged',
      );
    }
  });

  it('says so when the log is of a newer format', async () => {
    const line = 'stillroom-log 3 whatever it may say';
    await problemOf(() => decodeLog(Buffer.from(`${line} ${chainAfter('', line)}\n`)), 'library-newer');
    // One bit of “2” makes a 3 or a 6 of it: the check tells that from a newer log.
    await problemOf(
      () => decodeLog(Buffer.from(`${line} ${chainAfter('', 'another')}\n`)),
      'library-damaged',
    );
  });
});
