import fc from 'fast-check';
import { ACID_MOLAR_MASSES, saltMolarMass } from '@core/calculators/acid-molar-masses';
import { calculateNeutralise } from '@core/calculators/neutralise';
import { BLANK_NEUTRALISE, type NeutraliseRequest } from '@core/calculators/neutralise-request';
import { calculatePreserve } from '@core/calculators/preserve';
import { BLANK_PRESERVE, type PreserveRequest } from '@core/calculators/preserve-request';
import type { Calculated } from '@core/calculators/calculated';
import { KNOWN_ACIDS, KNOWN_BASES } from '@core/neutralisation/acids-and-bases';
import { USUAL_SHARE_KEYS, usualShare } from '@core/neutralisation/usual-shares';
import { ORGANIC_ACIDS } from '@core/preservation/organic-acids';
import { describe, expect, it } from 'vitest';
import { figure, make, range } from '../checks/build';
import { refusal } from '../working/refusal';

const valueOf = ({ results }: Calculated, key: string): number =>
  results.find((one) => one.key === key)?.worked.value ?? Number.NaN;

describe('base for an acid', () => {
  const asked: NeutraliseRequest = {
    ...BLANK_NEUTRALISE,
    ...{ acidPercent: 3, acidValue: 200, baseMolarMass: 39.997, basePercent: 50, neutralisedPercent: 20 },
  };
  const base = (part: Partial<NeutraliseRequest>) =>
    valueOf(calculateNeutralise({ ...asked, ...part }), 'percent');
  const percent = fc.double({ min: 0.01, max: 50, noNaN: true });

  it('is in proportion to the acid, to its acid value and to the share, and inverse to the strength', () => {
    fc.assert(
      fc.property(percent, fc.double({ min: 1, max: 50, noNaN: true }), (level, share) => {
        const one = base({ acidPercent: level, neutralisedPercent: share });
        expect(base({ acidPercent: 2 * level, neutralisedPercent: share })).toBeCloseTo(2 * one, 8);
        expect(base({ acidPercent: level, neutralisedPercent: 2 * share })).toBeCloseTo(2 * one, 8);
        expect(base({ acidPercent: level, neutralisedPercent: share, acidValue: 100 })).toBeCloseTo(
          one / 2,
          8,
        );
        expect(base({ acidPercent: level, neutralisedPercent: share, basePercent: 25 })).toBeCloseTo(
          2 * one,
          8,
        );
      }),
      { numRuns: 30 },
    );
  });

  it('differs from base to base by their molar masses: 56.105 of potash do what 39.997 of soda do', () => {
    const [soda, potash] = ['Sodium Hydroxide', 'Potassium Hydroxide'].map((inci) => {
      const known = KNOWN_BASES.find((one) => one.inci === inci);
      return base({ baseMolarMass: known?.molarMass ?? Number.NaN });
    });
    expect((potash ?? 0) / (soda ?? 1)).toBeCloseTo(56.105 / 39.997, 9);
  });

  it('by the acid value of the pure acid and by its molar mass is one amount', () => {
    for (const { inci, molarMass, equivalents } of KNOWN_ACIDS) {
      const byMass = {
        acidKnownBy: 'molar mass' as const,
        acidActivePercent: 100,
        acidMolarMass: molarMass,
        acidEquivalents: equivalents,
      };
      const mass = calculateNeutralise({ ...asked, ...byMass });
      expect(base({ acidValue: valueOf(mass, 'acid-value') }), inci).toBeCloseTo(valueOf(mass, 'percent'), 9);
    }
  });

  it('of nothing to neutralise is nothing, and the batch weighs it in proportion', () => {
    expect(base({ acidPercent: 0 })).toBe(0);
    expect(base({ neutralisedPercent: 0 })).toBe(0);
    // 3 × 200 / 56106 × 0.2 × 39.997 / 0.5 = 0.171092 %, by hand; of 750 g 1.2832 g.
    expect(base({})).toBeCloseTo(0.171092, 5);
    expect(valueOf(calculateNeutralise({ ...asked, batchGrams: 750 }), 'mass')).toBeCloseTo(1.28319, 4);
    expect(calculateNeutralise(asked).results.map(({ key }) => key)).not.toContain('mass');
  });

  it.each<[string, Partial<NeutraliseRequest>, RegExp]>([
    ['more acid than all', { acidPercent: 100.1 }, /Level of the acid/],
    ['less than none', { acidPercent: -1 }, /Level of the acid/],
    ['an acid value of 2,001', { acidValue: 2001 }, /Acid value/],
    ['a base of no strength', { basePercent: 0 }, /Strength of the base/],
    ['a base of more than all', { basePercent: 101 }, /Strength of the base/],
    ['more than all groups', { neutralisedPercent: 101 }, /Share to neutralise/],
    ['a base without mass', { baseMolarMass: 0 }, /Molar mass of the base/],
    ['a base of no equivalents', { baseEquivalents: 0 }, /Equivalents of the base/],
    ['a batch of nothing', { batchGrams: 0 }, /Batch/],
    ['no number', { acidValue: Number.NaN }, /Acid value/],
    [
      'acid of more than all in what is weighed',
      { acidKnownBy: 'molar mass', acidActivePercent: 101, acidMolarMass: 200 },
      /Acid in what is weighed/,
    ],
    [
      'an acid as light as a proton',
      { acidKnownBy: 'molar mass', acidActivePercent: 100, acidMolarMass: 1 },
      /No acid is this light/,
    ],
  ])('refuses %s', (_, part, says) => {
    refusal(() => calculateNeutralise({ ...asked, ...part }), says);
  });

  it('carries a range of strength only where it holds the strength that was taken', () => {
    const says = (part: Partial<NeutraliseRequest>) =>
      calculateNeutralise({ ...asked, ...part }).results[0]?.says;
    expect(says({ basePercentLow: 45, basePercentHigh: 55 })).toContain('over its strengths of 55 to 45 %');
    for (const part of [
      { basePercentLow: 50, basePercentHigh: 50 },
      { basePercentLow: 55, basePercentHigh: 45 },
      { basePercentLow: 60, basePercentHigh: 70 },
      { basePercentLow: 0, basePercentHigh: 55 },
      { basePercentLow: 45 },
    ])
      expect(says(part)).toBe('of the formula');
  });

  it.each(USUAL_SHARE_KEYS)(
    '“%s”: its own share lies within what is usual, both ends do, and just beyond is said',
    (key) => {
      const { low, high, percent: usual } = usualShare(key);
      expect(usual).toBeGreaterThanOrEqual(low);
      expect(usual).toBeLessThanOrEqual(high);
      const outside = (neutralisedPercent: number) =>
        calculateNeutralise({ ...asked, usualShare: key, neutralisedPercent })
          .results[0]?.worked.cautions.join()
          .includes('lies outside') ?? false;
      expect([outside(low), outside(high), outside(usual), outside(low - 1)]).toEqual([
        false,
        false,
        false,
        true,
      ]);
      if (high < 100) expect(outside(high + 1)).toBe(true);
    },
  );

  it('to a pH and to the share that it means is one amount, whatever the acid', () => {
    const acid = {
      acidKnownBy: 'molar mass' as const,
      acidPercent: 1,
      acidMolarMass: 90.078,
      acidEquivalents: 1,
      acidActivePercent: 100,
      basePercent: 100,
    };
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 6, noNaN: true }),
        fc.integer({ min: 5, max: 95 }),
        (pKa, neutralisedPercent) => {
          const share = calculateNeutralise({ ...asked, ...acid, acidPKas: [pKa], neutralisedPercent });
          const back = calculateNeutralise({
            ...asked,
            ...acid,
            acidPKas: [pKa],
            neutraliseTo: 'pH',
            pH: valueOf(share, 'mixture'),
          });
          expect(valueOf(back, 'percent')).toBeCloseTo(valueOf(share, 'percent'), 6);
          expect(valueOf(share, 'mixture')).toBeGreaterThan(valueOf(share, 'alone'));
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('molar masses of the listed acids', () => {
  // By hand from IUPAC's abridged weights: C 12.011, H 1.008, O 15.999, Na 22.990, K 39.098.
  it.each([
    ['Benzoic Acid', 7 * 12.011 + 6 * 1.008 + 2 * 15.999],
    ['Sorbic Acid', 6 * 12.011 + 8 * 1.008 + 2 * 15.999],
    ['Dehydroacetic Acid', 8 * 12.011 + 8 * 1.008 + 4 * 15.999],
    ['Salicylic Acid', 7 * 12.011 + 6 * 1.008 + 3 * 15.999],
    ['Formic Acid', 12.011 + 2 * 1.008 + 2 * 15.999],
    ['Undecylenic Acid', 11 * 12.011 + 20 * 1.008 + 2 * 15.999],
  ])('%s', (inci, mass) => {
    expect(ACID_MOLAR_MASSES[inci]).toBeCloseTo(mass, 2);
  });

  it('stand for every acid of the list, and for no other', () => {
    expect(Object.keys(ACID_MOLAR_MASSES).sort()).toEqual(ORGANIC_ACIDS.map(({ inci }) => inci).sort());
  });

  it('of a salt has the metal in the place of one hydrogen: sodium benzoate 144.105, potassium sorbate 150.218', () => {
    expect(saltMolarMass(ACID_MOLAR_MASSES['Benzoic Acid'] ?? 0, 'sodium salt')).toBeCloseTo(144.105, 2);
    expect(saltMolarMass(ACID_MOLAR_MASSES['Sorbic Acid'] ?? 0, 'potassium salt')).toBeCloseTo(150.218, 2);
  });
});

describe('an organic acid as preservative', () => {
  const of = (part: Partial<PreserveRequest>, library = new Map()) =>
    calculatePreserve({ ...BLANK_PRESERVE, ...part }, library);
  const typed = { acid: 'Our acid', pKa: 4.5 };

  it('loses its free acid as the pH rises, from almost all of it to almost none', () => {
    for (const { inci } of ORGANIC_ACIDS) {
      const shares = of({ acid: inci }).rows.map(({ percent }) => percent);
      expect(shares, inci).toEqual([...shares].sort((a, b) => b - a));
      expect(shares).toHaveLength(9);
    }
    // By hand at pKa 4.5: half at 4.5, a hundred elevenths at 5.5.
    const rows = new Map(of(typed).rows.map((row) => [row.pH, row.percent]));
    expect(rows.get(4.5)).toBe(50);
    expect(rows.get(5.5)).toBeCloseTo(100 / 11, 9);
  });

  it('gives of a dose what its share says, as acid: a salt counts by its acid', () => {
    const acid = of({ ...typed, pH: 4.5, dosePercent: 0.6 });
    expect(valueOf(acid, 'active')).toBeCloseTo(0.3, 12);
    expect(acid.results.map(({ key }) => key)).not.toContain('dose');
    const salt = of({
      ...typed,
      pH: 4.5,
      dosePercent: 0.6,
      dosedAs: 'other salt',
      acidMolarMass: 100,
      saltMolarMass: 120,
    });
    expect(valueOf(salt, 'dose')).toBeCloseTo(0.5, 12);
    expect(valueOf(salt, 'active')).toBeCloseTo(0.25, 12);
    expect(
      acid.rows.every(({ active, percent }) => Math.abs((active ?? 0) - (0.6 * percent) / 100) < 1e-12),
    ).toBe(true);
    expect(of(typed).rows.every(({ active }) => active === null)).toBe(true);
  });

  it('asks for what it lacks: a pKa, a pH, the masses of a salt that it does not know', () => {
    refusal(() => of({ acid: 'Our acid' }), /pKa is not entered/);
    refusal(() => of({ ...typed, pH: null }), /pH is not entered/);
    refusal(
      () => of({ ...typed, dosePercent: 1, dosedAs: 'sodium salt' }),
      /Molar mass of the acid is not entered/,
    );
    refusal(
      () => of({ ...typed, dosePercent: 1, dosedAs: 'sodium salt', acidMolarMass: 122 }),
      /Molar mass of the salt is not entered/,
    );
    refusal(() => of({ dosePercent: 1, dosedAs: 'other salt' }), /Molar mass of the salt is not entered/);
    refusal(() => of({ materialId: '01890000-0000-7000-8000-00000000000a' }), /no longer in the library/);
  });

  it('refuses a salt that is lighter than its acid: the two masses are taken for each other', () => {
    const swapped = { ...typed, dosePercent: 0.6, dosedAs: 'other salt' as const, acidMolarMass: 120 };
    refusal(() => of({ ...swapped, saltMolarMass: 100 }), /lighter than its acid/);
    expect(valueOf(of({ ...swapped, saltMolarMass: 120 }), 'dose')).toBeCloseTo(0.6, 12);
  });

  it('refuses a pH off the scale and a dose that cannot be', () => {
    for (const pH of [-0.1, 14.1, Number.NaN]) refusal(() => of({ ...typed, pH }), /pH/);
    for (const dosePercent of [-1, 101, Number.NaN]) expect(() => of({ ...typed, dosePercent })).toThrow();
  });

  it('of a material goes by the figure that is recorded, and over its ends', () => {
    const recorded = (pKa: ReturnType<typeof figure>) => {
      const material = make('Guard', 'Mystery Acid', { figures: { pKa } });
      return of({ materialId: material.id, pH: 4.5 }, new Map([[material.id, material]]));
    };
    expect(recorded(figure(4.5)).pKas.map(({ pKa }) => pKa)).toEqual([4.5]);
    expect(recorded(figure(4.5, 4.2, 4.8)).pKas.map(({ pKa }) => pKa)).toEqual([4.5, 4.2, 4.8]);
    expect(recorded(figure(4.5, 4.5, 4.8)).pKas.map(({ pKa }) => pKa)).toEqual([4.5, 4.8]);
    expect(recorded(range(4.2, 4.8)).pKas[0]?.pKa).toBe(4.5);
    expect(recorded(figure(4.5, 4.2, 4.8)).results[0]?.says).toMatch(/33\.\d to 66\.\d/);
  });

  it('never goes without saying what it does not prove', () => {
    expect(of(typed).notes.join()).toContain('Not proof of preservation');
  });
});
