import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { naturalOriginOf } from '@core/natural-origin/in-formula';
import {
  naturalOriginContent,
  naturalOriginIndex,
  type OriginShare,
} from '@core/natural-origin/natural-origin';
import type { Material, MaterialContent } from '@core/materials/material';
import { substanceIndex } from '@core/substances/substance-index';
import { figure, make, nextId, range } from '../checks/build';
import { EXAMPLES } from '../limits/law';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const part = fc.record({
  percent: fc.double({ min: 0.01, max: 60, noNaN: true }),
  index: fc.double({ min: 0, max: 1, noNaN: true }),
  formulationWater: fc.boolean(),
});
const parts = fc.array(part, { minLength: 1, maxLength: 12 });

describe('natural origin content (ISO 16128-2)', () => {
  it('lies between the least and the greatest index, whatever the shares come to and in any order', () => {
    fc.assert(
      fc.property(parts, fc.double({ min: 0.1, max: 5, noNaN: true }), (all, times) => {
        const got = naturalOriginContent(all, true).value;
        const indexes = all.map(({ index }) => 100 * index);
        expect(got).toBeGreaterThanOrEqual(Math.min(...indexes) - 1e-9);
        expect(got).toBeLessThanOrEqual(Math.max(...indexes) + 1e-9);
        const scaled = [...all].reverse().map((one) => ({ ...one, percent: one.percent * times }));
        expect(naturalOriginContent(scaled, true).value).toBeCloseTo(got, 8);
      }),
    );
  });

  it('without formulation water is the content of the rest alone, and of the two is the mean by mass', () => {
    fc.assert(
      fc.property(parts, (all) => {
        const dry = all.filter((one) => !one.formulationWater);
        const wet = all.filter((one) => one.formulationWater);
        if (dry.length === 0) return;
        const without = naturalOriginContent(all, false).value;
        expect(without).toBe(naturalOriginContent(dry, true).value);
        if (wet.length === 0) return;
        const mass = (some: OriginShare[]): number => some.reduce((sum, one) => sum + one.percent, 0);
        const mean =
          (without * mass(dry) + naturalOriginContent(wet, true).value * mass(wet)) / (mass(dry) + mass(wet));
        expect(naturalOriginContent(all, true).value).toBeCloseTo(mean, 8);
      }),
    );
  });

  const one = (parts: Partial<OriginShare>): OriginShare => ({
    percent: 10,
    index: 0.5,
    formulationWater: false,
    ...parts,
  });
  it.each([
    ['A share', NEGATIVE, (x: number) => naturalOriginContent([one({}), one({ percent: x })], true)],
    [
      'An index',
      [...NO_NUMBERS, -1e-9, 1.0001, 95],
      (x: number) => naturalOriginContent([one({ index: x })], true),
    ],
    ['The natural mass', NEGATIVE, (x: number) => naturalOriginIndex(x, 100)],
    ['The whole mass', NOT_POSITIVE, (x: number) => naturalOriginIndex(0, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('refuses no share, nothing but formulation water, and more natural than there is', () => {
    refusal(() => naturalOriginContent([], true), /whole of the shares is 0/);
    refusal(
      () => naturalOriginContent([one({ formulationWater: true })], false),
      /without formulation water is 0/,
    );
    refusal(() => naturalOriginIndex(101, 100), /more than the whole/);
    expect(naturalOriginIndex(100, 100).value).toBe(1);
    expect(naturalOriginIndex(0, 100).cautions).toEqual([]);
    expect(naturalOriginIndex(50, 100).cautions.join()).toMatch(/half or less/);
    expect(naturalOriginIndex(50.01, 100).cautions).toEqual([]);
  });
});

describe('natural origin of a formula', () => {
  const index = substanceIndex(EXAMPLES.substances);
  const of = (lines: [Material, percent: number][], table: typeof index | null = index) =>
    naturalOriginOf(
      lines.map(([material, percent]) => ({ lineId: nextId(), material, ppm: percent * 10_000 })),
      table,
    );
  const material = (name: string, inci: string, parts: Partial<MaterialContent> = {}) =>
    make(name, inci, parts as Parameters<typeof make>[2]);

  it('worked by hand: 70 water, 20 oil of index 1, 10 of index 0.8 to 0.9', () => {
    const oil = make('Oil', 'Squalane', { figures: { naturalOriginIndex: figure(1) } });
    const wax = make('Wax', 'Cetearyl Alcohol', { figures: { naturalOriginIndex: range(0.8, 0.9) } });
    const got = of([
      [make('Water', 'Aqua'), 70],
      [oil, 20],
      [wax, 10],
    ]);
    // 70 + 20 + 8 and 9; without water (20 + 8) / 30 and 29 / 30.
    expect([got.withWater?.low.value, got.withWater?.high.value].map((x) => x?.toFixed(6))).toEqual([
      '98.000000',
      '99.000000',
    ]);
    expect([got.withoutWater?.low.value, got.withoutWater?.high.value].map((x) => x?.toFixed(4))).toEqual([
      '93.3333',
      '96.6667',
    ]);
  });

  it.each([
    ['natural', 1, 1, 'by its recorded origin'],
    ['mineral', 1, 1, 'by its recorded origin'],
    ['synthetic', 0, 0, 'by its recorded origin'],
    ['naturally derived', 0.5, 1, 'by its recorded origin'],
    [null, 0, 1, 'not known'],
  ] as const)('without an index a material of %s origin counts %s to %s', (origin, low, high, how) => {
    const [line] = of([[material('M', 'Squalane', { origin }), 100]]).lines;
    expect(line).toMatchObject({ low, high, how, formulationWater: false });
  });

  it.each([
    ['Aqua', true],
    ['Water (Aqua)', true],
    ['AQUA/WATER/EAU', true],
    ['Purified Water', true],
    ['Deionized water', true],
    ['Rosa Damascena Flower Water', false],
    ['Sea Water', false],
    ['Purified', false],
    ['Glycerin', false],
  ])('%s is formulation water: %s, with a table of substances or none', (inci, water) => {
    for (const table of [index, null])
      expect(of([[make('M', inci), 100]], table).lines[0]?.formulationWater).toBe(water);
  });

  it('a solution is no formulation water, and one without a composition is not taken for water', () => {
    expect(of([[make('Lye', ['Aqua', 'Sodium Hydroxide']), 100]]).lines[0]?.how).toBe('not known');
    expect(of([[make('Blank', 'x', { composition: [] }), 100]]).lines[0]?.how).toBe('not known');
  });

  it('an index that is recorded goes before all else, of water too; both ends when it is a range', () => {
    const water = make('Water', 'Aqua', {
      figures: { naturalOriginIndex: figure(0.9) },
      origin: 'synthetic',
    });
    expect(of([[water, 100]]).lines[0]).toMatchObject({
      low: 0.9,
      high: 0.9,
      how: 'recorded',
      formulationWater: true,
    });
  });

  it('has nothing to say of a formula without lines, and of one of water nothing without it', () => {
    expect(of([])).toEqual({ lines: [], withWater: null, withoutWater: null });
    const water = of([[make('Water', 'Aqua'), 100]]);
    expect(water.withWater?.low.value).toBe(100);
    expect(water.withoutWater).toBeNull();
    expect(of([[make('Water', 'Aqua'), 0]]).lines).toEqual([]);
  });
});
