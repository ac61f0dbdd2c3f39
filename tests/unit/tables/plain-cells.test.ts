import { inert, readCsv } from '@core/tables/csv';
import { sureNumber } from '@core/tables/sure-number';
import { cellText, isDate, isError, type Cell } from '@core/tables/table';
import { readNumber } from '@core/quantities/read-number';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const cellsOf = (text: string) => readCsv(text, 'file').rows.map(({ cells }) => cells);

describe('a cell as a maker reads it', () => {
  it.each<[Cell, string]>([
    [null, ''],
    ['  as written ', '  as written '],
    [0, '0'],
    [-0.5, '-0.5'],
    [1_000_000, '1000000'],
    [true, 'yes'],
    [false, 'no'],
    [{ date: '2026-03-01' }, '2026-03-01'],
    [{ date: '2026-03-01T09:30:00' }, '2026-03-01 09:30:00'],
    [{ error: '#N/A' }, '#N/A'],
  ])('%j reads “%s”', (cell, text) => {
    expect(cellText(cell)).toBe(text);
  });

  it('is a date or an error only where it says so', () => {
    expect([null, '2026-03-01', 5, { error: '#REF!' }].some((cell) => isDate(cell))).toBe(false);
    expect([null, '#REF!', 5, { date: '2026-03-01' }].some((cell) => isError(cell))).toBe(false);
  });
});

describe('a number that goes out', () => {
  it('is never of three decimals alone, which another program takes for thousands', () => {
    expect(sureNumber(1.2)).toBe('1.2');
    expect(sureNumber(1.25)).toBe('1.25');
    expect(sureNumber(1.205)).toBe('1.2050');
    expect(sureNumber(-0.125)).toBe('-0.1250');
    expect(sureNumber(1234)).toBe('1234');
  });
  it('has its zeros written out, however small', () => {
    expect(sureNumber(1e-7)).toBe('0.0000001');
    expect(sureNumber(-2.5e-9)).toBe('-0.0000000025');
  });
  it('is the same number again when it is read', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const read = readNumber(sureNumber(value));
        expect(read).toEqual({ ok: true, value: value === 0 ? 0 : value });
      }),
      { numRuns: 200 },
    );
  });
});

describe('what parts the cells', () => {
  it.each([
    ['semicolons, where every number has a comma', 'INCI;%\nAqua;70,5\nGlycerin;5,25', 2],
    ['commas, where names hold semicolons in quotation marks', 'INCI,Note\n"Aqua; Glycerin",a\n"B; C",b', 2],
    ['tabs, where texts hold commas', 'INCI\tNote\nAqua, pure\tx\nGlycerin, dry\ty', 2],
    ['bars', 'INCI|Share|Note\nAqua|70|x\nGlycerin|5|y', 3],
  ])('%s', (_, text, width) => {
    expect(new Set(cellsOf(text).map(({ length }) => length))).toEqual(new Set([width]));
  });

  it('is told in words', () => {
    expect(readCsv('a;b\n1;2', 'file').notes).toEqual(['The cells are separated by semicolons.']);
    expect(readCsv('sep=,\na,b', 'file').notes).toEqual(['The cells are separated by commas.']);
    expect(readCsv('sep=#\na#b', 'file').notes).toEqual(['The cells are separated by #.']);
  });

  it('one column alone is a table of one column: a comma in one of its texts parts nothing off', () => {
    expect(cellsOf('INCI\nAqua\nGlycerin\nOils\nFats')).toEqual([
      ['INCI'],
      ['Aqua'],
      ['Glycerin'],
      ['Oils'],
      ['Fats'],
    ]);
  });

  it('does not hang on how lines end, and the file’s name is the sheet’s', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const sheet = readCsv(['a;b', '1;2', ''].join(end), 'shelf.csv');
      expect(sheet.rows.map(({ cells }) => cells)).toEqual([
        ['a', 'b'],
        ['1', '2'],
      ]);
      expect(sheet.rows.map(({ line }) => line)).toEqual([1, 2]);
      expect(sheet.name).toBe('shelf.csv');
    }
  });

  it('a row that is shorter or longer than the heading keeps its cells', () => {
    expect(cellsOf('a;b;c\n1\n1;2;3;4')).toEqual([['a', 'b', 'c'], ['1'], ['1', '2', '3', '4']]);
  });
});

describe('text that a spreadsheet would run', () => {
  it.each(['=1+1', '+49 30 1234', '-cmd', '@SUM', '\tx', "'=x"])('“%s” is marked', (text) => {
    expect(inert(text)).toBe(`'${text}`);
  });
  it.each(['-5', '+3,5', '-0.25', 'Aqua', '', 'a=b', "l'eau", '5-10'])('“%s” stays as it is', (text) => {
    expect(inert(text)).toBe(text);
  });
});
