import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDate, formatMoment } from '@core/locale/dates';
import { editNumber } from '@core/locale/edit-number';
import { formatMass, massUnit } from '@core/locale/mass';
import { formatMoney } from '@core/locale/money';
import { decimalSign, formatNumber, formatShare, shareDigits, type Region } from '@core/locale/numbers';
import { readableNumber } from '@core/locale/readable';
import { capital, joined, yesNo } from '@core/locale/words';
import { readNumber } from '@core/quantities/read-number';

const REGIONS: readonly Region[] = ['en-GB', 'en-US', 'de-DE', 'fr-FR'];
const region = fc.constantFrom(...REGIONS);
/** What is printed, read as a number again. */
const readBack = (text: string): number => {
  const reading = readNumber(text.replace('−', '-'));
  return reading.ok ? reading.value : Number.NaN;
};

describe('numbers as a region writes them', () => {
  it('in a field are read back as they were, to the decimals shown', () => {
    fc.assert(
      fc.property(
        region,
        fc.integer({ min: -1e10, max: 1e10 }),
        fc.integer({ min: 0, max: 6 }),
        (at, n, digits) => {
          const value = n / 10 ** digits;
          expect(readBack(editNumber(value, at, digits))).toBe(value === 0 ? 0 : value);
        },
      ),
    );
    expect(editNumber(-0.00001, 'en-GB')).toBe('0');
    expect(editNumber(1200, 'de-DE')).toBe('1200');
    expect(editNumber(0.1 + 0.2, 'de-DE')).toBe('0,3');
  });

  it('printed with thousands marks are read back too', () => {
    fc.assert(
      fc.property(region, fc.integer({ min: -1e9, max: 1e9 }), (at, n) => {
        const text = formatNumber(n / 100, at, 2);
        expect(readBack(text)).toBeCloseTo(n / 100, 9);
      }),
    );
  });

  it('that round to nothing have no sign, as a number, a share or money', () => {
    fc.assert(
      fc.property(region, fc.double({ min: -0.00049, max: 0.00049, noNaN: true }), (at, tiny) => {
        expect(formatNumber(tiny, at)).toBe('0');
        expect(formatMoney(tiny, 'EUR', at)).toBe(formatMoney(0, 'EUR', at));
      }),
    );
    expect(formatNumber(-0.0006, 'en-GB')).toBe('-0.001');
    expect(formatMoney(-50, 'EUR', 'en-GB')).toBe('-€0.50');
    expect(formatShare(-1, 'en-GB')).toBe('-0.0001');
  });

  it('never show a number that is something as nothing in what is read on screen', () => {
    fc.assert(
      fc.property(region, fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.nat(5), (at, value, digits) => {
        const text = readableNumber(value, at, digits);
        if (value === 0) expect(Number(text.replace(',', '.'))).toBe(0);
        else expect(text).toMatch(/[1-9]/);
        expect(text).not.toContain('-');
      }),
    );
  });

  it.each(REGIONS)('%s has one decimal sign, in every format', (at) => {
    expect(formatNumber(0.5, at, 1)).toBe(`0${decimalSign(at)}5`);
    expect(editNumber(0.5, at)).toBe(`0${decimalSign(at)}5`);
  });
});

describe('shares of a column', () => {
  it('are shown exactly by the decimals that it is given, and by no fewer', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1_000_000), { minLength: 1, maxLength: 12 }), (shares) => {
        const digits = shareDigits(shares);
        const exact = (count: number): boolean =>
          shares.every((ppm) => Math.round(readBack(formatShare(ppm, 'en-GB', count)) * 10_000) === ppm);
        expect(exact(digits)).toBe(true);
        if (digits > 2) expect(exact(digits - 1)).toBe(false);
      }),
    );
  });
});

describe('masses', () => {
  it('are said in a unit that leaves at least one and fewer than a thousand of it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999_999 }), (mg) => {
        const size = { mg: 1, g: 1_000, kg: 1_000_000 }[massUnit(mg)];
        expect(mg / size).toBeGreaterThanOrEqual(1);
        expect(mg / size).toBeLessThan(1_000);
        expect(massUnit(-mg)).toBe(massUnit(mg));
      }),
    );
    expect([999, 1_000, 999_999, 1_000_000].map(massUnit)).toEqual(['mg', 'g', 'g', 'kg']);
  });

  it('shown to a readability are multiples of it, read back exactly', () => {
    fc.assert(
      fc.property(fc.constantFrom(1, 10, 100, 1_000, 50, 500, 5_000), fc.nat(10_000), (step, count) => {
        const mg = step * count;
        const [figure = '', unit = 'g'] = formatMass(mg, 'en-GB', step).split('\u00a0');
        expect(readBack(figure) * { mg: 1, g: 1_000, kg: 1_000_000 }[unit as 'g']).toBeCloseTo(mg, 6);
      }),
    );
  });
});

describe('days', () => {
  it('of every year stay the day that they are', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1970-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }),
        (date) => {
          const iso = date.toISOString().slice(0, 10);
          const [year, , day] = iso.split('-');
          expect(formatDate(iso, 'en-GB', 'Pacific/Kiritimati')).toMatch(
            new RegExp(`^${Number(day)} \\w+ ${year}$`),
          );
        },
      ),
    );
  });

  it.each(['2026-02-30', '2026-13-01', '2025-02-29', '2026-00-10', '', 'soon'])('“%s” is none', (iso) => {
    expect(() => formatDate(iso, 'en-GB')).toThrow(RangeError);
    expect(() => formatMoment(iso, 'en-GB')).toThrow(RangeError);
  });

  it('the leap day is one, and a moment has its hour where the reader is', () => {
    expect(formatDate('2028-02-29', 'en-GB')).toBe('29 Feb 2028');
    expect(formatMoment('2026-03-31T23:30:00Z', 'en-GB', 'Europe/Berlin')).toBe('1 Apr 2026, 01:30');
  });
});

describe('words', () => {
  it.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a and b'],
    [['a', 'b', 'c'], 'a, b and c'],
  ])('%j joined is “%s”', (words, text) => expect(joined(words)).toBe(text));

  it('capitals leave the trade’s own signs alone', () => {
    expect(['oil', 'o/w emulsion', 'w/o', '', 'élan'].map(capital)).toEqual([
      'Oil',
      'o/w emulsion',
      'w/o',
      '',
      'Élan',
    ]);
    expect([true, false, null].map(yesNo)).toEqual(['Yes', 'No', '']);
  });
});
