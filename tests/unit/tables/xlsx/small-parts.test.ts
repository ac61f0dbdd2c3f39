import { columnLetters, readReference, writeReference } from '@core/tables/xlsx/cell-reference';
import { crc32 } from '@core/tables/xlsx/crc32';
import { emptyMerged, readMerge } from '@core/tables/xlsx/merged-cells';
import { plainDate, serialOfDate, dateOfSerial, timeOfSerial } from '@core/tables/xlsx/serial-dates';
import type { Cell, SheetRow } from '@core/tables/table';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('the check of a piece of an archive', () => {
  // The check value of CRC-32/ISO-HDLC (CRC RevEng catalogue), and those of PNG’s end and of nothing.
  it.each([
    ['123456789', 0xcbf43926],
    ['IEND', 0xae426082],
    ['', 0],
    ['a', 0xe8b7be43],
    ['The quick brown fox jumps over the lazy dog', 0x414fa339],
  ])('of “%s” is the published one', (text, check) => {
    expect(crc32(bytes(text), 0)).toBe(check);
  });

  it('is the same in one piece and in many', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), fc.nat({ max: 60 }), (whole, at) => {
        const first = crc32(whole.subarray(0, at), 0);
        expect(crc32(whole.subarray(at), first)).toBe(crc32(whole, 0));
      }),
      { numRuns: 50 },
    );
  });
});

describe('the place of a cell', () => {
  it.each([
    ['A1', 0, 1],
    ['Z9', 25, 9],
    ['AA10', 26, 10],
    ['AZ1', 51, 1],
    ['BA1', 52, 1],
    ['ZZ1', 701, 1],
    ['AAA1', 702, 1],
    ['$C$7', 2, 7],
    ['XFD1048576', 16_383, 1_048_576],
  ])('%s is column %i, line %i', (reference, column, line) => {
    expect(readReference(reference)).toEqual({ column, line });
  });

  it.each(['', 'A', '1', 'A0', 'XFE1', 'A1048577', 'a1', 'AAAA1', 'A-1', 'A1:B2', 'A01', ' A1'])(
    '“%s” is none',
    (text) => {
      expect(readReference(text)).toBeNull();
    },
  );

  it('is written so that it is read back, anywhere on a sheet, and letters rise with columns', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 16_383 }),
        fc.integer({ min: 1, max: 1_048_576 }),
        (column, line) => {
          expect(readReference(writeReference({ column, line }))).toEqual({ column, line });
          const [one, next] = [columnLetters(column), columnLetters(column + 1)];
          expect(one.length < next.length || (one.length === next.length && one < next)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('cells shown as one', () => {
  const row = (line: number, ...cells: Cell[]): SheetRow => ({ line, hidden: false, cells });
  it('keep the first and lose the others, in their rows and columns and nowhere else', () => {
    const rows = [row(1, 'a', 'b', 'c'), row(2, 'd', 'e', 'f'), row(3, 'g', 'h', 'i')];
    const merge = readMerge('A1:B2', []);
    expect(emptyMerged(rows, [merge])).toEqual([merge]);
    expect(rows.map(({ cells }) => cells)).toEqual([
      ['a', null, 'c'],
      [null, null, 'f'],
      ['g', 'h', 'i'],
    ]);
  });

  it('that meet no row with content are not told of', () => {
    expect(emptyMerged([row(1, 'a')], [readMerge('C1:D1', []), readMerge('A5:B9', [])])).toEqual([]);
  });

  it('may be one cell, which loses nothing', () => {
    const rows = [row(1, 'a', 'b')];
    emptyMerged(rows, [readMerge('B1', [])]);
    expect(rows[0]?.cells).toEqual(['a', 'b']);
  });

  it.each(['B2:A1', 'A1:XFE1', 'here', 'A1:'])(
    '“%s” is no block, and the file is said to be damaged',
    (reference) => {
      expect(() => readMerge(reference, [])).toThrow(/./);
    },
  );
});

describe('days and times of a workbook', () => {
  it.each([
    [0, '00:00'],
    [0.5, '12:00'],
    [0.395833333, '09:30'],
    [1.5, '36:00'],
    [1.5 + 5 / 86_400, '36:00:05'],
  ])('%d of a day is %s', (serial, time) => {
    expect(timeOfSerial(serial)).toBe(time);
  });

  it('go out and come back as they were, from 1 March 1900 to the end of 9999', () => {
    const day = fc.date({ min: new Date('1900-03-01'), max: new Date('9999-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(day, (one) => {
        const iso = one.toISOString().slice(0, 10);
        expect(dateOfSerial(serialOfDate(iso)!, false, false)).toBe(iso);
        const moment = one.toISOString().slice(0, 19);
        expect(dateOfSerial(serialOfDate(moment)!, false, true)).toBe(moment);
      }),
      { numRuns: 60 },
    );
  });

  it('are read without their zone and parts of a second, and refused where no clock shows them', () => {
    expect(plainDate('2026-03-01T09:30:15.25Z')).toBe('2026-03-01T09:30:15');
    expect(plainDate('2026-03-01T09:30+02:00')).toBe('2026-03-01T09:30:00');
    for (const text of ['2026-03-01T24:00', '2026-03-01T09:60', '2026-3-1', '2026-03-01 09:30', '2025-02-29'])
      expect(plainDate(text), text).toBeNull();
  });
});
