import fc from 'fast-check';
import { selfPreserving } from '@core/checks/self-preserving';
import { formulaFacts } from '@core/checks/facts';
import type { Material } from '@core/materials/material';
import { activityOfWater, gramsHeld, GROWTH_LIMITS, growthAt } from '@core/solutions/humectants';
import { describe, expect, it } from 'vitest';
import { content, make, phase } from '../checks/build';

const SOLUTES = ['Glycerin', 'Sorbitol', 'Urea', 'Sodium Chloride', 'Propylene Glycol'];
const shelf = SOLUTES.map((inci) => make(inci, inci));
const doses = fc.array(fc.tuple(fc.nat(SOLUTES.length - 1), fc.integer({ min: 100, max: 200_000 })), {
  minLength: 1,
  maxLength: 4,
});
const linesOf = (rows: readonly (readonly [number, number])[]) =>
  rows.map(([which, ppm]) => ({ material: shelf[which]!, ppm }));
const activity = (lines: { material: Material; ppm: number }[], water: number): number =>
  activityOfWater(lines, water)?.value ?? 1;

describe('the activity of a formula’s water', () => {
  it('falls with every solute, stays between none and all, and hangs on their ratio to the water alone', () => {
    fc.assert(
      fc.property(doses, fc.integer({ min: 20, max: 90 }), fc.nat(4), (rows, water, more) => {
        const now = activity(linesOf(rows), water);
        expect(now).toBeGreaterThan(0);
        expect(now).toBeLessThan(1);
        expect(activity(linesOf([...rows, [more, 10_000]]), water)).toBeLessThan(now);
        expect(activity(linesOf(rows), water / 2)).toBeLessThan(now);
        const half = rows.map(([which, ppm]) => [which, ppm / 2] as const);
        expect(activity(linesOf(half), water / 2)).toBeCloseTo(now, 9);
        expect(activity(linesOf([...rows].reverse()), water)).toBeCloseTo(now, 9);
      }),
    );
  });

  it('worked by hand: 18.015 g of urea, 60.06 g/mol, beside 81.985 g of water (Raoult)', () => {
    // 0.29995 mol beside 81.985 / 18.015 = 4.55093 mol: 4.55093 / 4.85088 = 0.93816.
    expect(activity([{ material: shelf[2]!, ppm: 180_150 }], 81.985)).toBeCloseTo(0.93816, 4);
    // Salt falls into two ions: 5 g are 0.17111 mol of them beside 95 g, 5.27338 mol: 0.96857.
    expect(activity([{ material: shelf[3]!, ppm: 50_000 }], 95)).toBeCloseTo(0.96857, 4);
  });

  it('is not told where there is no water, and no solute that the table knows', () => {
    expect(activityOfWater([{ material: shelf[0]!, ppm: 100_000 }], 0)).toBeNull();
    expect(activityOfWater([{ material: make('Oil', 'Squalane'), ppm: 100_000 }], 50)).toBeNull();
  });

  it('stops more kinds of microbes the lower it is', () => {
    const said = [0.55, 0.65, 0.75, 0.85, 0.9, 0.93, 0.96, 1].map(growthAt);
    expect(new Set(said).size).toBe(GROWTH_LIMITS.length + 1);
    expect(said.at(-1)).toBe('');
    expect(growthAt(0.6)).toBe(growthAt(0.65));
  });
});

describe('a formula that keeps itself', () => {
  const syrup = (low: number, high: number): Material =>
    make('Syrup', 'Sorbitol', {
      composition: [
        { inci: 'Sorbitol', lowPpm: low, highPpm: high },
        { inci: 'Aqua', lowPpm: 1_000_000 - high, highPpm: 1_000_000 - low },
      ],
    });
  const tincture = (low: number, high: number): Material =>
    make('Tincture', 'Alcohol', {
      composition: [
        { inci: 'Alcohol', lowPpm: low, highPpm: high },
        { inci: 'Aqua', lowPpm: 1_000_000 - high, highPpm: 1_000_000 - low },
      ],
    });
  const keeps = (material: Material): boolean => {
    const formula = content([phase([[material, 100]])]);
    return (
      selfPreserving(
        formulaFacts({ content: formula, materials: new Map([[material.id, material]]) }).used,
      ) !== null
    );
  };

  it('does so at every share that the supplier’s range allows, not at its best alone', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(syrup, tincture),
        fc.integer({ min: 10, max: 99 }),
        fc.integer({ min: 0, max: 30 }),
        (of, percent, wide) => {
          const low = percent * 10_000;
          // Some water is left, else there is nothing to keep.
          const high = Math.min(990_000, low + wide * 10_000);
          // What is said of the range is what is true of its weakest share.
          expect(keeps(of(low, high))).toBe(keeps(of(low, low)));
          if (keeps(of(low, low))) expect(keeps(of(high, high))).toBe(true);
        },
      ),
    );
  });

  it('by ethanol from above 20 % by volume: 16.5 % by mass is 20.03 % of the volume, 16.4 % is 19.91 %', () => {
    // 16.5 / 0.789 = 20.91 mL beside 83.5 mL of water.
    expect([keeps(tincture(165_000, 165_000)), keeps(tincture(164_000, 164_000))]).toEqual([true, false]);
  });

  it('holds of a substance what its ends say, and never more than the material', () => {
    const twice = make('Two waters', 'Aqua', {
      composition: [
        { inci: 'Aqua', lowPpm: 100_000, highPpm: 900_000 },
        { inci: 'Maris Aqua', lowPpm: 100_000, highPpm: 900_000 },
      ],
    });
    const lines = [{ material: twice, ppm: 500_000 }];
    const isWater = (inci: string): boolean => /aqua/i.test(inci);
    expect(gramsHeld(lines, isWater, 'least')).toBeCloseTo(10, 9);
    expect(gramsHeld(lines, isWater, 'most')).toBeCloseTo(50, 9);
  });
});
