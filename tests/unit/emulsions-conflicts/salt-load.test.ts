import fc from 'fast-check';
import { saltPpm } from '@core/emulsions/conflicts/salt-load';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';

describe('the salt that a line brings', () => {
  const salty = (low: number, high: number) =>
    make('Salty', 'Aqua', {
      composition: [
        { inci: 'Aqua', lowPpm: 0, highPpm: 1_000_000 },
        { inci: 'Sodium Chloride', lowPpm: low, highPpm: high },
        { inci: 'Magnesium Sulfate', lowPpm: low, highPpm: high },
      ],
    });

  it('is that of its salts, at either end of the supplier’s ranges, and never more than the line', () => {
    const end = fc.integer({ min: 0, max: 500_000 });
    fc.assert(
      fc.property(end, end, fc.integer({ min: 1, max: 1_000_000 }), (a, b, ppm) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const material = salty(low, high);
        const [least, most] = [saltPpm({ material, ppm }, 'least'), saltPpm({ material, ppm }, 'most')];
        expect(least).toBeCloseTo((2 * low * ppm) / 1e6, 6);
        expect(most).toBeCloseTo((2 * high * ppm) / 1e6, 6);
        expect(least).toBeLessThanOrEqual(most);
        expect(most).toBeLessThanOrEqual(ppm);
      }),
    );
  });

  it('is all of what is recorded as an electrolyte and names none, and nothing of anything else', () => {
    const mystery = make('Mystery', 'Hydrolyzed Something', { functions: ['electrolyte'] });
    expect(saltPpm({ material: mystery, ppm: 4_000 }, 'least')).toBe(4_000);
    expect(saltPpm({ material: make('G', 'Glycerin'), ppm: 4_000 }, 'most')).toBe(0);
    expect(saltPpm({ material: make('S', 'Sodium Benzoate'), ppm: 4_000 }, 'least')).toBe(4_000);
  });

  it.each([
    ['Sodium Metabisulfite', 4_000],
    ['Sodium Bicarbonate', 4_000],
    ['Dipotassium Glycyrrhizate', 4_000],
    ['Aluminum Zirconium Tetrachlorohydrex Gly', 4_000],
    ['Magnesium Ascorbyl Phosphate', 4_000],
    ['Tetrasodium Glutamate Diacetate', 4_000],
    ['Betaine', 0],
    ['Zinc Oxide', 0],
    ['Sodium Hyaluronate', 0],
  ])('of %s is %i ppm of 4,000', (inci, salt) => {
    expect(saltPpm({ material: make('One', inci), ppm: 4_000 }, 'least')).toBe(salt);
  });

  it('of two names that a supplier wrote into one is none to all of them', () => {
    const joined = make('Joined', 'Sodium Chloride (and) Glycerin');
    expect(saltPpm({ material: joined, ppm: 4_000 }, 'least')).toBe(0);
    expect(saltPpm({ material: joined, ppm: 4_000 }, 'most')).toBe(4_000);
  });
});
