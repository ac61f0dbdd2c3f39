import fc from 'fast-check';
import {
  acidShare,
  agentDoses,
  agentOf,
  AGENTS,
  BOOSTER,
  MICROBES,
  undissociatedShare,
  type Agent,
} from '@core/preservation/agents';
import { bindingByEthoxylates, freeInWater, type Division } from '@core/preservation/free-in-water';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';
import { make } from '../checks/build';
import { NEGATIVE, NO_NUMBERS, refusesEach } from '../working/bounds';

/** IUPAC abridged standard atomic weights, 2021. */
const WEIGHTS: Record<string, number> = { C: 12.011, H: 1.008, O: 15.999, Na: 22.99, K: 39.098 };
const massOf = (atoms: Record<string, number>): number =>
  Object.entries(atoms).reduce((sum, [element, count]) => sum + WEIGHTS[element]! * count, 0);

/** Atoms of the acid; its salts have one hydrogen less and a metal. */
const ACIDS: Record<string, Record<string, number>> = {
  'benzoic acid': { C: 7, H: 6, O: 2 },
  'sorbic acid': { C: 6, H: 8, O: 2 },
  'dehydroacetic acid': { C: 8, H: 8, O: 4 },
  'salicylic acid': { C: 7, H: 6, O: 3 },
  'p-anisic acid': { C: 8, H: 8, O: 3 },
  'levulinic acid': { C: 5, H: 8, O: 3 },
};
const named = (name: string): Agent => AGENTS.find((one) => one.name === name)!;

describe('the acids that preserve', () => {
  it.each(Object.entries(ACIDS))('%s weighs what its atoms weigh, and so do its salts', (name, atoms) => {
    const { acid } = named(name);
    expect(Math.abs(acid!.molarMass - massOf(atoms))).toBeLessThan(0.02);
    for (const [salt, mass] of Object.entries(acid!.salts)) {
      const metal: Record<string, number> = salt.startsWith('sodium') ? { Na: 1 } : { K: 1 };
      expect(Math.abs(mass - massOf({ ...atoms, H: atoms.H! - 1, ...metal })), salt).toBeLessThan(0.03);
      expect(acidShare(named(name), salt.toUpperCase())).toBeCloseTo(acid!.molarMass / mass, 12);
    }
    expect(acidShare(named(name), name)).toBe(1);
  });

  it('have a pKa that the published table has', () => {
    const { pKa: table } = publishedValues(
      'preservatives',
      z.object({
        pKa: z.array(z.object({ inci: z.string(), pKa: z.union([z.number(), z.array(z.number())]) })),
      }),
    );
    const compared = table.flatMap(({ inci, pKa }) => {
      const own = agentOf(inci)?.acid;
      return own ? [[inci, Math.abs(own.pKa - [pKa].flat()[0]!)] as const] : [];
    });
    expect(compared.length).toBeGreaterThanOrEqual(5);
    for (const [inci, apart] of compared) expect(apart, inci).toBeLessThanOrEqual(0.06);
  });

  it('act by what is undissociated: half at the pKa, a tenth of the rest one unit above, all of what is no acid', () => {
    const acid = named('sorbic acid');
    expect(undissociatedShare(acid, 4.76)).toBeCloseTo(0.5, 12);
    expect(undissociatedShare(acid, 5.76)).toBeCloseTo(1 / 11, 12);
    expect(undissociatedShare(acid, 2)).toBeGreaterThan(0.99);
    expect(undissociatedShare(acid, null)).toBe(1);
    expect(undissociatedShare(named('phenoxyethanol'), 9)).toBe(1);
  });
});

