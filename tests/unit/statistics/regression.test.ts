import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLine } from '@core/statistics/regression';
import { sample } from '@core/statistics/sample';
import { studentQuantile } from '@core/statistics/student-t';
import { NO_NUMBERS } from '../working/bounds';
import { refusal } from '../working/refusal';

const reading = fc.integer({ min: -100_000, max: 100_000 }).map((one) => one / 100);
const points = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 60 }), reading), { minLength: 3, maxLength: 15 })
  .filter((all) => new Set(all.map(([x]) => x)).size > 1);

describe('a line by least squares', () => {
  it('solves the normal equations: the residuals sum to nothing, by themselves and against x', () => {
    fc.assert(
      fc.property(points, (all) => {
        const [x, y] = [all.map(([one]) => one), all.map(([, one]) => one)];
        const { slope, intercept } = fitLine(x, y);
        const left = y.map((one, at) => one - intercept - slope * (x[at] ?? 0));
        expect(left.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 7);
        expect(left.reduce((sum, one, at) => sum + one * (x[at] ?? 0), 0)).toBeCloseTo(0, 6);
      }),
    );
  });

  it('through the origin leaves residuals square to x, and needs one point fewer', () => {
    fc.assert(
      fc.property(points, (all) => {
        const [x, y] = [all.map(([one]) => one), all.map(([, one]) => one)];
        const { slope, intercept, interceptSe, degrees } = fitLine(x, y, 'zero');
        const left = y.map((one, at) => one - slope * (x[at] ?? 0));
        expect(left.reduce((sum, one, at) => sum + one * (x[at] ?? 0), 0)).toBeCloseTo(0, 5);
        expect([intercept, interceptSe, degrees]).toEqual([0, 0, all.length - 1]);
      }),
    );
    expect(fitLine([1, 2], [2, 4], 'zero').slope).toBe(2);
  });

  it('follows what is done to the readings, wherever they lie', () => {
    fc.assert(
      fc.property(points, reading, fc.double({ min: 0.1, max: 50, noNaN: true }), (all, shift, times) => {
        const [x, y] = [all.map(([one]) => one), all.map(([, one]) => one)];
        const line = fitLine(x, y);
        const moved = fitLine(
          x.map((one) => one + 1e4),
          y.map((one) => one * times + shift),
        );
        expect(moved.slope).toBeCloseTo(line.slope * times, 5);
        expect(moved.residualSd).toBeCloseTo(line.residualSd * times, 4);
        expect(moved.rSquared).toBeCloseTo(line.rSquared, 6);
        expect(line.rSquared).toBeGreaterThanOrEqual(-1e-9);
        expect(line.rSquared).toBeLessThanOrEqual(1);
        const backwards = fitLine([...x].reverse(), [...y].reverse());
        expect(backwards.slope).toBeCloseTo(line.slope, 8);
        expect(backwards.slopeSe).toBeCloseTo(line.slopeSe, 8);
      }),
    );
  });

  it('worked by hand: (0, 1), (1, 3), (2, 2), (3, 6)', () => {
    // Means 1.5 and 3; Sxx 5, Sxy 7: slope 1.4, intercept 0.9; residuals 0.1, 0.7, −1.7, 0.9: Σ² 4.2; sd √2.1.
    const line = fitLine([0, 1, 2, 3], [1, 3, 2, 6]);
    expect(line).toMatchObject({ degrees: 2, count: 4, meanX: 1.5, meanY: 3, sumXX: 5 });
    expect([
      line.slope,
      line.intercept,
      line.residualSd ** 2,
      line.slopeSe ** 2,
      line.interceptSe ** 2,
    ]).toEqual([1.4, 0.9, 2.1, 0.42, 2.1 * 0.7].map((one) => expect.closeTo(one, 10) as number));
    // Σ(y − 3)² = 14; 1 − 4.2 / 14.
    expect(line.rSquared).toBeCloseTo(0.7, 12);
  });

  it('of readings that never change is flat, with nothing left over', () => {
    expect(fitLine([0, 3, 6], [5, 5, 5])).toMatchObject({
      slope: 0,
      intercept: 5,
      residualSd: 0,
      rSquared: 1,
    });
  });

  it('refuses what is no line, by what is missing', () => {
    expect(refusal(() => fitLine([], []), /0 points/).facts).toEqual({ missing: true });
    expect(refusal(() => fitLine([1], [1], 'zero'), /1 point has/).advice).toContain('at least 2');
    expect(refusal(() => fitLine([1, 2], [1, 2]), /2 points/).advice).toContain('at least 3');
    refusal(() => fitLine([1, 2, 3], [1, 2]), /3 points/);
    refusal(() => fitLine([3, 3, 3], [1, 2, 3]), /at one/);
    refusal(() => fitLine([0, 0], [1, 2], 'zero'), /at one/);
    for (const bad of NO_NUMBERS) {
      refusal(() => fitLine([1, 2, bad], [1, 2, 3]), /reading is not a number/);
      refusal(() => fitLine([1, 2, 3], [1, bad, 3]), /reading is not a number/);
    }
    refusal(() => fitLine([0, 1e200, 2e200], [1, 2, 3]), /beyond what can be computed/);
    refusal(() => fitLine([0, 1, 2], [0, 1e200, -1e200]), /beyond what can be computed/);
  });
});

