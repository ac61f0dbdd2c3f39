import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studentBelow, studentQuantile } from '@core/statistics/student-t';
import { Problem } from '@core/problems/problem';

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, upper critical values of Student's t (from memory).
const TABLE: [probability: number, degrees: number, t: number][] = [
  [0.95, 1, 6.314],
  [0.95, 4, 2.132],
  [0.975, 1, 12.706],
  [0.975, 10, 2.228],
  [0.975, 11, 2.201],
  [0.975, 30, 2.042],
  [0.99, 5, 3.365],
  [0.995, 19, 2.861],
  [0.995, 29, 2.756],
  [0.995, 49, 2.68],
  [0.975, 100, 1.984],
];

/** Student's density with its constant found by the integral itself, so that no gamma function is shared. */
function byIntegral(t: number, degrees: number): number {
  const shape = (x: number): number => (1 + (x * x) / degrees) ** (-(degrees + 1) / 2);
  const simpson = (from: number, to: number, parts: number): number => {
    const step = (to - from) / parts;
    let sum = shape(from) + shape(to);
    for (let index = 1; index < parts; index += 1) sum += shape(from + index * step) * (index % 2 ? 4 : 2);
    return (sum * step) / 3;
  };
  // With three degrees and more the tails beyond 4,000 weigh less than a billionth.
  const half = simpson(0, 40, 4000) + simpson(40, 4000, 8000);
  return 0.5 + simpson(0, t, 2000) / (2 * half);
}

describe('Student’s t', () => {
  it.each(TABLE)('at %f with %i degrees is %f', (probability, degrees, t) => {
    expect(Math.abs(studentQuantile(probability, degrees) - t)).toBeLessThan(0.0006);
  });

  it('is the inverse of the integral of its density', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.52, max: 0.995, noNaN: true }),
        fc.integer({ min: 3, max: 200 }),
        (probability, degrees) => {
          const t = studentQuantile(probability, degrees);
          expect(byIntegral(t, degrees)).toBeCloseTo(probability, 7);
          expect(studentBelow(-t, degrees)).toBeCloseTo(1 - probability, 12);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('refuses what is no probability or no degree of freedom', () => {
    for (const [probability, degrees] of [
      [0, 5],
      [1, 5],
      [Number.NaN, 5],
      [0.95, 0],
    ] as const)
      expect(() => studentQuantile(probability, degrees)).toThrow(Problem);
  });
});