describe('a preservative known by its INCI name', () => {
  it.each([
    ['Potassium Sorbate', 'sorbic acid'],
    [' SODIUM BENZOATE ', 'benzoic acid'],
    ['Sodium Methylparaben', 'methylparaben'],
    ['Methylisothiazolinone', 'an isothiazolinone'],
    ['Benzisothiazolinone', 'an isothiazolinone'],
    ['DMDM Hydantoin', 'a formaldehyde releaser'],
    ['Imidazolidinyl Urea', 'a formaldehyde releaser'],
    ['Diazolidinyl Urea', 'a formaldehyde releaser'],
    ['2-Bromo-2-Nitropropane-1,3-Diol', 'bronopol'],
    ['Chlorhexidine Digluconate', 'chlorhexidine'],
    ['Hexamidine Diisethionate', 'hexamidine'],
    ['Benzalkonium Chloride', 'a quaternary ammonium compound'],
  ])('%s is %s', (inci, name) => expect(agentOf(inci)?.name).toBe(name));

  it.each([
    'Urea',
    'Hydroxyethyl Urea',
    'Glycerin',
    'Benzyl Benzoate',
    'Sorbitol',
    'Phenoxyethyl Caprylate',
    '',
  ])('“%s” is none', (inci) => expect(agentOf(inci)).toBeNull());

  it('stands once in the table: no name is two of them', () => {
    const names = ['Potassium Sorbate', 'Benzoic Acid', 'Phenoxyethanol', 'Benzyl Alcohol', 'Sodium Anisate'];
    for (const inci of names)
      expect(
        AGENTS.filter((one) => one.inci.test(inci.toLowerCase())),
        inci,
      ).toHaveLength(1);
    expect(new Set(AGENTS.map(({ name }) => name)).size).toBe(AGENTS.length);
    for (const { name, acts } of AGENTS) {
      expect(acts, name).toHaveLength(MICROBES.length);
      expect(
        acts.some((one) => one > 0),
        name,
      ).toBe(true);
    }
    expect(['caprylyl glycol', 'ethylhexylglycerin'].every((one) => BOOSTER.test(one))).toBe(true);
    expect(BOOSTER.test('propylene glycol')).toBe(false);
  });
});

describe('what lines bring of a preservative', () => {
  it('is summed over lines and blends as the acid, at the lower end of a range', () => {
    const salt = make('Salt', 'Sodium Benzoate');
    const acid = make('Acid', 'Benzoic Acid');
    const blend = make('Blend', 'Benzoic Acid', {
      composition: [
        { inci: 'Benzoic Acid', lowPpm: 400_000, highPpm: 600_000 },
        { inci: 'Phenoxyethanol', lowPpm: 400_000, highPpm: 600_000 },
      ],
    });
    const doses = agentDoses([
      { lineId: 'a', material: salt, ppm: 5_000 },
      { lineId: 'b', material: acid, ppm: 1_000 },
      { lineId: 'c', material: blend, ppm: 10_000 },
      { lineId: 'd', material: make('Oil', 'Squalane'), ppm: 200_000 },
    ]);
    // 0.5 % × 122.12/144.10 + 0.1 % + 40 % of 1 %.
    expect(doses.map(({ agent, ppm, lineIds }) => [agent.name, Math.round(ppm), lineIds])).toEqual([
      ['benzoic acid', Math.round((5_000 * 122.12) / 144.1) + 5_000, ['a', 'b', 'c']],
      ['phenoxyethanol', 4_000, ['c']],
    ]);
  });

  it('is in proportion to the lines, and does not hang on their order', () => {
    const shelf = ['Sodium Benzoate', 'Potassium Sorbate', 'Phenoxyethanol', 'Glycerin'].map((name) =>
      make(name, name),
    );
    const lines = fc.array(fc.tuple(fc.nat(3), fc.integer({ min: 0, max: 20_000 })), { maxLength: 6 });
    fc.assert(
      fc.property(lines, (rows) => {
        const at = (of: readonly (readonly [number, number])[], by: number) =>
          Object.fromEntries(
            agentDoses(
              of.map(([which, ppm], n) => ({ lineId: String(n), material: shelf[which]!, ppm: ppm * by })),
            ).map(({ agent, ppm }) => [agent.name, ppm]),
          );
        const one = at(rows, 1);
        const [twice, back] = [at(rows, 2), at([...rows].reverse(), 1)];
        expect(Object.keys(twice).sort()).toEqual(Object.keys(one).sort());
        for (const [name, ppm] of Object.entries(one)) {
          expect(twice[name]).toBeCloseTo(2 * ppm, 6);
          expect(back[name]).toBeCloseTo(ppm, 6);
        }
      }),
    );
  });
});

