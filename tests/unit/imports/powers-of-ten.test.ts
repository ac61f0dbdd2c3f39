import { moneyOf } from '@core/imports/money-and-dates';
import { namesOf } from '@core/imports/names';
import { decimalMarkOf, quantityOf } from '@core/imports/quantity';
import { readCell } from '@core/imports/read-cell';
import { targetOf } from '@core/imports/targets';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

// Spreadsheets write a number of many noughts so when a table is saved as CSV: 0.00001 becomes 1E-05. From memory.
describe('a number that a spreadsheet wrote with a power of ten', () => {
  it.each([
    ['1E-05', 0.000_01],
    ['1e-5', 0.000_01],
    ['2.5E-04', 0.000_25],
    ['2,5E-04', 0.000_25],
    ['1.234E-05', 0.000_012_34],
    ['-4.5E+01', -45],
    ['1E+06', 1_000_000],
    ['1E6', 1_000_000],
    ['5.0E0', 5],
    ['1E−05', 0.000_01],
  ])('%s is %d, whichever mark the table has shown so far', (text, value) => {
    expect(quantityOf(text, null)).toEqual({ ok: true, low: null, value, high: null, unit: '' });
  });

  it('keeps its unit, its bound and the other end of its range', () => {
    expect(quantityOf('1E-03 %', '.')).toMatchObject({ ok: true, value: 0.001, unit: '%' });
    expect(quantityOf('< 1E-04', '.')).toMatchObject({ low: null, value: null, high: 0.0001 });
    expect(quantityOf('1E-05 – 1E-04', '.')).toMatchObject({ low: 0.000_01, value: null, high: 0.0001 });
    expect(quantityOf('1E+04-2.5E+04 mPa·s', '.')).toMatchObject({
      low: 10_000,
      high: 25_000,
      unit: 'mpa·s',
    });
  });

  it('is any number from a billionth to a billion, as a program writes it', () => {
    const digits = fc.integer({ min: 1, max: 999_999 });
    fc.assert(
      fc.property(
        digits,
        fc.integer({ min: -9, max: 9 }),
        fc.constantFrom('.', ','),
        (whole, power, mark) => {
          const value = Number(`${whole}e${power}`);
          const written = value.toExponential().toUpperCase().replace('.', mark);
          expect(quantityOf(written, mark as '.' | ',')).toMatchObject({ ok: true, value });
          expect(quantityOf(written, null)).toMatchObject({ ok: true, value });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('shows the decimal mark of its table where it leaves no doubt', () => {
    expect(decimalMarkOf(['1,5E-05', '3'])).toBe(',');
    expect(decimalMarkOf(['1.5E-05', '3'])).toBe('.');
    expect(decimalMarkOf(['1E-05', '3'])).toBeNull();
  });

  it.each(['E-05', '1E123', '1EE5', '1E5.5', '2 5E3'])('“%s” is none', (text) => {
    expect(quantityOf(text, null)).toMatchObject({
      ok: false,
      message: expect.stringMatching(/not a number/) as string,
    });
  });

  it('without its power is a number of a unit that no column has', () => {
    const cell = readCell('1E', targetOf('figures.hlb'), '', { mark: '.', order: null, words: {} });
    expect(cell).toEqual({ ok: false, message: '“1E”: e is no unit of HLB. It has no unit.' });
  });

  it('fills a cell in the unit of its target: a dose of 0.001 % is 10 ppm', () => {
    const ways = { mark: '.', order: null, words: {} } as const;
    const read = (key: string, text: string, headed = '') => readCell(text, targetOf(key), headed, ways);
    expect(read('usage.maxPpm', '1E-03')).toEqual({ ok: true, value: 10 });
    expect(read('usage.maxPpm', '1E+03', 'ppm')).toEqual({ ok: true, value: 1_000 });
    expect(read('line.amount', '1E-03')).toEqual({ ok: true, value: { percent: 0.001, toHundred: false } });
    expect(read('figures.viscosity', '1.2E+05')).toEqual({
      ...{ ok: true, value: { low: null, value: 120_000, high: null } },
    });
    expect(read('line.amount', '1E+03')).toEqual({
      ok: false,
      message: '“1E+03” is not a share of 0 to 100 %.',
    });
  });

  it('is an amount of money too, and no part of a name', () => {
    expect(moneyOf('1.2E+03 EUR', '.')).toEqual({ ok: true, amount: 1_200, currency: 'EUR' });
    expect(namesOf('Tocopherol (1E-01 %)', '.')).toEqual([
      { inci: 'Tocopherol', lowPpm: 1_000, highPpm: 1_000 },
    ]);
    expect(namesOf('Polyglyceryl-4E2', '.').map(({ inci }) => inci)).toEqual(['Polyglyceryl-4E2']);
  });
});
