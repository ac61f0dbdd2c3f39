import { describe, expect, it } from 'vitest';
import { basisOf, exposuresOf, type ExposureBasis } from '@core/exposure/in-formula';
import { contentsOf } from '@core/limits/contents';
import { PRODUCT_KINDS } from '@core/products/product-kinds';
import { blankSubstance, type Substance } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import type { Material } from '@core/materials/material';
import { make, nextId } from '../checks/build';
import { kept } from '../limits/law';

const substance = (name: string, parts: Partial<Substance> = {}): Substance => ({
  ...kept(blankSubstance(name)),
  ...parts,
});
const cream: ExposureBasis = {
  use: { perKg: 24.14 },
  bodyWeight: 60,
  area: 565,
  timesADay: 2.14,
  says: 'face cream',
};

function exposed(lines: [Material, ppm: number][], table: Substance[], basis = cream) {
  const dosed = lines.map(([material, ppm]) => ({ lineId: nextId(), material, ppm }));
  return exposuresOf(contentsOf(dosed, substanceIndex(table)), basis);
}

describe('exposure to what a formula holds', () => {
  const acid = make('Acid', 'Benzoic Acid', { functions: ['preservative'] });

  it('counts a substance over all lines and blends, at the upper end of a range', () => {
    const blend = make('Blend', 'Benzoic Acid', {
      composition: [{ inci: 'Benzoic Acid', lowPpm: 200_000, highPpm: 400_000 }],
    });
    const [one] = exposed(
      [
        [acid, 3_000],
        [blend, 5_000],
      ],
      [substance('Benzoic Acid', { pod: 500, oralBioavailability: 80, dermalAbsorption: 40 })],
    );
    // 0.3 % + 40 % of 0.5 % = 0.5 %; 24.14 × 0.005 × 0.4 = 0.04828; 500 × 0.8 / 0.04828 = 8285.0
    expect(one?.percent).toBeCloseTo(0.5, 12);
    expect(one?.dose.value).toBeCloseTo(0.04828, 9);
    expect(one?.margin?.value).toBeCloseTo(8285.0, 1);
    expect(one?.cautions).toEqual(['At the upper end of the supplier’s range.']);
  });

  it('of a preservative over all products of an adult: 269 mg/kg, the notes of guidance’s sum', () => {
    const table = [substance('Benzoic Acid', { pod: 500, dermalAbsorption: 40 })];
    const [one] = exposed([[acid, 5_000]], table);
    // 269 × 0.005 × 0.4 = 0.538; 500 / 0.538 = 929.4
    expect(one?.aggregate?.dose.value).toBeCloseTo(0.538, 9);
    expect(one?.aggregate?.margin?.value).toBeCloseTo(929.4, 1);
    const other = make('Same, for its scent', 'Benzoic Acid', { functions: ['fragrance'] });
    expect(exposed([[other, 5_000]], table)[0]?.aggregate).toBeNull();
  });

  it('says what it took for what is not recorded', () => {
    const [bare] = exposed([[acid, 5_000]], [substance('Benzoic Acid', { pod: 500 })]);
    expect(bare?.dose.value).toBeCloseTo(24.14 * 0.005 * 0.5, 9);
    expect(bare?.cautions).toEqual([
      'No dermal absorption is recorded: 50 %, the guidance’s default, is used.',
      'The point of departure counts as systemic: no oral bioavailability is recorded.',
    ]);
    const [without] = exposed([[acid, 5_000]], [substance('Benzoic Acid', { dermalAbsorption: 10 })]);
    expect(without?.margin).toBeNull();
    expect(without?.aggregate?.margin).toBeNull();
    expect(without?.cautions).toEqual([]);
  });

  it('takes what is absorbed per area only where no share is known and the area is', () => {
    const byArea = substance('Benzoic Acid', { pod: 100, absorbedPerArea: 0.8 });
    // 0.8 × 565 × 2.14 × 0.001 / 60
    const [one] = exposed([[acid, 5_000]], [byArea]);
    expect(one?.dose.value).toBeCloseTo(0.0161213, 7);
    expect(one?.cautions.join()).toMatch(/strength that was tested/);
    for (const basis of [
      { ...cream, area: null },
      { ...cream, timesADay: null },
    ])
      expect(exposed([[acid, 5_000]], [byArea], basis)[0]?.dose.value).toBeCloseTo(24.14 * 0.0025, 9);
    const both = { ...byArea, dermalAbsorption: 10 };
    expect(exposed([[acid, 5_000]], [both])[0]?.dose.value).toBeCloseTo(24.14 * 0.0005, 9);
  });

  it('puts the smallest margin first, and those without one behind, by dose', () => {
    const names = ['Glycerin', 'Urea', 'Panthenol', 'Squalane'];
    const table = [
      substance('Glycerin', { pod: 1000 }),
      substance('Urea', { pod: 10 }),
      substance('Panthenol'),
      substance('Squalane'),
    ];
    const lines = names.map((name, at): [Material, number] => [make(name, name), 10_000 * (at + 1)]);
    const order = exposed(lines, table).map((one) => one.substance.name);
    expect(order).toEqual(['Urea', 'Glycerin', 'Squalane', 'Panthenol']);
    expect(exposed([...lines].reverse(), table).map((one) => one.substance.name)).toEqual(order);
  });

  it('a line of nothing, and what is not absorbed at all, leave no margin to divide by', () => {
    const table = [substance('Benzoic Acid', { pod: 500, dermalAbsorption: 0 })];
    expect(exposed([[acid, 0]], table)).toEqual([]);
    const [one] = exposed([[acid, 5_000]], table);
    expect(one?.dose.value).toBe(0);
    expect(one?.margin).toBeNull();
    expect(one?.aggregate?.margin).toBeNull();
  });
});

describe('the daily use of a kind of product', () => {
  it('never is more per kg than the amount that stays, taken by somebody of 40 kg', () => {
    for (const kind of PRODUCT_KINDS) {
      const basis = basisOf({ kind });
      if (!basis || !('perKg' in basis.use)) continue;
      const [, amount, stays] = /: ([\d.]+) g per day, retention factor ([\d.]+)/.exec(basis.says) ?? [];
      const milligrams = Number(amount) * Number(stays) * 1000;
      expect(basis.use.perKg, kind).toBeLessThan(milligrams / 40);
      expect(basis.use.perKg, kind).toBeGreaterThan(milligrams / 80);
    }
  });

  it('is not made up where no kind is said, or the tables do not know it', () => {
    expect(basisOf({ kind: null })).toBeNull();
    expect(PRODUCT_KINDS.filter((kind) => basisOf({ kind }) === null).length).toBeGreaterThan(0);
  });

  it('of hair dye goes by amount and weight, as no mg/kg is printed', () => {
    const use = basisOf({ kind: 'oxidative hair dye' })?.use;
    expect(use).toEqual({ amountGramsPerDay: 100, bodyWeight: 60, retention: 0.1 });
  });
});
