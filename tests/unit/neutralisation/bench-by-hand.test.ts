import { acidHandling, baseHandling } from '@core/neutralisation/handling';
import { acidGroups, neutralise, theoreticalAcidValue } from '@core/neutralisation/neutralise';
import { KNOWN_ACIDS, KNOWN_BASES } from '@core/neutralisation/acids-and-bases';
import { describe, expect, it } from 'vitest';

const soda = (concentrationPercent: number, handling: string[] = []) => ({
  ...{ molarMass: 39.997, equivalents: 1, concentrationPercent, handling },
});

describe('at the bench, worked by hand', () => {
  // A vanishing cream: 18 g stearic acid of acid value 205 in 100 g, 20 % of it to be soap.
  it('a vanishing cream takes 2.63 g of sodium hydroxide of 20 %: 18 × 205 / 56,106 × 0.2 × 39.997 / 0.2', () => {
    const made = neutralise({
      ...{ acidMass: 18, acid: { acidValue: 205 }, base: soda(20), fraction: 0.2, formulaMass: 100 },
    });
    expect(made.pureBaseMass).toBeCloseTo(0.52611, 4);
    expect(made.solutionMass).toBeCloseTo(2.63055, 4);
    expect(made.percentOfFormula).toBeCloseTo(2.63055, 4);
  });

  it('a carbomer gel takes as much amine of 149.19 as 149.19 / 39.997 times soda', () => {
    const amine = { molarMass: 149.19, equivalents: 1, concentrationPercent: 100, handling: [] };
    const ask = { acidMass: 1, acid: { acidValue: 700 }, fraction: 0.65 };
    const ratio =
      neutralise({ ...ask, base: amine }).pureBaseMass / neutralise({ ...ask, base: soda(100) }).pureBaseMass;
    expect(ratio).toBeCloseTo(3.73003, 4);
  });

  // 56,106 mg KOH a mole over the molar mass: any book of fats has them.
  it.each([
    ['lauric acid', 200.322, 1, 280.08],
    ['stearic acid', 284.484, 1, 197.22],
    ['oleic acid', 282.468, 1, 198.63],
    ['citric acid', 192.123, 3, 876.1],
  ])('pure %s of %d g/mol with %i groups has an acid value of %d', (_, molarMass, groups, value) => {
    expect(theoreticalAcidValue(molarMass, groups).value).toBeCloseTo(value, 1);
  });

  it('shows the acid groups by either of the two ways, with the unit that they are in', () => {
    expect(acidGroups(10, { acidValue: 200 })).toMatchObject({
      shows: '10 × 200 / 56106',
      unit: 'mol, with the mass in g',
    });
    expect(acidGroups(10, { molarMass: 192.123, equivalents: 3 }).shows).toBe('10 × 3 / 192.123');
  });
});

describe('what is said before the base goes in', () => {
  const ask = { acidMass: 18, acid: { acidValue: 205 }, fraction: 0.2 };
  it('begins with how the base is handled, and ends with the last tenth by pH', () => {
    const { cautions } = neutralise({ ...ask, base: soda(20, ['goggles', 'cold water']) }).worked;
    expect(cautions.slice(0, 2)).toEqual(['goggles', 'cold water']);
    expect(cautions.at(-1)).toMatch(/^Add the last tenth by pH/);
  });

  it('warns where acid and base leave the formula no room, and not where they just fill it', () => {
    const warned = (formulaMass: number): boolean =>
      neutralise({ ...ask, base: soda(20), formulaMass })
        .worked.cautions.join()
        .includes('more than the whole formula');
    // 18 g and 2.63055 g.
    expect([warned(20.63), warned(20.64)]).toEqual([true, false]);
  });

  it('tells first aid with every base and every acid that it speaks of', () => {
    for (const { inci, pKaConjugateAcid } of KNOWN_BASES)
      expect(baseHandling({ names: [inci], hazards: [] }, pKaConjugateAcid), inci).toContain('15 minutes');
    for (const { inci } of KNOWN_ACIDS) {
      const says = acidHandling({ names: [inci], hazards: [] });
      if (says !== null) expect(says, inci).toContain('15 minutes');
    }
  });

  it('knows a substance by any of its names, in any case', () => {
    expect(baseHandling({ names: ['Harrow 20', 'SODIUM HYDROXIDE'], hazards: [] }, null)).toMatch(/^Caustic/);
    expect(acidHandling({ names: ['Harrow AHA', 'GLYCOLIC ACID'], hazards: [] })).toMatch(/^Strong acid/);
  });
});
