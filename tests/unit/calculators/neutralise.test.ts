import { calculate } from '@core/calculators/calculation';
import { calculationRequest } from '@core/calculators/calculation-request';
import type { Calculated } from '@core/calculators/calculated';
import { BLANK_NEUTRALISE } from '@core/calculators/neutralise-request';
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
      baseMolarMass: 39.997,
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
    baseMolarMass: 39.997,
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
    expect(fraction?.worked.steps).toHaveLength(4);
    expect(fraction?.worked.sources.at(-1)?.text).toContain('dissociation constants');
    const text = JSON.stringify(calculationSheet(found, settings.parse({}), '2026-03-01T10:00:00Z').content);
    expect(text).toContain('Acid groups neutralised at pH 5');
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

  it('reads requests that were kept before pKas were asked for', () => {
    const { neutraliseTo: _to, pH: _pH, acidPKas: _acid, basePKa: _base, ...older } = BLANK_NEUTRALISE;
    expect(calculationRequest.parse(older)).toEqual(BLANK_NEUTRALISE);
  });

  it('says to be careful with caustics, and only with them', () => {
    const asked = { ...BLANK_NEUTRALISE, acidPercent: 2, acidValue: 200, baseMolarMass: 40 };
    const cautions = (caustic: boolean) =>
      calculate({ ...asked, caustic }, NOTHING).results[0]?.worked.cautions.join(' ');
    expect(cautions(true)).toContain('goggles');
    expect(cautions(false)).not.toContain('goggles');
  });
});
