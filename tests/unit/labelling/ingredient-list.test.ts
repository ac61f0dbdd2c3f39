import { declarableAllergens } from '@core/labelling/allergens';
import { ingredientList } from '@core/labelling/ingredient-list';
import { contentsOf } from '@core/limits/contents';
import { dosedLines } from '@core/limits/in-formula';
import { substanceIndex } from '@core/substances/substance-index';
import type { FormulaContent, Use } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { MATERIALS, sampleMaterial, WATER } from '../sheets/sample-materials';
import { CREAM, sampleLine } from '../sheets/samples';
import { EXAMPLES } from '../limits/law';

function declaredIn(content: FormulaContent, materials: Record<string, Material>) {
  const index = substanceIndex(EXAMPLES.substances);
  const contents = contentsOf(
    dosedLines(content, (id) => materials[id]),
    index,
  );
  return declarableAllergens(contents, content.use, '2023').declared;
}

function formulaOf(lines: [Material, number | 'q.s.'][], use: Use = 'leave-on') {
  const phases = [{ ...CREAM.phases[0]!, lines: lines.map(([one, percent]) => sampleLine(one, percent)) }];
  const content: FormulaContent = { ...CREAM, use, phases };
  return { content, materials: Object.fromEntries(lines.map(([one]) => [one.id, one])) };
}

describe('the ingredient list', () => {
  it('sums a substance over all the blends that bring it', () => {
    const list = ingredientList(CREAM, MATERIALS);
    // Cetearyl alcohol: 80 % (midpoint of 75–85) of 5 % plus all of 2 %: 6 %.
    const cetearyl = list.ingredients.find((one) => one.name === 'Cetearyl Alcohol');
    expect(cetearyl?.ppm).toBe(60_000);
    expect(cetearyl?.estimated).toBe(true);
    expect(cetearyl?.materialIds).toHaveLength(2);
    expect(list.text.startsWith('Aqua, Prunus Amygdalus Dulcis Oil, Cetearyl Alcohol')).toBe(true);
  });

  // Order: Regulation (EC) No 1223/2009, Article 19(1)(g), and 21 CFR 701.3(f), both from memory.
  it('puts those above 1 % by weight, then those under, colorants last', () => {
    const dye = sampleMaterial('Rosy dye', [['CI 77491', 100]], { functions: ['colorant'] });
    const small = sampleMaterial('Smallish', [['Panthenol', 100]]);
    const { content, materials } = formulaOf([
      [WATER, 'q.s.'],
      [dye, 4],
      [small, 0.4],
    ]);
    const { ingredients } = ingredientList(content, materials);
    expect(ingredients.map((one) => [one.name, one.group])).toEqual([
      ['Aqua', 'by weight'],
      ['Panthenol', 'any order'],
      ['CI 77491', 'colorant'],
    ]);
  });

  it('treats exactly 1 % as the EU and the US texts do', () => {
    const one = sampleMaterial('One', [['Panthenol', 100]]);
    const { content, materials } = formulaOf([
      [WATER, 'q.s.'],
      [one, 1],
    ]);
    const group = (form: 'EU' | 'US') => ingredientList(content, materials, { form }).ingredients[1]?.group;
    expect(group('EU')).toBe('by weight');
    expect(group('US')).toBe('any order');
  });

  it('names water and fragrance as each form does, whatever the perfume is made of', () => {
    const scent = sampleMaterial(
      'Accord',
      [
        ['Linalyl Acetate', 40],
        ['Dipropylene Glycol', 60],
      ],
      {
        functions: ['fragrance'],
      },
    );
    const water = sampleMaterial('Tap', [['Water (Aqua)', 100]]);
    const { content, materials } = formulaOf([
      [WATER, 50],
      [water, 'q.s.'],
      [scent, 0.5],
    ]);
    expect(ingredientList(content, materials, { form: 'EU' }).text).toBe('Aqua, Parfum');
    expect(ingredientList(content, materials, { form: 'US' }).text).toBe('Water, Fragrance');
  });

  // Thresholds strictly above 0.001 % leave-on and 0.01 % rinse-off (labelling.json, eu-allergen-thresholds, read).
  it.each([
    ['leave-on', 10, 0],
    ['leave-on', 10.1, 1],
    ['rinse-off', 100, 0],
    ['rinse-off', 101, 1],
  ] as const)('declares an allergen in %s at %s ppm: %s', (use, ppm, declared) => {
    // One per cent of a scent holding a hundred times as much.
    const scent = sampleMaterial('Accord', [['Parfum', 100]], {
      functions: ['fragrance'],
      allergens: [{ inci: 'Linalool', ppm: Math.round(ppm * 100) }],
    });
    const { content, materials } = formulaOf(
      [
        [WATER, 'q.s.'],
        [scent, 1],
      ],
      use,
    );
    expect(declaredIn(content, materials)).toHaveLength(declared);
    expect(
      ingredientList(content, materials, { law: EXAMPLES }).ingredients.some((one) => one.allergen),
    ).toBe(declared === 1);
    expect(
      ingredientList(content, materials, { form: 'US', law: EXAMPLES }).ingredients.some(
        (one) => one.allergen,
      ),
    ).toBe(false);
  });

  it('places an allergen by all that brings it, in a range and in a perfume', () => {
    const oil = sampleMaterial('Peel cut', [['Limonene', 1, 3]]);
    const scent = sampleMaterial('Accord', [['Parfum', 100]], {
      functions: ['fragrance'],
      allergens: [{ inci: 'Limonene', ppm: 300_000 }],
    });
    const { content, materials } = formulaOf([
      [WATER, 'q.s.'],
      [oil, 10],
      [scent, 1],
    ]);
    const one = ingredientList(content, materials, { law: EXAMPLES }).ingredients.find(
      ({ name }) => name === 'Limonene',
    );
    // 10 % of 1 to 3 %, and 30 % of 1 %: 0.4 to 0.6 %, about 0.5 %.
    expect(one).toMatchObject({ ppm: 5_000, lowPpm: 4_000, highPpm: 6_000, estimated: true, allergen: true });
  });

  it('says what it left out and what it guessed', () => {
    const open = sampleMaterial('Open blend', [['Squalane', 50, 70]]);
    const { content, materials } = formulaOf([
      [WATER, 'q.s.'],
      [open, 10],
    ]);
    const notes = ingredientList(content, { ...materials, [WATER.id]: undefined }).notes.join(' ');
    expect(notes).toContain('1 line left out');
    expect(notes).toContain('The composition of Open blend does not come to 100 %');
    expect(notes).toContain('midpoint');
    expect(notes).toContain('not legal advice');
  });

  it('calls materials in its notes as it is told to', () => {
    const open = sampleMaterial('Open blend', [['Squalane', 60]]);
    const { content, materials } = formulaOf([[open, 10]]);
    const notes = ingredientList(content, materials, {
      nameOf: (one) => `${one.composition.length} part`,
    }).notes;
    expect(notes.join(' ')).toContain('The composition of 1 part does not come to 100 %');
    expect(notes.join(' ')).not.toContain('Open blend');
  });
});
