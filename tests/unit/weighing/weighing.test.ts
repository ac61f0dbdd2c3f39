import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumWeight, roundingSd } from '@core/weighing/minimum-weight';
import { ACCURACY_CLASSES, permissibleError, type AccuracyClass } from '@core/weighing/permissible-error';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const readability = fc.constantFrom(0.00001, 0.0001, 0.001, 0.01, 0.1, 1, 5);

describe('what a balance weighs within a limit', () => {
  it('the rounding of two readings, by the variance of two even spreads', () => {
    // An even spread of width d has the variance d²/12; the difference of two readings twice that.
    fc.assert(
      fc.property(readability, (d) => {
        expect(roundingSd(d, 'g').value ** 2).toBeCloseTo((2 * d * d) / 12, 12);
      }),
    );
  });

  it('worked by hand: s 0.3 mg, 0.1 %: 2 × 0.3 / 0.001 = 600 mg; a better s than 0.41 d counts as 0.41 d', () => {
    expect(minimumWeight(0.3, 0.1, 0.1, 'mg').value).toBeCloseTo(600, 9);
    // 2 × 0.41 × 0.1 / 0.001
    for (const standardDeviation of [null, 0, 0.01, 0.041])
      expect(minimumWeight(standardDeviation, 0.1, 0.1, 'mg').value).toBeCloseTo(82, 9);
    expect(minimumWeight(0.0411, 0.1, 0.1, 'mg').value).toBeGreaterThan(82);
  });

  it('at the least weight twice the deviation is just the limit; it never falls with s or d, nor with a tighter limit', () => {
    const sd = fc.double({ min: 0, max: 10, noNaN: true });
    const limit = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(sd, readability, limit, (s, d, percent) => {
        const least = minimumWeight(s, d, percent, 'g').value;
        const taken = minimumWeight(s, d, percent, 'g').steps[0]?.result ?? 0;
        expect((2 * taken) / least).toBeCloseTo(percent / 100, 12);
        expect(minimumWeight(s + 1, d, percent, 'g').value).toBeGreaterThanOrEqual(least);
        expect(minimumWeight(s, 2 * d, percent, 'g').value).toBeGreaterThanOrEqual(least);
        expect(minimumWeight(s, d, percent / 2, 'g').value / least).toBeCloseTo(2, 9);
      }),
    );
  });

  it.each([
    ['Readability', NOT_POSITIVE, (x: number) => roundingSd(x, 'g')],
    ['Readability', NOT_POSITIVE, (x: number) => minimumWeight(0.1, x, 0.1, 'g')],
    ['Standard deviation', NEGATIVE, (x: number) => minimumWeight(x, 0.1, 0.1, 'g')],
    ['Limit', [...NO_NUMBERS, 0, 0.00009, 100.1], (x: number) => minimumWeight(0.1, 0.1, x, 'g')],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});

/** OIML R 76-1, Table 6 (from memory): up to how many e the error is 0.5, 1 and 1.5 e. */
const TABLE_6: Record<AccuracyClass, [number, number, number]> = {
  I: [50_000, 200_000, 1_000_000],
  II: [5_000, 20_000, 100_000],
  III: [500, 2_000, 10_000],
  IIII: [50, 200, 1_000],
};

describe('what a verified scale may be off', () => {
  it.each(ACCURACY_CLASSES)('class %s steps at its bounds, and not before', (accuracyClass) => {
    // Intervals whose products with the bounds are no exact binary numbers.
    for (const e of [0.001, 0.1, 0.3, 1, 2, 50])
      for (const [band, most] of TABLE_6[accuracyClass].entries()) {
        const at = (load: number): number => permissibleError(accuracyClass, e, load).value / e;
        expect(at(most * e), `${e} at ${most}`).toBeCloseTo([0.5, 1, 1.5][band] ?? 0, 12);
        expect(at((most - 1) * e), `${e} below ${most}`).toBeCloseTo([0.5, 1, 1.5][band] ?? 0, 12);
        if (band < 2) expect(at((most + 1) * e)).toBeCloseTo([1, 1.5][band] ?? 0, 12);
      }
  });

  it.each(['II', 'III', 'IIII'] as const)('class %s weighs no more than its table', (accuracyClass) => {
    const most = TABLE_6[accuracyClass][2];
    expect(
      refusal(() => permissibleError(accuracyClass, 1, most + 1), /more than class/).fields[0]?.path,
    ).toBe('Load');
  });

  it('never falls with the load, and says that in use it may be twice as much', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ACCURACY_CLASSES),
        fc.nat(1000),
        fc.nat(1000),
        (accuracyClass, one, other) => {
          const [less, more] = [Math.min(one, other), Math.max(one, other)];
          const at = (load: number): number => permissibleError(accuracyClass, 1, load).value;
          expect(at(less)).toBeLessThanOrEqual(at(more));
        },
      ),
    );
    expect(permissibleError('II', 0.01, 0).value).toBe(0.005);
    expect(permissibleError('II', 0.01, 10).cautions.join()).toMatch(/twice/);
  });

  it.each([
    ['Verification interval e', NOT_POSITIVE, (x: number) => permissibleError('II', x, 1)],
    ['Load', NEGATIVE, (x: number) => permissibleError('II', 0.1, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});
