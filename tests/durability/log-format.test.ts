import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SqlValue } from '@db/database';
import {
  chainAfter,
  decodeLog,
  encodeHeader,
  encodeRecord,
  type LoggedStatement,
  type Position,
} from '@db/library/log/log-format';
import { problemOf } from './sample-library';

const HEADER = { libraryId: 'lib-1', sequence: 4, chain: chainAfter('', 'lib-1') };
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
  return { bytes: Buffer.concat(parts), ends: parts.map((part) => (end += part.length)) };
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
        expect(log.records.map((record) => record.statements)).toEqual(written);
        expect(log.records.map((record) => record.end)).toEqual(ends.slice(1));
        expect(log).toMatchObject({ header: HEADER, length: bytes.length, torn: 0 });
      }),
    );
  });

  it('keeps a note with the line and paragraph separators that a web page or a letter was copied with', () => {
    const changes: LoggedStatement[][] = [
      [['UPDATE jar SET note = ?', 'melt\u2028stir\u2029cool\u0085pour']],
      [['DELETE FROM jar']],
    ];
    expect(decodeLog(logOf(changes).bytes).records.map(({ statements }) => statements)).toEqual(changes);
  });

  it('drops a record torn at any byte, and keeps all before it', () => {
    const { bytes, ends } = logOf(THREE);
    for (let cut = ends[0] ?? 0; cut <= bytes.length; cut += 1) {
      const log = decodeLog(bytes.subarray(0, cut));
      const whole = ends.filter((end) => end <= cut).length - 1;
      expect(log.records).toHaveLength(whole);
      expect(log.length).toBe(ends[whole]);
      expect(log.torn).toBe(cut - (ends[whole] ?? 0));
    }
  });

  it('drops a last record of which only zeros reached the disk', () => {
    const { bytes, ends } = logOf(THREE);
    const zeros = Buffer.from(bytes);
    zeros.fill(0, ends[2]);
    expect(decodeLog(zeros)).toMatchObject({ length: ends[2], torn: bytes.length - (ends[2] ?? 0) });
  });

  it('refuses a header cut anywhere, and an empty log', async () => {
    const { bytes, ends } = logOf(THREE);
    for (let cut = 0; cut < (ends[0] ?? 0) - 1; cut += 1) {
      await problemOf(() => decodeLog(bytes.subarray(0, cut)), 'library-damaged');
    }
  });

  it('refuses any byte flipped before the last record', async () => {
    const { bytes, ends } = logOf(THREE);
    for (let at = ends[0] ?? 0; at < (ends[2] ?? 0); at += 1) {
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ 0x04;
      await problemOf(() => decodeLog(flipped), 'library-damaged');
    }
  });

  it('passes over a record that stands there twice', () => {
    const { bytes, ends } = logOf(THREE);
    const second = bytes.subarray(ends[1], ends[2]);
    const third = bytes.subarray(ends[2]);
    const doubled = Buffer.concat([bytes.subarray(0, ends[2]), second, second, third, third]);
    expect(decodeLog(doubled).records.map((record) => record.sequence)).toEqual([5, 6, 7]);
    expect(decodeLog(doubled)).toMatchObject({ length: doubled.length, torn: 0 });
  });

  it('refuses a record left out, out of order, or put in from elsewhere', async () => {
    const { bytes, ends } = logOf(THREE);
    const [header, first, second] = ends.map((end, index) => bytes.subarray(ends[index - 1] ?? 0, end));
    const third = bytes.subarray(ends[2]);
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
        () => decodeLog(Buffer.concat(wrong.filter((part) => part !== undefined))),
        'library-damaged',
      );
    }
  });

  it('says so when the log is of a newer format', async () => {
    await problemOf(() => decodeLog(Buffer.from('stillroom-log 2 lib 0 0\n')), 'library-newer');
  });
});
