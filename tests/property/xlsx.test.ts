import { Problem } from '@core/problems/problem';
import { type Cell, isDate, type Sheet } from '@core/tables/table';
import { unescapeText, escapeText } from '@core/tables/xlsx/escaped-text';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { lawfulSheetNames } from '@core/tables/xlsx/sheet-names';
import { dateOfSerial, serialOfDate } from '@core/tables/xlsx/serial-dates';
import { writeXlsx } from '@core/tables/xlsx/write-xlsx';
import { strToU8, unzipSync, zipSync } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const iso = (seconds: number) => new Date(seconds * 1000).toISOString().slice(0, 19);
const FIRST = Date.UTC(1900, 2, 1) / 1000;
const LAST = Date.UTC(9999, 11, 31, 23, 59, 59) / 1000;
const someMoment = fc.integer({ min: FIRST, max: LAST }).map(iso);
const someDate = fc
  .oneof(
    someMoment,
    someMoment.map((moment) => moment.slice(0, 10)),
  )
  .map((date) => ({ date }));
/** Pieces that escaping could trip over, and any letters, halves of pairs and controls among them. */
const someText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 20 }),
  fc.string({
    unit: fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code)),
    maxLength: 12,
  }),
  fc
    .array(
      fc.constantFrom(
        '_',
        'x',
        '0',
        '00',
        '41',
        '5F',
        '_x0041_',
        '\u0001',
        '\r',
        '\n',
        '\ud800',
        '<',
        '&amp;',
        ']]>',
        '=',
      ),
    )
    .map((pieces) => pieces.join('')),
  fc.constantFrom(' ', '  two  ', '5%', '2026-03-01', '1e3', 'TRUE', '#N/A', '\ufeff'),
);
const someError = fc.constantFrom('#DIV/0!', '#N/A', '#NAME?', '#NULL!', '#NUM!', '#REF!', '#VALUE!');
const someCell: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 4, arbitrary: someText },
  fc.constant(null),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer(),
  fc.boolean(),
  someDate,
  someError.map((error) => ({ error })),
);
const someTable = fc.record({
  name: someText,
  head: fc.array(someText, { maxLength: 5 }),
  rows: fc.array(fc.array(someCell, { maxLength: 6 }), { maxLength: 8 }),
});

/** What is read of a row: an empty text is an empty cell, minus zero is zero, and what is empty at its end is left out. */
function asRead(cells: readonly Cell[]): Cell[] {
  const read = cells.map((cell) => (cell === '' ? null : cell === 0 ? 0 : cell));
  return read.slice(0, read.findLastIndex((cell) => cell !== null) + 1);
}

describe('writing and reading a workbook', () => {
  it('gives the same cells back, whatever they hold', () => {
    fc.assert(
      fc.property(fc.array(someTable, { minLength: 1, maxLength: 3 }), (tables) => {
        const names = lawfulSheetNames(tables.map((table) => table.name));
        const expected = tables.map(({ head, rows }, at): Sheet => {
          const all = head.length > 0 ? [head, ...rows] : rows;
          const lines = all.map((cells, row) => ({ line: row + 1, hidden: false, cells: asRead(cells) }));
          return {
            name: names[at]!,
            hidden: false,
            notes: [],
            rows: lines.filter((row) => row.cells.length > 0),
          };
        });
        expect(readXlsx(writeXlsx(tables))).toStrictEqual(expected);
      }),
      { numRuns: 500 },
    );
  });

  it('gives every date and moment back, and each day the number after the one before', () => {
    fc.assert(
      fc.property(someDate, ({ date }) => {
        const serial = serialOfDate(date)!;
        expect(dateOfSerial(serial, false, date.includes('T'))).toBe(date);
        expect(dateOfSerial(Math.floor(serial) + 1, false, false) ?? '10000').toSatisfy((next: string) =>
          next === '10000' ? date.startsWith('9999-12-31') : next > date.slice(0, 10),
        );
      }),
      { numRuns: 5_000 },
    );
  });

  it('escapes so that reading undoes it, and XML can hold it', () => {
    fc.assert(
      fc.property(someText, (text) => {
        const escaped = escapeText(text);
        expect(unescapeText(escaped)).toBe(text);
        expect(escaped.isWellFormed()).toBe(true);
      }),
      { numRuns: 20_000 },
    );
  });

  it('names sheets lawfully and apart, whatever they were to be called', () => {
    const someName = fc.oneof(
      someText,
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.constantFrom('a', 'A', "'", 'history'),
    );
    fc.assert(
      fc.property(fc.array(someName, { maxLength: 30 }), (names) => {
        const lawful = lawfulSheetNames(names);
        for (const name of lawful) {
          expect(name).toMatch(/^[^[\]:*?/\\]{1,31}$/);
          expect(name).not.toMatch(/^'|'$|^\s*$/);
        }
        expect(new Set(lawful.map((name) => name.toLowerCase())).size).toBe(names.length);
      }),
    );
  });
});