describe('mean and standard deviation', () => {
  it('do not change with the order, move with what is added, and grow with the unit', () => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 2, maxLength: 20 }), reading, (values, shift) => {
        const one = sample(values, 'Weighing');
        const moved = sample(
          [...values].reverse().map((value) => value * 3 + shift),
          'Weighing',
        );
        expect(moved.mean.value).toBeCloseTo(one.mean.value * 3 + shift, 7);
        expect(moved.standardDeviation.value).toBeCloseTo(one.standardDeviation.value * 3, 7);
        // Plainly, by all pairs: s² = Σ (a − b)² / (2 n (n − 1)).
        const pairs = values.reduce((sum, a) => sum + values.reduce((all, b) => all + (a - b) ** 2, 0), 0);
        const byPairs = pairs / (2 * values.length * (values.length - 1));
        expect(one.standardDeviation.value).toBeCloseTo(Math.sqrt(byPairs), 7);
      }),
    );
  });

  // NIST Statistical Reference Datasets, NumAcc3 and NumAcc4 (certified sd 0.1; from memory): leading digits swamp the rest.
  it.each([
    [1_000_000.2, 1_000_000.1, 1_000_000.3],
    [10_000_000.2, 10_000_000.1, 10_000_000.3],
  ])('of %d ± 0.1 lose no digits', (middle, low, high) => {
    const values = [middle, ...Array.from({ length: 1000 }, (_, at) => (at % 2 ? high : low))];
    expect(sample(values, 'Reading').mean.value).toBeCloseTo(middle, 8);
    expect(sample(values, 'Reading').standardDeviation.value).toBeCloseTo(0.1, 7);
  });

  it('need two readings, each a number, and name the one that is none', () => {
    expect(refusal(() => sample([], 'Weighing'), /no standard deviation/).facts).toEqual({ missing: true });
    refusal(() => sample([1], 'Weighing'), /no standard deviation/);
    for (const bad of NO_NUMBERS)
      expect(refusal(() => sample([1, bad], 'Weighing'), /Weighing 2/).fields[0]?.path).toBe('Weighing 2');
    refusal(() => sample([1e300, -1e300], 'Weighing'), /beyond what can be computed/);
  });

  it('carry their unit through, squared where it is', () => {
    expect(sample([1, 2, 4], 'Weighing', 'mg').standardDeviation.steps.map(({ unit }) => unit)).toEqual([
      'mg',
      'mg²',
      'mg',
    ]);
  });
});

describe('Student’s t where it has a closed form', () => {
  const probability = fc.double({ min: 0.0002, max: 0.9998, noNaN: true });
  it('one degree is Cauchy’s, two an algebraic one', () => {
    fc.assert(
      fc.property(probability, (p) => {
        const one = Math.tan(Math.PI * (p - 0.5));
        expect(Math.abs(studentQuantile(p, 1) - one)).toBeLessThan(1e-9 * (1 + Math.abs(one)));
        const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
        expect(Math.abs(studentQuantile(p, 2) - two)).toBeLessThan(1e-9 * (1 + Math.abs(two)));
      }),
    );
  });

  it('falls to the normal’s with ever more degrees: 1.959964 and 2.575829', () => {
    // t ≈ z + (z³ + z) / 4n (Cornish and Fisher's first term).
    for (const [p, z] of [
      [0.975, 1.959964],
      [0.995, 2.575829],
    ] as const)
      for (const degrees of [10_000, 99_999])
        expect(studentQuantile(p, degrees)).toBeCloseTo(z + (z ** 3 + z) / (4 * degrees), 5);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.double({ min: 0.51, max: 0.999, noNaN: true }),
        (n, p) => {
          expect(studentQuantile(p, n + 1)).toBeLessThan(studentQuantile(p, n));
          expect(studentQuantile(1 - p, n)).toBeCloseTo(-studentQuantile(p, n), 8);
        },
      ),
      { numRuns: 50 },
    );
  });
});
