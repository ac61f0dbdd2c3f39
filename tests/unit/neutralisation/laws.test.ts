import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KNOWN_ACIDS, KNOWN_BASES } from '@core/neutralisation/acids-and-bases';
import { acidHandling, baseHandling } from '@core/neutralisation/handling';
import {
  acidGroups,
  baseToWeigh,
  neutralise,
  theoreticalAcidValue,
  type NeutralisationWish,
} from '@core/neutralisation/neutralise';
import { USUAL_SHARE_KEYS, usualShare } from '@core/neutralisation/usual-shares';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const koh = { molarMass: 56.106, equivalents: 1, concentrationPercent: 100, handling: [] };
const wish = (parts: Partial<NeutralisationWish> = {}): NeutralisationWish => ({
  acidMass: 10,
  acid: { acidValue: 200 },
  base: koh,
  fraction: 1,
  ...parts,
});
const mass = fc.double({ min: 0.01, max: 1000, noNaN: true });
const fraction = fc.double({ min: 0.01, max: 1, noNaN: true });
const percent = fc.double({ min: 1, max: 100, noNaN: true });

describe('base for an acid', () => {
  it('is the acid value itself, where the base is potassium hydroxide: that is its definition', () => {
    fc.assert(
      fc.property(mass, fc.double({ min: 1, max: 500, noNaN: true }), (acidMass, acidValue) => {
        const got = neutralise(wish({ acidMass, acid: { acidValue } })).pureBaseMass;
        expect(got / ((acidMass * acidValue) / 1000)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('goes with acid and share, and against strength and uptake; what is weighed holds the pure base', () => {
    fc.assert(
      fc.property(mass, fraction, percent, (acidMass, share, concentrationPercent) => {
        const base = { ...koh, concentrationPercent };
        const one = neutralise(wish({ acidMass, fraction: share, base }));
        expect((one.solutionMass * concentrationPercent) / 100).toBeCloseTo(one.pureBaseMass, 7);
        for (const twice of [
          neutralise(wish({ acidMass: 2 * acidMass, fraction: share, base })),
          baseToWeigh(wish({ acidMass, fraction: 2 * share, base })),
          neutralise(wish({ acidMass, fraction: share, base, uptake: 0.5 })),
          neutralise(wish({ acidMass, fraction: share, base: { ...base, molarMass: 2 * koh.molarMass } })),
        ])
          expect(twice.solutionMass / one.solutionMass).toBeCloseTo(2, 9);
        const half = neutralise(wish({ acidMass, fraction: share, base: { ...base, equivalents: 2 } }));
        expect(half.solutionMass / one.solutionMass).toBeCloseTo(0.5, 9);
      }),
    );
  });

  it('is the same by molar mass as by the acid value that the pure acid has', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 900, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        (molarMass, equivalents) => {
          fc.pre((56_106 * equivalents) / molarMass <= 2000);
          const byMass = neutralise(wish({ acid: { molarMass, equivalents } }));
          const acidValue = theoreticalAcidValue(molarMass, equivalents).value;
          expect(neutralise(wish({ acid: { acidValue } })).solutionMass / byMass.solutionMass).toBeCloseTo(
            1,
            9,
          );
        },
      ),
    );
  });

  it('worked by hand: 2 g citric acid, three groups, with sodium hydroxide of 10 %', () => {
    // 2 × 3 / 192.123 = 0.0312300 mol; × 39.997 = 1.249107 g pure; 12.49107 g of 10 %; of 200 g 6.2455 %.
    const got = neutralise(
      wish({
        acidMass: 2,
        acid: { molarMass: 192.123, equivalents: 3 },
        base: { molarMass: 39.997, equivalents: 1, concentrationPercent: 10, handling: [] },
        formulaMass: 200,
      }),
    );
    expect(got.pureBaseMass).toBeCloseTo(1.249107, 5);
    expect(got.solutionMass).toBeCloseTo(12.49107, 4);
    expect(got.percentOfFormula).toBeCloseTo(6.2455, 4);
    expect(got.worked.steps.map(({ result }) => result).at(-1)).toBe(got.solutionMass);
  });

  it('of no acid, or for no share of it, is none; without a formula it has no share of one', () => {
    expect(neutralise(wish({ acidMass: 0 })).solutionMass).toBe(0);
    expect(neutralise(wish({ fraction: 0 })).solutionMass).toBe(0);
    expect(neutralise(wish()).percentOfFormula).toBeNull();
  });
});

describe('what is known of acids and bases', () => {
  it('acid values of monographs reach what a pure acid of that molar mass has, within what grades differ', () => {
    for (const { inci, molarMass, equivalents, acidValueRange } of KNOWN_ACIDS) {
      if (!acidValueRange) continue;
      const pure = theoreticalAcidValue(molarMass, equivalents).value;
      expect(acidValueRange[0], inci).toBeLessThanOrEqual(pure * 1.02);
      expect(acidValueRange[1], inci).toBeGreaterThanOrEqual(pure * 0.98);
      expect(acidValueRange[0], inci).toBeLessThan(acidValueRange[1]);
    }
  });

  it.each(KNOWN_ACIDS.filter(({ pKas }) => pKas.length > 0))(
    '$inci has a pKa for each group, rising',
    ({ pKas, equivalents }) => {
      expect(pKas).toHaveLength(equivalents);
      expect([...pKas].sort((a, b) => a - b)).toEqual(pKas);
    },
  );

  it.each(USUAL_SHARE_KEYS)('the usual share for %s lies in its own range, below all of the acid', (key) => {
    const { low, high, percent: usual } = usualShare(key);
    expect(low).toBeLessThanOrEqual(usual);
    expect(usual).toBeLessThanOrEqual(high);
    expect(high).toBeLessThanOrEqual(100);
  });

  const of = (name: string) => ({ names: [name], hazards: [] });
  it.each([
    ...KNOWN_BASES.filter((one) => one.pKaConjugateAcid === null).map(
      (one) => [one.inci, 'Caustic, burns'] as const,
    ),
    ...KNOWN_BASES.filter((one) => one.pKaConjugateAcid !== null).map(
      (one) => [one.inci, 'An amine'] as const,
    ),
    ['Lye 10 %', 'Caustic, burns'],
    ['KOH', 'Caustic, burns'],
    ['Polyethyleneimine', 'An amine'],
    ['Sodium Bicarbonate', 'Nothing is known here'],
    ['Milk of magnesia', 'Nothing is known here'],
  ] as [string, string][])('%s is handled as: %s', (name, begins) => {
    expect(baseHandling(of(name), null).startsWith(begins)).toBe(true);
  });

  it('a recorded hazard goes before a name, and an amine’s pKa tells an amine', () => {
    expect(baseHandling({ names: ['Triethanolamine'], hazards: ['caustic'] }, 7.76)).toMatch(/^Caustic/);
    expect(baseHandling(of('Mystery 7'), 9)).toMatch(/^An amine/);
    expect(acidHandling({ names: ['Lactic acid'], hazards: ['strong acid'] })).toMatch(/^Strong acid/);
    expect(acidHandling({ names: ['Mystery 7'], hazards: ['irritant'] })).toMatch(/^The acid irritates/);
  });

  it.each([
    ['Phosphoric Acid 85 %', /^Strong acid/],
    ['Glycolic Acid', /^Strong acid/],
    ['Citric Acid', /^The acid irritates/],
    ['Lactic Acid', /^The acid irritates/],
  ])('%s is handled with care', (name, says) => expect(acidHandling(of(name))).toMatch(says));

  it.each(['Stearic Acid', 'Oleic Acid', 'Hyaluronic Acid'])('of %s nothing more is said', (name) =>
    expect(acidHandling(of(name))).toBeNull(),
  );
});

describe('what is refused', () => {
  const base = (parts: Partial<typeof koh>) => neutralise(wish({ base: { ...koh, ...parts } }));
  it.each([
    ['Mass of the acid', NEGATIVE, (x: number) => neutralise(wish({ acidMass: x }))],
    ['Acid value', [...NEGATIVE, 2001], (x: number) => neutralise(wish({ acid: { acidValue: x } }))],
    ['Molar mass of the acid', NOT_POSITIVE, (x: number) => acidGroups(1, { molarMass: x, equivalents: 1 })],
    [
      'Acid groups per molecule',
      NOT_POSITIVE,
      (x: number) => acidGroups(1, { molarMass: 90, equivalents: x }),
    ],
    ['Share to neutralise', [...NEGATIVE, 1.001, 30], (x: number) => neutralise(wish({ fraction: x }))],
    ['Base for each acid group', NEGATIVE, (x: number) => baseToWeigh(wish({ fraction: x }))],
    ['Molar mass of the base', NOT_POSITIVE, (x: number) => base({ molarMass: x })],
    ['Equivalents of the base', NOT_POSITIVE, (x: number) => base({ equivalents: x })],
    ['Strength of the base', [...NOT_POSITIVE, 100.1], (x: number) => base({ concentrationPercent: x })],
    [
      'Share of the base that takes up acid',
      [...NOT_POSITIVE, 1.01],
      (x: number) => neutralise(wish({ uptake: x })),
    ],
    ['Formula mass', NOT_POSITIVE, (x: number) => neutralise(wish({ formulaMass: x }))],
    ['Molar mass of the acid', [...NO_NUMBERS, 0], (x: number) => theoreticalAcidValue(x, 1)],
    ['Acid groups per molecule', NOT_POSITIVE, (x: number) => theoreticalAcidValue(90, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('an acid lighter than any', () => {
    expect(refusal(() => theoreticalAcidValue(1, 1), /No acid is this light/).fields[0]?.path).toBe(
      'molarMass',
    );
  });
});
