import { describe, expect, it } from 'vitest';
import { neutralise, neutralisedFraction } from '@core/neutralisation/neutralise';
import { refusal } from '../working/refusal';

const sodiumHydroxide = { molarMass: 39.997, equivalents: 1, concentrationPercent: 10, caustic: true };
const wish = {
  acidMass: 5,
  acid: { acidValue: 200 },
  base: sodiumHydroxide,
  fraction: 0.3,
  formulaMass: 100,
};

describe('neutralising', () => {
  it('gives pure base, the solution to weigh and its share of the formula', () => {
    const { pureBaseMass, solutionMass, percentOfFormula, worked } = neutralise(wish);
    expect(pureBaseMass).toBeCloseTo(((5 * 200) / 56_106) * 0.3 * 39.997, 12);
    expect(solutionMass).toBeCloseTo(10 * pureBaseMass, 12);
    expect(percentOfFormula).toBeCloseTo(solutionMass, 12);
    expect(worked.value).toBe(solutionMass);
    expect(worked.cautions.join()).toContain('goggles');
  });

  it('warns of caustics only for caustics', () => {
    const { worked } = neutralise({ ...wish, base: { ...sodiumHydroxide, caustic: false } });
    expect(worked.cautions.join()).not.toContain('goggles');
  });

  it('refuses a fraction in per cent, a solution without base and a negative acid value', () => {
    refusal(() => neutralise({ ...wish, fraction: 30 }), /between 0 and 1/);
    refusal(
      () => neutralise({ ...wish, base: { ...sodiumHydroxide, concentrationPercent: 0 } }),
      /Concentration/,
    );
    refusal(
      () => neutralise({ ...wish, base: { ...sodiumHydroxide, concentrationPercent: 110 } }),
      /Concentration/,
    );
    refusal(() => neutralise({ ...wish, acid: { acidValue: -1 } }), /Acid value/);
  });

  it('half of an acid is neutralised at its pKa', () => {
    expect(neutralisedFraction(3.86, 3.86).value).toBe(0.5);
    refusal(() => neutralisedFraction(3.86, 15), /pH/);
  });
});