const MIXED = writeXlsx([
  {
    name: 'Stock',
    head: ['Name', 'HLB', 'Tested'],
    rows: Array.from({ length: 40 }, (_, at): Cell[] => [
      `Wax ${at} _x0041_`,
      at / 7,
      { date: '2026-03-01' },
      at % 2 === 0,
    ]),
  },
  { name: 'Second', head: ['A'], rows: [[{ error: '#N/A' }], ['=1+1']] },
]);

/** A damaged workbook is read or refused with a reason, never anything else. */
function readOrRefuse(bytes: Uint8Array): 'read' | 'refused' {
  try {
    for (const { rows } of readXlsx(bytes))
      for (const { cells } of rows)
        for (const cell of cells) if (isDate(cell)) expect(cell.date).toMatch(/^\d{4}-/);
    return 'read';
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    expect(error.code).toBe('invalid-input');
    expect(error.advice).not.toBe('');
    return 'refused';
  }
}

describe('a damaged workbook is read or refused with a reason', () => {
  const someChange = fc.tuple(fc.nat({ max: MIXED.length - 1 }), fc.integer({ min: 1, max: 255 }));

  it('where bytes of the file are changed', () => {
    fc.assert(
      fc.property(fc.array(someChange, { minLength: 1, maxLength: 8 }), (changes) => {
        const bytes = MIXED.slice();
        for (const [at, by] of changes) bytes[at]! ^= by;
        readOrRefuse(bytes);
      }),
      { numRuns: 1_500 },
    );
  });

  it('where a stretch of it is gone, or there twice', () => {
    fc.assert(
      fc.property(fc.nat(MIXED.length), fc.nat(MIXED.length), (from, to) => {
        readOrRefuse(Buffer.concat([MIXED.subarray(0, from), MIXED.subarray(to)]));
      }),
      { numRuns: 1_000 },
    );
  });

  // The checks of the archive are made anew, so that the damage comes through to what reads the parts.
  it('where what is in its parts is changed', () => {
    const parts = unzipSync(MIXED);
    const names = Object.keys(parts);
    const splices = [
      '<',
      '>',
      '"',
      '&#0;',
      '&#x41;',
      '_x0041_',
      '</row>',
      '<row r="1">',
      'r="A1"',
      't="s"',
      '<v>9e9</v>',
      '-1',
      '99999999',
    ];
    let read = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.array(
          fc.tuple(
            fc.double({ min: 0, max: 1, noNaN: true }),
            fc.nat(9),
            fc.constantFrom('', 'z', '0', ...splices),
          ),
          {
            minLength: 1,
            maxLength: 3,
          },
        ),
        (name, edits) => {
          let text = Buffer.from(parts[name]!).toString('latin1');
          for (const [share, cut, put] of edits) {
            const at = Math.floor(share * text.length);
            text = text.slice(0, at) + put + text.slice(at + cut);
          }
          if (readOrRefuse(zipSync({ ...parts, [name]: strToU8(text, true) }, { level: 0 })) === 'read')
            read++;
        },
      ),
      { numRuns: 1_500 },
    );
    expect(read).toBeGreaterThan(0);
  });
});