describe('what is left free in the water', () => {
  const division = fc.record<Division>({
    total: fc.double({ min: 0.01, max: 5, noNaN: true }),
    oilToWater: fc.double({ min: 0, max: 5, noNaN: true }),
    partition: fc.double({ min: 0, max: 300, noNaN: true }),
    binding: fc.double({ min: 0, max: 20, noNaN: true }),
    ethoxylates: fc.double({ min: 0, max: 20, noNaN: true }),
    undissociated: fc.double({ min: 0.001, max: 1, noNaN: true }),
  });

  it('loses nothing: oil, micelles and water together hold the dose', () => {
    fc.assert(
      fc.property(division, (of) => {
        const { total, oilToWater, partition, binding, ethoxylates, undissociated: f } = of;
        const acts = freeInWater(of).value;
        // Per 100 g of water: φ·100 g of oil; concentrations follow the undissociated part.
        const [inWater, inMicelles, inOil] = [
          acts / f,
          acts * binding * ethoxylates,
          acts * partition * oilToWater,
        ];
        expect((inWater + inMicelles + inOil) / (1 + oilToWater)).toBeCloseTo(total, 6);
        expect(acts).toBeGreaterThan(0);
      }),
    );
  });

  it('grows with the dose alone; oil that takes more up, and ethoxylates, leave less', () => {
    fc.assert(
      fc.property(division, fc.double({ min: 1.01, max: 4, noNaN: true }), (of, by) => {
        const now = freeInWater(of).value;
        expect(freeInWater({ ...of, total: of.total * by }).value).toBeCloseTo(now * by, 6);
        expect(freeInWater({ ...of, partition: of.partition * by }).value).toBeLessThanOrEqual(now + 1e-12);
        expect(freeInWater({ ...of, ethoxylates: of.ethoxylates * by }).value).toBeLessThanOrEqual(
          now + 1e-12,
        );
      }),
    );
  });

  it('is the dose where there is neither oil nor ethoxylate, and more of the water where oil takes up none', () => {
    const of = { total: 0.5, oilToWater: 0, partition: 10, binding: 1, ethoxylates: 0, undissociated: 1 };
    expect(freeInWater(of).value).toBeCloseTo(0.5, 12);
    // Half of the formula is oil that takes none up: all of it is in the other half.
    expect(freeInWater({ ...of, oilToWater: 1, partition: 0 }).value).toBeCloseTo(1, 12);
  });

  it('worked by hand: methylparaben 0.2 %, equal oil and water, partition 7.5: 0.2 × 2 / 8.5', () => {
    const of = { total: 0.2, oilToWater: 1, partition: 7.5, binding: 0, ethoxylates: 0, undissociated: 1 };
    expect(freeInWater(of).value).toBeCloseTo(0.4 / 8.5, 12);
  });

  it('beside 5 % polysorbate 80 is what was measured: 22 % of methylparaben, 4.5 % of propylparaben', () => {
    for (const [logP, free] of [
      [1.96, 0.22],
      [3.04, 0.045],
    ] as const) {
      const of = { total: 1, oilToWater: 0, partition: 0, ethoxylates: 5, undissociated: 1 };
      expect(freeInWater({ ...of, binding: bindingByEthoxylates(logP) }).value).toBeCloseTo(free, 6);
    }
    expect(bindingByEthoxylates(2.5)).toBeGreaterThan(bindingByEthoxylates(2));
  });

  const plain = { total: 1, oilToWater: 1, partition: 1, binding: 1, ethoxylates: 1, undissociated: 1 };
  it.each([
    ['The dose', NEGATIVE, (x: number) => freeInWater({ ...plain, total: x })],
    ['Oil to water', NEGATIVE, (x: number) => freeInWater({ ...plain, oilToWater: x })],
    ['The partition coefficient', NEGATIVE, (x: number) => freeInWater({ ...plain, partition: x })],
    ['The binding', NEGATIVE, (x: number) => freeInWater({ ...plain, binding: x })],
    ['The ethoxylates', NEGATIVE, (x: number) => freeInWater({ ...plain, ethoxylates: x })],
    [
      'The undissociated part',
      [...NO_NUMBERS, 0, -0.1, 1.01],
      (x: number) => freeInWater({ ...plain, undissociated: x }),
    ],
  ] as const)('refuses %s out of bounds', (...field) => refusesEach(field));
});
