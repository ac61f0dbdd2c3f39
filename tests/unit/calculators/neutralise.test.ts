import { calculate } from '@core/calculators/calculation';
import { calculationRequest } from '@core/calculators/calculation-request';
import type { Calculated } from '@core/calculators/calculated';
import { BLANK_NEUTRALISE, type NeutraliseRequest } from '@core/calculators/neutralise-request';
import type { Material } from '@core/materials/material';
import { settings } from '@core/settings/settings';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import { describe, expect, it } from 'vitest';

const NOTHING = new Map<string, Material>();

function valueOf(calculated: Calculated, key: string): number {
  const found = calculated.results.find((one) => one.key === key);
  if (!found) throw new Error(`No result “${key}”.`);
  return found.worked.value;
}

describe('neutralising', () => {
  it('needs as much KOH as the acid value says, by its definition', () => {
    // 2 % of an acid of acid value 206 takes 2 × 206 mg of KOH a gram: 0.412 %.
    const found = calculate(
      {
        ...BLANK_NEUTRALISE,
        acidPercent: 2,
        acidValue: 206,
        baseMolarMass: 56.106,
        basePercent: 100,
        neutralisedPercent: 100,
        batchGrams: 500,
      },
      NOTHING,
    );
    expect(valueOf(found, 'percent')).toBeCloseTo(0.412, 6);
    expect(valueOf(found, 'mass')).toBeCloseTo(2.06, 6);
  });

  it('counts only the acid in a solution of acid, and the base in a solution of base', () => {
    const pure = {
      ...BLANK_NEUTRALISE,
      acidKnownBy: 'molar mass' as const,
      acidPercent: 1,
      acidMolarMass: 90.078,
      acidEquivalents: 1,
      acidActivePercent: 100,
      baseMolarMass: 39.997,
      basePercent: 100,
      neutralisedPercent: 100,
    };
    const all = valueOf(calculate(pure, NOTHING), 'percent');
    expect(all).toBeCloseTo(39.997 / 90.078, 6);
    expect(
      valueOf(calculate({ ...pure, acidActivePercent: 90, basePercent: 10 }, NOTHING), 'percent'),
    ).toBeCloseTo(all * 9, 6);
  });

  const citric = {
    ...BLANK_NEUTRALISE,
    acidName: 'Citric Acid (anhydrous)',
    acidKnownBy: 'molar mass' as const,
    acidPercent: 1,
    acidMolarMass: 192.123,
    acidEquivalents: 3,
    acidActivePercent: 100,
    baseMolarMass: 39.997,
    basePercent: 100,
    neutraliseTo: 'pH' as const,
    acidPKas: [3.13, 4.76, 6.4],
    pH: 5,
  };

  it('neutralises to a pH by the pKas, with the working of the fraction and its source', () => {
    const found = calculate(citric, NOTHING);
    // By hand: r = 74.131, 128.82, 5.1286; (74.131 + 257.65 + 15.386) / (3 × 209.08) = 0.5535.
    expect(valueOf(found, 'fraction')).toBeCloseTo(0.5535, 3);
    expect(valueOf(found, 'percent')).toBeCloseTo(((1 * 3) / 192.123) * 0.5535 * 39.997, 3);
    expect(valueOf(found, 'acid-value')).toBeCloseTo(876.1, 1);
    const fraction = found.results.find((one) => one.key === 'fraction');
    expect(fraction?.worked.sources.at(-1)?.text).toContain('dissociation constants');
    const text = JSON.stringify(calculationSheet(found, settings.parse({}), '2026-03-01T10:00:00Z').content);
    expect(text).toContain('Base for each acid group at pH 5');
    expect(text).toContain('3.13, 4.76, 6.4');
  });

  it('weighs more of an amine that takes up acid in part only, and asks for a pKa to each group', () => {
    const strong = valueOf(calculate(citric, NOTHING), 'percent');
    const amine = calculate({ ...citric, basePKa: 5 }, NOTHING);
    expect(valueOf(amine, 'uptake')).toBe(0.5);
    expect(valueOf(amine, 'percent')).toBeCloseTo(2 * strong, 9);
    expect(() => calculate({ ...citric, acidPKas: [3.13] }, NOTHING)).toThrow(
      '3 acid groups a molecule, but 1 pKa is given',
    );
    expect(() => calculate({ ...citric, acidPKas: [null] }, NOTHING)).toThrow(
      'pKa of the acid is not entered',
    );
  });

  it('reads requests that were kept before pKas, hazards and strengths were asked for', () => {
    const later = ['neutraliseTo', 'pH', 'acidPKas', 'basePKa', 'acidInci', 'acidHazards', 'baseInci'];
    const latest = ['baseHazards', 'basePercentLow', 'basePercentHigh', 'usualShare', 'waterPercent'];
    const older = Object.fromEntries(
      Object.entries(BLANK_NEUTRALISE).filter(([key]) => ![...later, ...latest].includes(key)),
    );
    expect(calculationRequest.parse({ ...older, caustic: true })).toEqual(BLANK_NEUTRALISE);
  });

  const asked: NeutraliseRequest = {
    ...BLANK_NEUTRALISE,
    acidPercent: 2,
    acidValue: 200,
    baseMolarMass: 40,
    basePercent: 10,
    neutralisedPercent: 50,
  };
  const cautionsOf = (part: Partial<NeutraliseRequest>) =>
    calculate({ ...asked, ...part }, NOTHING).results[0]?.worked.cautions.join(' ') ?? '';

  it('says how the base is handled by what it is, whatever it is called', () => {
    for (const caustic of [
      { baseName: 'Sodium Hydroxide' },
      { baseName: 'KOH flakes' },
      { baseName: 'Our No. 7', baseInci: 'Aqua, Sodium Hydroxide' },
      { baseName: 'Our No. 7', baseHazards: ['caustic' as const], basePKa: 9 },
      { baseName: 'something new' },
    ])
      expect(cautionsOf(caustic)).toMatch(/face shield.*never water to it.*aluminium.*rinse/);
    const amine = cautionsOf({ baseName: 'Triethanolamine', basePKa: 7.76 });
    expect(amine).toMatch(/nitros/);
    expect(amine).not.toMatch(/aluminium/);
    expect(cautionsOf({ acidName: 'Lactic Acid 90', baseName: 'Triethanolamine' })).toMatch(
      /The acid irritates/,
    );
  });

  it.each([
    ['acidPercent', /Level of the acid is not entered/],
    ['acidValue', /Acid value is not entered/],
    ['baseMolarMass', /Molar mass of the base is not entered/],
    ['baseEquivalents', /Equivalents of the base is not entered/],
    ['basePercent', /Strength of the base is not entered/],
    ['neutralisedPercent', /Share to neutralise is not entered/],
  ] as const)('asks for %s: nothing is taken in silence', (key, why) => {
    expect(() => calculate({ ...asked, [key]: null }, NOTHING)).toThrow(why);
  });

  it.each([
    ['acidActivePercent', /Acid in what is weighed is not entered/],
    ['acidMolarMass', /Molar mass of the acid is not entered/],
    ['acidEquivalents', /Acid groups per molecule is not entered/],
    ['waterPercent', /Water is not entered/],
    ['pH', /pH to reach is not entered/],
  ] as const)('to a pH asks for %s too', (key, why) => {
    expect(() => calculate({ ...citric, [key]: null }, NOTHING)).toThrow(why);
  });

  it('what enters a number stands among what goes in', () => {
    const given = calculate({ ...citric, basePKa: 8.07 }, NOTHING).given.map((one) => one.label);
    for (const label of [
      'Acid in what is weighed',
      'Strength of the base',
      'Water that holds them',
      'pKa of the acid',
    ])
      expect(given).toContain(label);
  });

  it('carries a range of strength into the base, and proposes a usual share by name', () => {
    // 2 % × 200 / 56106 × 0.5 × 40 / 0.91 = 0.15668 and / 0.88 = 0.16202.
    const flakes = { basePercent: 89.5, basePercentLow: 88, basePercentHigh: 91 };
    const found = calculate({ ...asked, ...flakes, usualShare: 'soap as emulsifier' }, NOTHING).results[0];
    expect(found?.says).toMatch(/0\.157 to 0\.162 % over its strengths of 91 to 88 %/);
    expect(found?.worked.sources.at(-1)?.text).toMatch(/40 to 70 %.*common practice/);
    const outside = calculate({ ...asked, usualShare: 'soap' }, NOTHING).results[0];
    expect(outside?.worked.cautions.at(-1)).toMatch(/50 % lies outside/);
  });

  // Lactic 0.5 % to pH 3.0: [Na] = 0.05551 × 0.12131 − 0.001 = 0.005733 mol/L, × 39.997 / 10 = 0.0229 %, by hand.
  const lactic: NeutraliseRequest = {
    ...citric,
    acidName: 'Lactic Acid',
    acidPercent: 0.5,
    acidMolarMass: 90.078,
    acidEquivalents: 1,
    acidPKas: [3.86],
    pH: 3,
  };

  it('leaves the base to the acid’s own hydrogen, and tells the pH of the acid alone', () => {
    const found = calculate(lactic, NOTHING);
    expect(valueOf(found, 'percent')).toBeCloseTo(0.02293, 4);
    expect(valueOf(found, 'alone')).toBeCloseTo(2.58, 1);
    expect(() => calculate({ ...lactic, acidPercent: 0.2, pH: 2.5 }, NOTHING)).toThrow(/alone is at pH 2\.7/);
  });

  it('in less water the same acid takes a little more', () => {
    // Free hydrogen counts for the water alone: 0.05551 × 0.12131 − 0.8 × 0.001.
    const found = calculate({ ...lactic, waterPercent: 80 }, NOTHING);
    expect(valueOf(found, 'percent')).toBeCloseTo(((0.05551 * 0.12131 - 0.0008) * 39.997) / 10, 4);
  });

  it('to a share and to the pH that it makes agree', () => {
    const share = calculate({ ...lactic, neutraliseTo: 'share', neutralisedPercent: 40 }, NOTHING);
    const back = calculate({ ...lactic, pH: valueOf(share, 'mixture') }, NOTHING);
    expect(valueOf(back, 'percent')).toBeCloseTo(valueOf(share, 'percent'), 6);
    expect(valueOf(back, 'ionic')).toBeCloseTo(valueOf(share, 'ionic'), 6);
  });

  it('to a share gives the base also where the pH cannot be told, and says why', () => {
    const found = calculate(
      { ...citric, neutraliseTo: 'share', neutralisedPercent: 50, acidPKas: [3.13] },
      NOTHING,
    );
    expect(valueOf(found, 'percent')).toBeCloseTo((1.5 / 192.123) * 39.997, 6);
    expect(found.withheld[0]?.why).toMatch(/3 acid groups/);
  });
});
