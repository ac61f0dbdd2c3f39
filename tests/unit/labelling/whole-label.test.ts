import fc from 'fast-check';
import type { FormulaContent } from '@core/formulas/formula';
import { ingredientList, type ListOptions } from '@core/labelling/ingredient-list';
import { labelFormsOf } from '@core/labelling/forms';
import { LABEL_FORMS } from '@core/labelling/substance-names';
import { blankMarket } from '@core/products/market';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase, type Row } from '../checks/build';
import { EXAMPLES } from '../limits/law';

const NAMES = ['Aqua', 'Glycerin', 'Squalane', 'Phenoxyethanol', 'Cetearyl Alcohol', 'Limonene', 'CI 77491'];
/** A material of one to three names with their shares, which make it whole. */
const material = fc
  .uniqueArray(fc.tuple(fc.constantFrom(...NAMES), fc.integer({ min: 1, max: 60 })), {
    ...{ minLength: 1, maxLength: 3, selector: ([name]) => name },
  })
  .map((parts): Material => {
    const whole = parts.reduce((sum, [, weight]) => sum + weight, 0);
    const shares = parts.map(([, weight]) => Math.floor((weight * 1e6) / whole));
    shares[0] = shares[0]! + 1e6 - shares.reduce((sum, one) => sum + one, 0);
    return make('Blend', 'Aqua', {
      composition: parts.map(([inci], at) => ({ inci, lowPpm: shares[at]!, highPpm: shares[at]! })),
      functions: parts.some(([name]) => name.startsWith('CI')) ? ['colorant'] : [],
    });
  });
const rows = fc.array(fc.tuple(material, fc.integer({ min: 1, max: 200_000 })), {
  minLength: 1,
  maxLength: 7,
});
const forms = fc.constantFrom(...LABEL_FORMS);

const formulaOf = (lines: readonly (readonly [Material, number])[]): FormulaContent =>
  content([phase(lines.map(([one, ppm]): Row => [one, ppm / 10_000]))]);
const byId = (lines: readonly (readonly [Material, number])[]) =>
  Object.fromEntries(lines.map(([one]) => [one.id, one]));
const listOf = (lines: readonly (readonly [Material, number])[], options: ListOptions = {}) =>
  ingredientList(formulaOf(lines), byId(lines), { law: EXAMPLES, ...options });

describe('the list of a whole formula', () => {
  it('loses nothing and names nothing twice: its shares are those of the lines', () => {
    fc.assert(
      fc.property(rows, forms, (lines, form) => {
        const { ingredients, text } = listOf(lines, { form });
        const sum = ingredients.reduce((total, { ppm }) => total + ppm, 0);
        expect(sum).toBeCloseTo(
          lines.reduce((total, [, ppm]) => total + ppm, 0),
          3,
        );
        const names = ingredients.map(({ name }) => name.toLowerCase());
        expect(new Set(names).size).toBe(names.length);
        expect(text.split(', ')).toEqual(ingredients.map(({ name }) => name));
      }),
    );
  });

  it('is the same whichever line comes first, and for a blend as for its parts', () => {
    fc.assert(
      fc.property(rows, forms, (lines, form) => {
        const { text } = listOf(lines, { form });
        expect(listOf([...lines].reverse(), { form }).text).toBe(text);
        const apart = lines.flatMap(([one, ppm]) =>
          one.composition.map(
            ({ inci, highPpm }) =>
              [
                make('Part', inci, { functions: inci.startsWith('CI') ? ['colorant'] : [] }),
                (ppm * highPpm) / 1e6,
              ] as const,
          ),
        );
        // As whole ppm only, since shares are kept so: the same where nothing is rounded.
        fc.pre(apart.every(([, ppm]) => Number.isInteger(ppm)));
        expect(listOf(apart, { form }).text).toBe(text);
      }),
      { numRuns: 60 },
    );
  });

  it('stands by weight down to one per cent, and each name in the group that its amount says', () => {
    fc.assert(
      fc.property(rows, (lines) => {
        const { ingredients } = listOf(lines);
        const weighed = ingredients.filter(({ group }) => group === 'by weight');
        expect(weighed.map(({ ppm }) => ppm)).toEqual(
          [...weighed.map(({ ppm }) => ppm)].sort((a, b) => b - a),
        );
        for (const one of ingredients) {
          if (one.colorant) expect(one.group).toBe('colorant');
          else expect(one.group).toBe(one.ppm < 10_000 - 1e-6 ? 'any order' : 'by weight');
        }
      }),
    );
  });

  it('declares an allergen just where its share passes the threshold, by hand: 0.001 % left on, 0.01 % rinsed off', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom('leave-on' as const, 'rinse-off' as const),
        (ppm, use) => {
          // A perfume with 10 % limonene, at some ppm of the product.
          const perfume = make('Perfume', 'Parfum', {
            functions: ['fragrance'],
            allergens: [{ inci: 'Limonene', ppm: 100_000 }],
          });
          const water = make('Water', 'Aqua');
          const formula = content(
            [
              phase([
                [perfume, ppm / 10_000],
                [water, 100 - ppm / 10_000],
              ]),
            ],
            { use },
          );
          const { ingredients } = ingredientList(
            formula,
            { [perfume.id]: perfume, [water.id]: water },
            { law: EXAMPLES },
          );
          const declared = ingredients.some(({ name, allergen }) => allergen && name === 'Limonene');
          expect(declared).toBe(ppm / 10 > (use === 'leave-on' ? 10 : 100));
        },
      ),
    );
  });
});

