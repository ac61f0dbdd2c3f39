import { readCell } from '@core/imports/read-cell';
import { dateOf, dayOrderOf } from '@core/imports/money-and-dates';
import { monthOf } from '@core/imports/month-names';
import { targetOf } from '@core/imports/targets';
import { describe, expect, it } from 'vitest';

const day = (text: string, order: 'day first' | 'month first' | null = null) => {
  const read = dateOf(text, order);
  return read.ok ? read.date : read.message;
};

describe('a year of two digits', () => {
  // POSIX.1-2017, strptime, %y: 69 to 99 are 1969 to 1999, 00 to 68 are 2000 to 2068.
  it.each([
    ['31.12.97', '1997-12-31'],
    ['1.7.76', '1976-07-01'],
    ['1.1.69', '1969-01-01'],
    ['31.12.68', '2068-12-31'],
    ['1.1.00', '2000-01-01'],
    ['29.2.24', '2024-02-29'],
    ['15/8/31', '2031-08-15'],
    ['1-Mar-99', '1999-03-01'],
  ])('%s is %s: a price or a law of the last century stays there', (text, iso) => {
    expect(day(text)).toBe(iso);
  });
});

describe('a day with the year first', () => {
  it.each([
    '2026-03-04',
    '2026/03/04',
    '2026.03.04',
    '2026-3-4',
    '2026/3/4',
    '2026-03-04T09:30:00',
    ' 2026-03-04 ',
  ])('“%s” is the fourth of March, in a table of any order', (text) => {
    for (const order of [null, 'day first', 'month first'] as const)
      expect(day(text, order)).toBe('2026-03-04');
  });
});

describe('a month by its name (CLDR; how spreadsheets write it from memory)', () => {
  it.each([
    ['4 March 2026', '2026-03-04'],
    ['04-Mar-2026', '2026-03-04'],
    ['04-Mar-26', '2026-03-04'],
    ['March 4, 2026', '2026-03-04'],
    ['Mar 4 2026', '2026-03-04'],
    ['4. März 2026', '2026-03-04'],
    ['4. Mrz. 2026', '2026-03-04'],
    ['1er août 2026', '2026-08-01'],
    ['15 févr. 2026', '2026-02-15'],
    ['3 de mayo de 2026', '2026-05-03'],
    ['2 giugno 2026', '2026-06-02'],
    ['24. Dez. 2025', '2025-12-24'],
    ['22nd Oct 2025', '2025-10-22'],
  ])('“%s”', (text, iso) => {
    expect(day(text)).toBe(iso);
  });

  it('is the same for its beginning where that leaves no doubt, and asked for where it does', () => {
    expect([monthOf('jan'), monthOf('JÄNNER'), monthOf('Sept'), monthOf('dic')]).toEqual([1, 1, 9, 12]);
    expect([monthOf('jui'), monthOf('ma'), monthOf('Smarch'), monthOf('')]).toEqual([null, null, null, null]);
    expect(day('3 jui 2026')).toContain('is not a date');
    expect(day('31 Feb 2026')).toContain('is not a date');
  });
});

describe('what is no day', () => {
  it.each([
    '03/28',
    '03/2028',
    '2028',
    'Q3 2028',
    'KW 12',
    '45000',
    'soon',
    '12:30',
    '1.2-2026',
    '2026-03.04',
  ])('“%s” is refused with how to write one', (text) => {
    expect(day(text, 'day first')).toBe(`“${text}” is not a date. Write it as year-month-day: 2026-03-31.`);
  });
  it.each(['0001-01-01', '1899-12-30', '1.1.0000', '9999-12-31'])(
    '“%s” is what programs write for none',
    (text) => {
      expect(day(text)).toContain('is not a date');
    },
  );
  it.each(['31.04.2026', '29.02.2025', '2026-02-30', '0.1.2026', '13/13/2026'])(
    '“%s” is not in the calendar',
    (text) => {
      expect(day(text, 'day first')).toContain('is not a date');
    },
  );
});

describe('the order of days and months', () => {
  it('is not taken from what holds no month, such as the chains of an ester', () => {
    expect(dayOrderOf(['16/18/20', '22-18-16'])).toBeNull();
    expect(dayOrderOf(['16/18/20', '4/25/2026'])).toBe('month first');
  });
  it('two days of one table never tell two orders: then each is asked for', () => {
    const order = dayOrderOf(['25/4/2026', '4/25/2026', '3/4/2026']);
    expect(order).toBeNull();
    expect(day('3/4/2026', order)).toContain('may begin with the day or with the month');
    expect(day('25/4/2026', order)).toBe('2026-04-25');
  });
  it('a day against its table’s order is refused, not turned round', () => {
    expect(day('25/4/2026', 'month first')).toContain('is not a date');
  });
});

describe('a cell for the day of a price', () => {
  const read = (cell: Parameters<typeof readCell>[0]) =>
    readCell(cell, targetOf('offer.date'), '', { mark: null, order: null, words: {} });
  it('is a date of the spreadsheet, with or without its time, or a day as text', () => {
    expect(read({ date: '2026-03-01' })).toEqual({ ok: true, value: '2026-03-01' });
    expect(read({ date: '2026-03-01T09:30:00' })).toEqual({ ok: true, value: '2026-03-01' });
    expect(read('1.3.2026')).toEqual({ ok: true, value: '2026-03-01' });
    expect(read('n/a')).toEqual({ ok: true, value: undefined });
    expect(read(46_082)).toMatchObject({ ok: false });
  });
});
