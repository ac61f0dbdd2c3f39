import fc from 'fast-check';
import { declarableAllergens } from '@core/labelling/allergens';
import { ingredientList } from '@core/labelling/ingredient-list';
import { layOutForPack } from '@core/labelling/pack';
import { contentsOf } from '@core/limits/contents';
import type { Material } from '@core/materials/material';
import { blankMarket } from '@core/products/market';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase, type Row } from '../checks/build';
import { EXAMPLES } from '../limits/law';

const listOf = (rows: Row[], options: Parameters<typeof ingredientList>[2] = {}, parts = {}) =>
  ingredientList(content([phase(rows)], parts), Object.fromEntries(rows.map(([one]) => [one.id, one])), {
    law: EXAMPLES,
    ...options,
  });
const alone = (inci: string, form: 'EU' | 'US', functions: Material['functions'] = []): string =>
  listOf([[make(inci, inci, { functions }), 100]], { form }).text;

describe('a name in the European Union and in the United States', () => {
  // INCI and US label names; colorants by 21 CFR 73 and 74, from memory.
  it.each([
    ['Aqua', 'Aqua', 'Water'],
    ['Cera Alba', 'Cera Alba', 'Beeswax'],
    ['Paraffinum Liquidum', 'Paraffinum Liquidum', 'Mineral Oil'],
    ['Shea Butter', 'Butyrospermum Parkii Butter', 'Butyrospermum Parkii (Shea) Butter'],
    ['Glycerol', 'Glycerin', 'Glycerin'],
    ['Oxybenzone', 'Benzophenone-3', 'Oxybenzone'],
    ['Trolamine Salicylate', 'TEA-Salicylate', 'Trolamine Salicylate'],
    ['Unknown Invented Extract', 'Unknown Invented Extract', 'Unknown Invented Extract'],
  ])('%s is %s and %s', (written, eu, us) => {
    expect([alone(written, 'EU'), alone(written, 'US')]).toEqual([eu, us]);
  });

  it.each([
    ['CI 77491', 'CI 77491', 'Iron Oxides (CI 77491)'],
    ['Tartrazine', 'CI 19140', 'Yellow 5 (CI 19140)'],
    ['CI 15985', 'CI 15985', 'Yellow 6 (CI 15985)'],
    ['CI 42090', 'CI 42090', 'Blue 1 (CI 42090)'],
    ['CI 75470', 'CI 75470', 'Carmine (CI 75470)'],
    ['Titanium Dioxide', 'CI 77891', 'Titanium Dioxide (CI 77891)'],
    ['Mica', 'CI 77019', 'Mica (CI 77019)'],
  ])('a colorant: %s is %s and %s', (written, eu, us) => {
    expect([alone(written, 'EU', ['colorant']), alone(written, 'US', ['colorant'])]).toEqual([eu, us]);
  });

  it('marks the nano form in the Union only, and titanium dioxide as a filter by its name', () => {
    expect(alone('Titanium Dioxide (nano)', 'EU', ['uv filter'])).toBe('Titanium Dioxide (nano)');
    expect(alone('Titanium Dioxide (nano)', 'US', ['uv filter'])).toBe('Titanium Dioxide');
  });

  it('gathers iron oxides of three shades under one US name with their indices, and keeps three in the Union', () => {
    const rows = ['CI 77491', 'CI 77492', 'CI 77499'].map((ci): Row => [
      make(ci, ci, { functions: ['colorant'] }),
      1,
    ]);
    expect(listOf(rows, { form: 'US' }).text).toBe('Iron Oxides (CI 77491, CI 77492, CI 77499)');
    expect(listOf(rows).text).toBe('CI 77491, CI 77492, CI 77499');
  });
});