describe('names on a label', () => {
  it('are one each, also where a supplier wrote several into one', () => {
    const pair = make('Duo', 'Phenoxyethanol (and) Ethylhexylglycerin');
    const water = make('Water', 'Aqua');
    const { ingredients, text } = listOf([
      [pair, 10_000],
      [water, 990_000],
    ]);
    expect(text.split(', ').sort()).toEqual(['Aqua', 'Ethylhexylglycerin', 'Phenoxyethanol']);
    // Neither share is known: each may be none or all of it.
    for (const one of ingredients.filter(({ name }) => name !== 'Aqua'))
      expect(one).toMatchObject({ lowPpm: 0, highPpm: 10_000, ppm: 5_000, estimated: true, known: true });
    expect(ingredients.reduce((sum, { ppm }) => sum + ppm, 0)).toBe(1_000_000);
  });

  it('are those of the form: a US label has the US name, an EU label the INCI one', () => {
    const oil = make('Oil', 'Paraffinum Liquidum');
    expect(listOf([[oil, 500_000]]).text).toBe('Paraffinum Liquidum');
    expect(listOf([[oil, 500_000]], { form: 'US' }).text).toBe('Mineral Oil');
  });

  it('stand for other shades without a share, apart from the list', () => {
    const red = make('Red', 'CI 77491', { functions: ['colorant'] });
    const black = make('Black', 'CI 77499', { functions: ['colorant'] });
    const lines: [Material, number][] = [
      [make('Water', 'Aqua'), 950_000],
      [red, 50_000],
    ];
    const formula = formulaOf(lines);
    formula.phases[0]!.lines.push({ id: nextId(), materialId: black.id, ppm: 0, toHundred: false, note: '' });
    const materials = { ...byId(lines), [black.id]: black };
    const list = ingredientList(formula, materials, { law: EXAMPLES });
    expect(list.mayContain).toEqual(['CI 77499']);
    expect(list.text).toBe('Aqua, CI 77491 (+/− CI 77499)');
    const us = ingredientList(formula, materials, { law: EXAMPLES, form: 'US' });
    expect(us.text).toMatch(/^Water, .*\. May contain: .*77499/);
  });

  it.each([
    [[], ['EU']],
    [['EU', 'Great Britain'], ['EU']],
    [['US'], ['US']],
    [
      ['Japan', 'US'],
      ['EU', 'US'],
    ],
  ] as const)('for %j take the forms %j', (regions, expected) => {
    expect(labelFormsOf({ ...blankMarket(), regions: [...regions] })).toEqual(expected);
  });
});

describe('what a reader of the list is told', () => {
  it('of what may be another way: shares on either side of one per cent, ranges that overlap, what is left out', () => {
    const ranged = make('Ranged', 'Glycerin', {
      composition: [{ inci: 'Glycerin', lowPpm: 400_000, highPpm: 800_000 }],
    });
    const lines: [Material, number][] = [
      [make('Water', 'Aqua'), 900_000],
      [ranged, 20_000],
    ];
    const { notes } = listOf(lines);
    expect(notes).toContain(
      'By the suppliers’ ranges above or below 1 %, so its place is not certain: Glycerin.',
    );
    expect(notes.join(' ')).toContain('The composition of Ranged does not come to 100 %');
    const gone = ingredientList(formulaOf(lines), { [ranged.id]: ranged }, { law: EXAMPLES });
    expect(gone.notes).toContain('1 line left out: the material is no longer in the library.');
    const two = make('Squalane cut', 'Squalane', {
      composition: [{ inci: 'Squalane', lowPpm: 500_000, highPpm: 900_000 }],
    });
    const close = listOf([
      [two, 100_000],
      [make('Cetearyl', 'Cetearyl Alcohol'), 60_000],
    ]);
    expect(close.notes.join(' ')).toContain('the order may be the other way: Squalane and Cetearyl Alcohol');
  });
});
