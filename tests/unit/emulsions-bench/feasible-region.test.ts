import { feasibleRegion, type Corner, type Mix } from '@core/emulsions/bench/feasible-region';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const corner = (hlb: number | null, minPercent = 0, maxPercent = 100): Corner => ({
  hlb,
  minPercent,
  maxPercent,
});
const corners = fc.tuple(
  ...([0, 1, 2] as const).map(() =>
    fc.record({
      hlb: fc.double({ min: 1, max: 20, noNaN: true }),
      minPercent: fc.double({ min: 0, max: 1, noNaN: true }),
      maxPercent: fc.double({ min: 1, max: 10, noNaN: true }),
    }),
  ),
) as fc.Arbitrary<[Corner, Corner, Corner]>;
const mean = (three: readonly Corner[], mix: Mix): number =>
  mix.reduce((sum, share, index) => sum + share * (three[index]?.hlb ?? 0), 0);

/** Independent of the clipping: tries a fine grid of mixes against each demand as it is worded. */
function gridHolds(three: readonly Corner[], low: number, high: number, total: number): Mix[] {
  const found: Mix[] = [];
  const steps = 60;
  for (let a = 0; a <= steps; a += 1)
    for (let b = 0; a + b <= steps; b += 1) {
      const mix: Mix = [a / steps, b / steps, (steps - a - b) / steps];
      const used = mix.every((share, index) => {
        const one = three[index];
        return one && share * total >= one.minPercent && share * total <= one.maxPercent;
      });
      if (used && mean(three, mix) >= low && mean(three, mix) <= high) found.push(mix);
    }
  return found;
}

function inside(polygon: readonly Mix[], mix: Mix): boolean {
  const turns = polygon.map((here, index) => {
    const next = polygon[(index + 1) % polygon.length] ?? here;
    return (next[0] - here[0]) * (mix[1] - here[1]) - (next[1] - here[1]) * (mix[0] - here[0]);
  });
  return turns.every((turn) => turn >= -1e-7) || turns.every((turn) => turn <= 1e-7);
}

describe('the feasible region of three emulsifiers', () => {
  it('is the whole triangle where nothing is asked', () => {
    expect(
      feasibleRegion([corner(4), corner(10), corner(15)], { window: null, totalPercent: 5 }),
    ).toHaveLength(3);
  });

  it('is empty where no mix reaches the band', () => {
    const region = feasibleRegion([corner(3), corner(4), corner(5)], {
      window: { low: 10, high: 11 },
      totalPercent: 5,
    });
    expect(region).toEqual([]);
  });

  it('has corners that meet every demand, and holds every mix that a grid search finds', () => {
    fc.assert(
      fc.property(
        corners,
        fc.double({ min: 2, max: 18, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
        (three, low, total) => {
          const high = low + 1;
          const region = feasibleRegion(three, { window: { low, high }, totalPercent: total });
          for (const mix of region) {
            expect(mean(three, mix)).toBeGreaterThan(low - 1e-5);
            expect(mean(three, mix)).toBeLessThan(high + 1e-5);
            mix.forEach((share, index) => {
              expect(share * total).toBeGreaterThan((three[index]?.minPercent ?? 0) - 1e-5);
              expect(share * total).toBeLessThan((three[index]?.maxPercent ?? 0) + 1e-5);
            });
          }
          for (const mix of gridHolds(three, low, high, total)) expect(inside(region, mix)).toBe(true);
          if (region.length === 0) expect(gridHolds(three, low, high, total)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('leaves an emulsifier that HLB does not describe out of the mean, not out of the levels', () => {
    const region = feasibleRegion([corner(4), corner(16), corner(null, 0, 1)], {
      window: { low: 10, high: 10 },
      totalPercent: 5,
    });
    for (const [low, high, ionic] of region) {
      expect(low).toBeCloseTo(high, 6);
      expect(ionic * 5).toBeLessThanOrEqual(1 + 1e-6);
    }
    expect(region.length).toBeGreaterThan(0);
  });
});
