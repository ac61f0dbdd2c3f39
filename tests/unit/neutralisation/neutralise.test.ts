import { describe, expect, it } from 'vitest';
import { amineUptake, baseToPh } from '@core/solutions/base-to-ph';
import { neutralise } from '@core/neutralisation/neutralise';
import { refusal } from '../working/refusal';

const sodiumHydroxide = {
  molarMass: 39.997,
  equivalents: 1,
  concentrationPercent: 10,
  handling: ['goggles'],
};
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

  it('refuses a fraction in per cent, a solution without base and a negative acid value', () => {
    refusal(() => neutralise({ ...wish, fraction: 30 }), /between 0 and 1/);
    refusal(() => neutralise({ ...wish, base: { ...sodiumHydroxide, concentrationPercent: 0 } }), /Strength/);
    refusal(
      () => neutralise({ ...wish, base: { ...sodiumHydroxide, concentrationPercent: 110 } }),
      /Strength/,
    );
    refusal(() => neutralise({ ...wish, acid: { acidValue: -1 } }), /Acid value/);
  });

  it('a polyacid gives up its groups one after the other', () => {
    const given = (pKas: number[], pH: number) =>
      baseToPh({ pKas, concentration: 1 }, pH, null).perGroup.steps[0]?.result ?? Number.NaN;
    // At the middle pKa of a symmetrical triprotic acid half of all groups are given up, by symmetry.
    expect(given([3, 5, 7], 5)).toBeCloseTo(1.5, 12);
    // Far apart, each is given up as if alone: at pH 6, the first whole, the second half, the third none.
    expect(given([2, 6, 12], 6)).toBeCloseTo(1.5, 3);
    // Two alike groups that know nothing of each other: macroscopic pKas lie log 4 apart.
    const [first, second] = [5 - Math.log10(2), 5 + Math.log10(2)];
    expect(given([first, second], 4)).toBeCloseTo(2 * given([5], 4), 12);
  });

  it('an amine near its pKa takes up less, so more of it is weighed', () => {
    expect(amineUptake(7.76, 7.76).value).toBe(0.5);
    expect(amineUptake(7.76, 9).cautions.join()).toContain('a stronger base');
    const all = neutralise(wish).pureBaseMass;
    expect(neutralise({ ...wish, uptake: 0.5 }).pureBaseMass).toBeCloseTo(2 * all, 12);
    refusal(() => neutralise({ ...wish, uptake: 0 }), /more than zero/);
  });
});