describe('a sunscreen of the United States', () => {
  const filter = make('Filter', 'Octocrylene', { functions: ['uv filter'] });
  const water = make('Water', 'Aqua');
  const market = { market: { ...blankMarket(), kind: 'sunscreen product' as const } };

  it('names its actives first, whatever they weigh; in the Union they stand by weight', () => {
    const rows: Row[] = [
      [water, 92],
      [filter, 8],
    ];
    const us = listOf(rows, { form: 'US' }, market);
    expect(us.ingredients.map(({ name, group }) => [name, group])).toEqual([
      ['Octocrylene', 'active'],
      ['Water', 'by weight'],
    ]);
    expect(us.notes.join(' ')).toContain('Active drug ingredients come first');
    expect(listOf(rows, {}, market).text).toBe('Aqua, Octocrylene');
  });

  it('a filter that only protects another product is no active', () => {
    expect(
      listOf(
        [
          [water, 92],
          [filter, 8],
        ],
        { form: 'US' },
      ).text,
    ).toBe('Water, Octocrylene');
  });
});

describe('fragrance allergens', () => {
  const perfume = (share: Record<string, number>): Material =>
    make('Perfume', 'Parfum', {
      functions: ['fragrance'],
      allergens: Object.entries(share).map(([inci, percent]) => ({ inci, ppm: percent * 10_000 })),
    });
  const names = (one: Material, percent: number, allergens: '2023' | 'older 26' = '2023'): string[] =>
    listOf(
      [
        [make('Water', 'Aqua'), 100 - percent],
        [one, percent],
      ],
      { allergens },
    )
      .ingredients.filter(({ allergen }) => allergen)
      .map(({ name }) => name);

  it('that share a name are counted together: two pinenes of 6 ppm each pass 10 ppm as Pinene', () => {
    const two = perfume({ 'Alpha-Pinene': 0.06, 'Beta-Pinene': 0.06 });
    expect(names(two, 1)).toEqual(['Pinene']);
    expect(names(perfume({ 'Alpha-Pinene': 0.06 }), 1)).toEqual([]);
  });

  it('of the longer list are not named by the older one', () => {
    const both = perfume({ Limonene: 5, Menthol: 5 });
    expect([...names(both, 1)].sort()).toEqual(['Limonene', 'Menthol']);
    expect(names(both, 1, 'older 26')).toEqual(['Limonene']);
  });

  it('from an essential oil and a perfume are summed: 0.3 % of 50 % and 1 % of 2 % of limonene are 0.17 %', () => {
    const oil = make('Peel oil', 'Citrus Limon Peel Oil', {
      allergens: [{ inci: 'Limonene', ppm: 500_000 }],
    });
    const dosed: [Material, number][] = [
      [oil, 3_000],
      [perfume({ Limonene: 2 }), 10_000],
    ];
    const contents = contentsOf(
      dosed.map(([material, ppm]) => ({ lineId: nextId(), material, ppm })),
      substanceIndex(EXAMPLES.substances),
    );
    const { declared } = declarableAllergens(contents, 'leave-on', '2023');
    const limonene = declared.find(({ label }) => label === 'Limonene');
    expect(limonene?.ppm).toBeCloseTo(1_700, 9);
    expect(limonene?.materialIds).toHaveLength(2);
    // The oil is itself one of the longer list.
    expect(declared.map(({ label }) => label)).toContain('Citrus Limon Peel Oil');
  });

  it('are never fewer in what stays on than in what is rinsed off', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 100 }), (hundredths, share) => {
        const one = perfume({ Linalool: share / 10, Citral: share / 100 });
        const rows: Row[] = [
          [make('Water', 'Aqua'), 90],
          [one, hundredths / 100],
        ];
        const count = (use: 'leave-on' | 'rinse-off'): number =>
          listOf(rows, {}, { use }).ingredients.filter(({ allergen }) => allergen).length;
        expect(count('leave-on')).toBeGreaterThanOrEqual(count('rinse-off'));
      }),
      { numRuns: 25 },
    );
  });
});

describe('a list set on a pack', () => {
  it('takes more lines in larger letters and on a narrower label, never fewer', () => {
    const text = listOf([
      [make('Water', 'Aqua'), 70],
      [make('Oil', 'Prunus Amygdalus Dulcis Oil'), 20],
      [make('Keeper', 'Phenoxyethanol'), 1],
    ]).text;
    const lines = (width: number, letter: number): number => layOutForPack(text, width, letter).lines.length;
    expect(lines(60, 2)).toBeGreaterThanOrEqual(lines(60, 1));
    expect(lines(20, 1)).toBeGreaterThanOrEqual(lines(60, 1));
    expect(layOutForPack(text, 500, 1).lines).toEqual([text]);
  });
});
