import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lowestMean, meanFactor } from '@core/net-contents/mean-criterion';
import { checkPrepackages, planFor } from '@core/net-contents/prepackage-check';
import { prepackageLimits, tolerableError } from '@core/net-contents/tolerable-error';
import { allowableVariation, checkUsPackages } from '@core/net-contents/us-packages';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const packs = (count: number, contents: number): number[] => Array.from({ length: count }, () => contents);
/** Nominal contents as labels print them: whole tenths. */
const nominal = fc.integer({ min: 50, max: 100_000 }).map((tenths) => tenths / 10);

describe('tolerable errors', () => {
  it('grow with the contents, stay a tenth in ten, and are whole tenths', () => {
    fc.assert(
      fc.property(nominal, nominal, (one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(tolerableError(less, 'g').value).toBeLessThanOrEqual(tolerableError(more, 'g').value);
        expect(tolerableError(less, 'g').value).toBeLessThanOrEqual(less * 0.09 + 0.1);
        expect((tolerableError(less, 'g').value * 10) % 1).toBeCloseTo(0, 9);
      }),
    );
  });

  it('a pack that holds exactly T1 or T2 is not below it, whatever the binary noise of the label', () => {
    fc.assert(
      fc.property(nominal, (label) => {
        const error = Math.round(tolerableError(label, 'g').value * 10);
        const tenths = Math.round(label * 10);
        // In whole tenths, so that no subtraction of fractions is repeated.
        const [t1, t2] = [(tenths - error) / 10, (tenths - 2 * error) / 10];
        const check = checkPrepackages(label, 100, false, [t1, t2, ...packs(28, label * 1.2)], 'g');
        expect([check.belowT1, check.belowT2]).toEqual([1, 0]);
        const less = checkPrepackages(
          label,
          100,
          false,
          [t1 - 0.01, t2 - 0.01, ...packs(28, label * 1.2)],
          'g',
        );
        expect([less.belowT1, less.belowT2]).toEqual([2, 1]);
        expect(less.verdict).toBe('rejected');
      }),
    );
    // 5.7 − 0.6 is 5.1000000000000005 to a computer.
    expect(checkPrepackages(5.7, 100, false, [...packs(29, 5.8), 5.1], 'g').belowT1).toBe(0);
  });

  it('T2 lies as far below T1 as T1 below the label', () => {
    fc.assert(
      fc.property(nominal, (label) => {
        const { t1, t2 } = prepackageLimits(label, 'g');
        expect(label - t1.value).toBeCloseTo(t1.value - t2.value, 9);
      }),
    );
  });

  it.each([
    ['Nominal contents', [...NO_NUMBERS, 0, 4.99, 50_001], (x: number) => tolerableError(x, 'g')],
    ['Nominal contents', NOT_POSITIVE, (x: number) => lowestMean(x, 1, 30, 'g')],
    ['Standard deviation', NEGATIVE, (x: number) => lowestMean(50, x, 30, 'g')],
    ['Sample size', [...NO_NUMBERS, 1, 100_001], (x: number) => meanFactor(x, 0.995)],
    ['Confidence as a fraction', [...NO_NUMBERS, 0, 1, 99.5], (x: number) => meanFactor(30, x)],
    ['Label weight', NOT_POSITIVE, (x: number) => allowableVariation(x)],
    [
      'Contents of pack 2',
      NEGATIVE,
      (x: number) => checkPrepackages(50, 100, false, [50, x, ...packs(28, 50)], 'g'),
    ],
    ['Package 3', NEGATIVE, (x: number) => checkUsPackages(100, [100, 100, x, ...packs(9, 100)])],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});

describe('plans', () => {
  it.each([
    [2, false, 2, 0, null],
    [39, false, 39, 0, null],
    [40, false, 40, 1, null],
    [99, false, 99, 2, null],
    [100, false, 30, 1, 60],
    [500, false, 30, 1, 60],
    [501, false, 50, 2, 100],
    [3200, false, 50, 2, 100],
    [3201, false, 80, 3, 160],
    [100, true, 20, 1, null],
    [1_000_000, true, 20, 1, null],
  ])(
    'of %i packs, opened %s: %i drawn, %i may be short, %s with a second sample',
    (batch, opened, size, accept, second) => {
      const plan = planFor(batch, opened);
      expect([plan.size, plan.accept, plan.second?.size ?? null]).toEqual([size, accept, second]);
      // As many short as are accepted pass, one more does not pass at once.
      const drawn = (short: number) => [...packs(short, 45), ...packs(size - short, 53)];
      expect(checkPrepackages(50, batch, opened, drawn(accept), 'g').verdict).toBe('accepted');
      expect(checkPrepackages(50, batch, opened, drawn(accept + 1), 'g').verdict).toBe(
        second === null ? 'rejected' : 'second sample',
      );
      expect(checkPrepackages(50, batch, opened, drawn(plan.reject), 'g').verdict).toBe('rejected');
    },
  );

  it('need a batch of whole packs, two at least, and as many contents as they draw', () => {
    for (const batch of [0, 1, -5, 2.5, ...NO_NUMBERS])
      refusal(() => planFor(batch, false), /whole number of packs/);
    refusal(() => planFor(99, true), /fewer than 100/);
    const few = refusal(() => checkPrepackages(50, 100, false, [], 'g'), /30 packs, or 60/);
    expect(few.facts).toEqual({ missing: true });
    expect(
      refusal(() => checkPrepackages(50, 100, false, packs(31, 50), 'g'), /31 are entered/).facts,
    ).toEqual({
      missing: false,
    });
    refusal(() => checkUsPackages(100, packs(13, 100)), /12, 24 or 48/);
    expect(allowableVariation(1119.9).value).toBe(35.3);
    expect(refusal(() => allowableVariation(1120), /ends at 1120 g/).fields[0]?.path).toBe('Label weight');
  });

  it('never judge a batch worse when its packs hold more', () => {
    const rank = { rejected: 0, 'second sample': 1, accepted: 2 } as const;
    const drawn = fc.array(fc.double({ min: 44, max: 54, noNaN: true }), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(drawn, fc.double({ min: 0, max: 3, noNaN: true }), (contents, more) => {
        const fuller = contents.map((one) => one + more);
        expect(rank[checkPrepackages(50, 300, false, fuller, 'g').verdict]).toBeGreaterThanOrEqual(
          rank[checkPrepackages(50, 300, false, contents, 'g').verdict],
        );
      }),
    );
  });

  it('worked by hand: 12 packages of 100 g at 99 and 101 in turn, less 0.6 g', () => {
    // Mean 99.4, sd √(12/11) = 1.04447; t(0.975; 11) 2.200985 / √12 = 0.635370; limit 0.66362: −0.6 passes, −0.7 not.
    const turn = (off: number): number[] => Array.from({ length: 12 }, (_, at) => (at % 2 ? 101 : 99) + off);
    const check = checkUsPackages(100, turn(-0.6));
    expect(check.limit.value).toBeCloseTo(0.66362, 4);
    expect(check.error.value).toBeCloseTo(-0.6, 9);
    expect(check.passes).toBe(true);
    expect(checkUsPackages(100, turn(-0.7)).passes).toBe(false);
  });

  it('a package short by exactly the MAV is not short by more', () => {
    // 7.2 g at 100 g.
    const check = (short: number) => checkUsPackages(100, [short, ...packs(11, 102)]);
    expect(check(92.8).passes).toBe(true);
    expect(check(92.79).passes).toBe(false);
  });
});
