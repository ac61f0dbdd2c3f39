import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestRemainder } from '@core/quantities/largest-remainder';
import { percentFromPpm, ppmFromPercent, sharePpm } from '@core/quantities/share';
import { minorDigits, CURRENCIES } from '@core/quantities/money';
import { NEGATIVE, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const weights = fc.array(fc.oneof(fc.nat(1000), fc.double({ min: 0, max: 1e6, noNaN: true })), {
  minLength: 1,
  maxLength: 15,
});

describe('shares rounded to whole steps', () => {
  // Hamilton's apportionment of the United States' House by the census of 1790: 120 seats for 15 states, as Congress
  // first voted (Balinski M.L., Young H.P., Fair Representation, 1982; from memory).
  it('apportions the 120 seats of 1792 as Hamilton’s bill did', () => {
    const people = [
      630_560, 475_327, 432_879, 353_523, 331_589, 278_514, 236_841, 206_236, 179_570, 141_822, 85_533,
      70_835, 68_705, 68_446, 55_540,
    ];
    expect(largestRemainder(people, 120, 1)).toEqual([21, 16, 14, 12, 11, 9, 8, 7, 6, 5, 3, 2, 2, 2, 2]);
  });

  it('add up to the total, each within a step of its exact share', () => {
    fc.assert(
      fc.property(
        weights,
        fc.integer({ min: 0, max: 1e7 }),
        fc.constantFrom(1, 10, 100, 50),
        (shares, count, step) => {
          const sum = shares.reduce((all, one) => all + one, 0);
          const total = count * step;
          const got = largestRemainder(shares, total, step);
          expect(got.reduce((all, one) => all + one, 0)).toBe(sum === 0 ? 0 : total);
          if (sum === 0) return;
          for (const [at, mass] of got.entries()) {
            expect(mass % step).toBe(0);
            expect(Math.abs(mass - (total * (shares[at] ?? 0)) / sum)).toBeLessThan(step * (1 + 1e-6));
          }
        },
      ),
    );
  });

  it('give a greater share no less, nothing to a share of nothing, and leave whole steps as they are', () => {
    fc.assert(
      fc.property(weights, fc.nat(100_000), (shares, total) => {
        const got = largestRemainder(shares, total, 1);
        for (const [a, one] of shares.entries()) {
          if (one === 0) expect(got[a]).toBe(0);
          for (const [b, other] of shares.entries())
            if (one > other) expect(got[a]).toBeGreaterThanOrEqual(got[b] ?? 0);
        }
        expect(largestRemainder(got, total, 1)).toEqual(got);
      }),
    );
  });

  it('take the nearest multiple of a step for a total between two, and the earlier of equals for what is left', () => {
    expect(largestRemainder([1, 1], 149, 100)).toEqual([100, 0]);
    expect(largestRemainder([1, 1, 1], 100, 1)).toEqual([34, 33, 33]);
    expect(largestRemainder([], 100, 1)).toEqual([]);
  });

  it.each([
    ['Share', NEGATIVE, (x: number) => largestRemainder([1, x], 100, 1)],
    ['Total', NEGATIVE, (x: number) => largestRemainder([1], x, 1)],
    ['Step', NOT_POSITIVE, (x: number) => largestRemainder([1], 100, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('refuses to count what cannot be counted', () => {
    refusal(() => largestRemainder([1], 1e16, 1), /steps this fine/);
    refusal(() => largestRemainder([1e308, 1e308], 100, 1), /steps this fine/);
  });
});

describe('per cent and parts per million', () => {
  it('go there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 2_000_000 }), (ppm) => {
        expect(ppmFromPercent(percentFromPpm(ppm))).toBe(ppm);
      }),
    );
  });

  it.each([
    [0.00005, 1],
    [0.00004, 0],
    // Halves that are no binary numbers: 1.00005 × 10,000 is 10000.499999999998 to a computer.
    [1.00005, 10_001],
    [0.28505, 2_851],
    [-1.00005, -10_001],
    [33.3333, 333_333],
    [100, 1_000_000],
  ])('%d %% is %i ppm, halves away from zero', (percent, ppm) => expect(ppmFromPercent(percent)).toBe(ppm));

  it.each([
    [-1, /negative/],
    [1_000_001, /more than 100/],
    [0.5, /four decimals/],
    [Number.NaN, /./],
  ])('a share of %d ppm is refused', (ppm, says) => {
    expect(sharePpm.safeParse(ppm).error?.issues[0]?.message).toMatch(says);
  });

  // ISO 4217, list one, by the currencies that the language itself knows.
  it.each(CURRENCIES)('%s has the minor unit of ISO 4217', (currency) => {
    const { maximumFractionDigits } = new Intl.NumberFormat('en', {
      style: 'currency',
      currency,
    }).resolvedOptions();
    expect(minorDigits(currency)).toBe(maximumFractionDigits);
  });
});
