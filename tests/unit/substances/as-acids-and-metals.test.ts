import fc from 'fast-check';
import { expressedAs, factorOf, molarMassOf } from '@core/substances/counted-as';
import { blankSubstance, type Substance } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { EXAMPLES, kept } from '../limits/law';
import { refusal } from '../working/refusal';

const index = substanceIndex(EXAMPLES.substances);
const named = (name: string): Substance => {
  const found = index.find(name);
  if (!found) throw new Error(`No example is called ${name}.`);
  return found;
};

describe('an example counted as its acid, base or metal', () => {
  // Molar masses of handbooks (The Merck Index, CRC Handbook), from memory: count × reference / substance, by hand.
  it.each([
    ['MEA-Benzoate', 'Benzoic Acid', 122.12 / 183.2],
    ['Potassium Benzoate', 'Benzoic Acid', 122.12 / 160.21],
    ['Calcium Benzoate', 'Benzoic Acid', (2 * 122.12) / 282.31],
    ['Magnesium Benzoate', 'Benzoic Acid', (2 * 122.12) / 266.53],
    ['Ammonium Benzoate', 'Benzoic Acid', 122.12 / 139.15],
    ['Phenyl Benzoate', 'Benzoic Acid', 122.12 / 198.22],
    ['Sodium Sorbate', 'Sorbic Acid', 112.13 / 134.11],
    ['Calcium Sorbate', 'Sorbic Acid', (2 * 112.13) / 262.32],
    ['Potassium Salicylate', 'Salicylic Acid', 138.12 / 176.21],
    ['Magnesium Salicylate', 'Salicylic Acid', (2 * 138.12) / 298.53],
    ['TEA-Salicylate', 'Salicylic Acid', 138.12 / 287.31],
    ['Calcium Salicylate', 'Salicylic Acid', (2 * 138.12) / 314.3],
    ['MEA-Salicylate', 'Salicylic Acid', 138.12 / 199.2],
    ['Sodium Undecylenate', 'Undecylenic Acid', 184.28 / 206.26],
    ['Zinc Undecylenate', 'Undecylenic Acid', (2 * 184.28) / 431.9],
    ['Potassium Methylparaben', '4-Hydroxybenzoic Acid', 138.12 / 190.24],
    ['Sodium Ethylparaben', '4-Hydroxybenzoic Acid', 138.12 / 188.16],
    ['Sodium Propylparaben', '4-Hydroxybenzoic Acid', 138.12 / 202.18],
    ['Chlorhexidine Diacetate', 'Chlorhexidine', 505.45 / 625.55],
    ['Zinc Gluconate', 'Zinc', 65.38 / 455.68],
    ['Zinc Chloride', 'Zinc', 65.38 / 136.29],
    ['Sodium o-Phenylphenate', 'o-Phenylphenol', 170.21 / 192.19],
    ['Zinc Acetate', 'Zinc', 65.38 / 183.48],
    ['Urea Peroxide', 'Hydrogen Peroxide', 34.01 / 94.07],
    ['Potassium Hydroxide', 'Sodium Hydroxide', 40 / 56.11],
    ['Ammonium Hydroxide', 'Ammonia', 17.03 / 35.05],
    ['Ammonium Thioglycolate', 'Thioglycolic Acid', 92.12 / 109.15],
    ['Sodium Oxalate', 'Oxalic Acid', 90.03 / 134],
    ['Sodium Fluoride', 'Fluorine', 19 / 41.99],
    ['Sodium Monofluorophosphate', 'Fluorine', 19 / 143.95],
    ['Stannous Fluoride', 'Fluorine', (2 * 19) / 156.71],
    ['Potassium Fluoride', 'Fluorine', 19 / 58.1],
    ['Ammonium Fluoride', 'Fluorine', 19 / 37.04],
    ['Quinine Hydrochloride', 'Quinine', 324.42 / 360.88],
    ['Sodium Phenylbenzimidazole Sulfonate', 'Phenylbenzimidazole Sulfonic Acid', 274.29 / 296.28],
  ])('%s as %s', (name, reference, byHand) => {
    const { value, unknown } = factorOf(named(name), named(reference), index);
    expect(unknown).toBeNull();
    expect(value).toBeCloseTo(byHand, 3);
  });

  // What a toothpaste declares: 1450 ppm of fluoride is 0.32 % of sodium fluoride, or 1.1 % of the monofluorophosphate.
  it('1450 ppm of fluoride is 0.32 % of sodium fluoride and 1.1 % of the monofluorophosphate', () => {
    const share = (name: string): number => 0.145 / factorOf(named(name), named('Fluorine'), index).value;
    expect(share('Sodium Fluoride')).toBeCloseTo(0.32, 2);
    expect(share('Sodium Monofluorophosphate')).toBeCloseTo(1.1, 2);
  });

  it('a salt of a heavier metal holds less acid: ammonium, sodium, potassium benzoate', () => {
    const acid = named('Benzoic Acid');
    const row = ['Ammonium Benzoate', 'Sodium Benzoate', 'Potassium Benzoate'].map(
      (name) => factorOf(named(name), acid, index).value,
    );
    expect(row).toEqual([...row].sort((a, b) => b - a));
  });

  it('is never counted as more than itself but where its acid is the heavier: a soap, an ester, a hydrate', () => {
    for (const one of EXAMPLES.substances)
      for (const { countedAs } of one.equivalents) {
        const { value } = factorOf(one, index.find(countedAs), index);
        expect(value, one.name).toBeGreaterThan(0.1);
        expect(value, one.name).toBeLessThanOrEqual(1);
      }
  });

  it('is never counted as itself, nor as what is counted as another in turn', () => {
    for (const one of EXAMPLES.substances)
      for (const { countedAs } of one.equivalents) {
        const reference = named(countedAs);
        expect(reference.id, one.name).not.toBe(one.id);
        expect(reference.equivalents, countedAs).toEqual([]);
      }
  });

  it('stands in one group at least with what it is counted as, unless that is a bare element', () => {
    for (const one of EXAMPLES.substances)
      for (const { countedAs } of one.equivalents) {
        // The prohibited parabens are held to their own entry, not to that of the others.
        if (['Zinc', 'Fluorine'].includes(countedAs)) continue;
        if (one.groups.some(({ name }) => name === 'Prohibited parabens')) continue;
        const groups = named(countedAs).groups.map(({ name }) => name);
        expect(
          one.groups.some(({ name }) => groups.includes(name)),
          `${one.name} as ${countedAs}`,
        ).toBe(true);
      }
  });
});

