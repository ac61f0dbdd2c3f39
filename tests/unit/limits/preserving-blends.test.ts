import fc from 'fast-check';
import { isBroken } from '@core/limits/judged';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { judged, situation } from './law';

const blend = (...parts: [inci: string, percent: number][]): Material =>
  make('Blend', 'Aqua', {
    functions: ['preservative'],
    composition: parts.map(([inci, percent]) => ({
      inci,
      lowPpm: Math.round(percent * 10_000),
      highPpm: Math.round(percent * 10_000),
    })),
  });
const shampoo = situation({ use: 'rinse-off' }, { kind: 'shampoo' });
const cream = situation({}, { kind: 'face cream' });
/** The limits that a dose of a blend breaks, by their subjects. */
const broken = (one: Material, percent: number, at = cream): string[] => [
  ...new Set(
    judged([[one, percent]], at)
      .filter((each) => each.time === 'in force' && isBroken(each))
      .map(({ limit }) => limit.subject),
  ),
];

// Blends as the trade sells them (common practice, no source); limits of Annex V, from memory.
describe('the dose of a preserving blend', () => {
  it('of 90 % phenoxyethanol goes up to 1.11 %: 0.9 × 1.11 is 0.999 %, 0.9 × 1.12 is 1.008 %', () => {
    const one = blend(['Phenoxyethanol', 90], ['Ethylhexylglycerin', 10]);
    expect(broken(one, 1.11)).toEqual([]);
    expect(broken(one, 1.12)).toEqual(['Phenoxyethanol']);
  });

  it('of 1.5 % isothiazolinones, 3 to 1, goes up to 0.1 % rinsed off, 15 ppm together, and nowhere left on', () => {
    const one = blend(
      ['Aqua', 98.5],
      ['Methylchloroisothiazolinone', 1.125],
      ['Methylisothiazolinone', 0.375],
    );
    expect(broken(one, 0.1, shampoo)).toEqual([]);
    expect(broken(one, 0.11, shampoo)).toEqual(['Methylchloroisothiazolinone with methylisothiazolinone']);
    expect(broken(one, 0.01).sort()).toEqual(['Methylchloroisothiazolinone', 'Methylisothiazolinone']);
  });

  it('of benzoate and sorbate is bound by the benzoate in a cream: 0.59 % of it, 1.97 % of a 30 % solution', () => {
    const one = blend(['Aqua', 50], ['Sodium Benzoate', 30], ['Potassium Sorbate', 20]);
    // 0.59 / 0.3; the sorbate is then 0.393 % of 0.803 %.
    expect(broken(one, 1.96)).toEqual([]);
    expect(broken(one, 2)).toEqual(['Benzoates']);
    // Rinsed off it may be 2.95 % of benzoate: the sorbate binds first, at 4.02 %.
    expect(broken(one, 4, shampoo)).toEqual([]);
    expect(broken(one, 4.1, shampoo)).toEqual(['Sorbic acid and sorbates']);
  });

  it('once it breaks a limit breaks it at every higher dose', () => {
    const one = blend(['Benzyl Alcohol', 60], ['Salicylic Acid', 20], ['Sorbic Acid', 20]);
    const dose = fc.integer({ min: 1, max: 500 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(dose, dose, (less, more) => {
        fc.pre(less < more);
        const at = broken(one, more);
        for (const subject of broken(one, less)) expect(at).toContain(subject);
      }),
      { numRuns: 30 },
    );
  });
});