describe('a share expressed as another', () => {
  it('shows the factor with its masses put in, and the share times it', () => {
    const { steps, unit, value } = expressedAs(0.5, 'C7H5NaO2', 'C7H6O2', 1);
    expect(steps.map(({ shows }) => shows)).toEqual(['1 × 122.123 / 144.105', '0.5 × 0.847458']);
    expect([unit, steps.at(-1)?.result]).toEqual(['%', value]);
  });

  it('of nothing is nothing, and of a hydrate less than of what is dry', () => {
    expect(expressedAs(0, 'ZnSO4', 'Zn', 1).value).toBe(0);
    const dry = expressedAs(1, 'ZnSO4', 'Zn', 1).value;
    const wet = [1, 2, 6, 7].map((waters) => expressedAs(1, `ZnSO4·${waters}H2O`, 'Zn', 1).value);
    expect([dry, ...wet]).toEqual([dry, ...wet].sort((a, b) => b - a));
    // 65.38 / 161.44 (CRC Handbook, from memory).
    expect(dry).toBeCloseTo(0.405, 3);
  });

  it.each([
    ['C7H5Qq', 'C7H6O2', /“Qq” is not an element/],
    ['C7H5NaO2', 'acid', /“a” is not an element/],
    ['', 'C7H6O2', /it is empty/],
    ['C7H5NaO2', '', /it is empty/],
  ])('of “%s” as “%s” is refused', (own, reference, says) => {
    const problem = refusal(() => expressedAs(1, own, reference, 1), says);
    expect(problem.fields.map(({ path }) => path)).toEqual(['formula']);
  });
});

describe('a factor that is not known', () => {
  const acid = kept({ ...blankSubstance('Invented Acid'), formula: 'C2H4O2' });
  const salt = (parts: Partial<Substance>): Substance => ({
    ...kept(blankSubstance('Invented Salt')),
    ...parts,
  });
  const row = [{ countedAs: 'Invented Acid', perMole: 1 }];

  it.each([
    [
      'no row says how much it holds',
      { formula: 'C2H3NaO2' },
      acid,
      /how much Invented Acid one molecule of Invented Salt holds/,
    ],
    [
      'its own mass is missing',
      { equivalents: row },
      acid,
      /the molar mass of Invented Salt is not recorded/,
    ],
    [
      'the other’s mass is missing',
      { equivalents: row, formula: 'C2H3NaO2' },
      { ...acid, formula: '' },
      /the molar mass of Invented Acid is not recorded/,
    ],
    [
      'its formula cannot be read, and no mass is recorded beside',
      { equivalents: row, formula: 'C2H3Qq' },
      acid,
      /the molar mass of Invented Salt is not recorded/,
    ],
  ] as const)('since %s counts it as it is, and says so', (_why, parts, reference, words) => {
    const one = salt({ ...parts, equivalents: 'equivalents' in parts ? [...parts.equivalents] : [] });
    const found = factorOf(one, reference, substanceIndex([one, reference]));
    expect(found).toMatchObject({ value: 1, shows: '' });
    expect(found.unknown).toMatch(words);
    expect(found.unknown).toMatch(/counts as it is$/);
  });

  it('is known by a recorded molar mass where there is no one formula: 60.052 of 300 is 0.20017', () => {
    const one = salt({ equivalents: [...row], molarMass: 300 });
    const found = factorOf(one, acid, substanceIndex([one, acid]));
    expect(found.value).toBeCloseTo(0.20017, 5);
    expect(found).toMatchObject({ shows: '60.052 / 300', unknown: null });
  });

  it('finds what it is counted as by any of its names, and shows a count above one', () => {
    const other = { ...acid, synonyms: [{ name: 'Old Acid' }] };
    const one = salt({ equivalents: [{ countedAs: 'OLD ACID', perMole: 2 }], molarMass: 240.208 });
    const found = factorOf(one, other, substanceIndex([one, other]));
    expect(found.shows).toBe('2 × 60.052 / 240.208');
    expect(found.value).toBeCloseTo(0.5, 9);
  });

  it('grows with the count and falls with the mass of the substance', () => {
    const molarMass = fc.integer({ min: 61, max: 5000 });
    fc.assert(
      fc.property(molarMass, fc.integer({ min: 1, max: 6 }), (own, perMole) => {
        const of = (mass: number, count: number): number => {
          const one = salt({
            equivalents: [{ countedAs: 'Invented Acid', perMole: count }],
            molarMass: mass,
          });
          return factorOf(one, acid, substanceIndex([one, acid])).value;
        };
        expect(of(own, perMole) * own).toBeCloseTo(perMole * 60.052, 6);
        expect(of(2 * own, 2 * perMole)).toBeCloseTo(of(own, perMole), 9);
      }),
      { numRuns: 40 },
    );
  });

  it('of a substance without any figure is none', () => {
    expect(molarMassOf(blankSubstance('Invented Wax'))).toBeNull();
  });
});
