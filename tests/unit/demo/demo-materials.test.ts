import { describe, expect, it } from 'vitest';
import { demoId } from '@core/demo/demo-id';
import { SUPPLIERS } from '@core/demo/build-material';
import { demoLibrary } from '@core/demo/demo-library';
import { id } from '@core/record/id';
import { material } from '@core/materials/material';
import { ARCHITECTURES, CHARGES, CONSISTENCIES, FORMS, type Hazard } from '@core/materials/vocabulary';
import { settings } from '@core/settings/settings';
import { emulsifies, library } from './demo-shelf';

const { materials } = library;
const emulsifiers = materials.filter(emulsifies);

describe('the demonstration shelf', () => {
  it.each(materials.map((each) => [each.code, each] as const))(
    '%s is a valid raw material',
    (_code, each) => {
      const read = material.safeParse(each);
      expect(read.error?.issues ?? []).toEqual([]);
      expect(read.data).toEqual(each);
    },
  );

  it('holds at least 80 materials, 36 of them emulsifiers', () => {
    expect(materials.length).toBeGreaterThanOrEqual(80);
    expect(emulsifiers.length).toBeGreaterThanOrEqual(36);
  });

  it('gives every code, trade name and identifier once', () => {
    for (const key of ['code', 'tradeName', 'id'] as const)
      expect(new Set(materials.map((each) => each[key])).size).toBe(materials.length);
  });

  it.each(CHARGES)('has an emulsifier that is %s', (charge) => {
    expect(emulsifiers.some((each) => each.charge === charge)).toBe(true);
  });

  it.each(ARCHITECTURES)('has a %s emulsifier', (architecture) => {
    expect(emulsifiers.some((each) => each.architecture === architecture)).toBe(true);
  });

  it.each(FORMS)('has an emulsifier that comes as %s', (form) => {
    expect(emulsifiers.some((each) => each.form === form)).toBe(true);
  });

  it.each(CONSISTENCIES)('has a material that is %s', (consistency) => {
    expect(materials.some((each) => each.consistency === consistency)).toBe(true);
  });

  it('has at least five non-ionic emulsifiers of HLB 10 to 16 as pellets, and three cationic ones', () => {
    const pellets = emulsifiers.filter(({ charge, form, figures }) => {
      const hlb = figures.hlb?.value ?? 0;
      return charge === 'non-ionic' && form === 'pellets' && hlb >= 10 && hlb <= 16;
    });
    expect(pellets.length).toBeGreaterThanOrEqual(5);
    expect(emulsifiers.filter(({ charge }) => charge === 'cationic').length).toBeGreaterThanOrEqual(3);
  });

  it('shows archived and trial materials, several currencies and a price that changed', () => {
    expect(materials.some(({ status }) => status === 'archived')).toBe(true);
    expect(materials.some(({ status }) => status === 'on trial')).toBe(true);
    const offers = materials.flatMap((each) => each.offers);
    expect(new Set(offers.map(({ currency }) => currency)).size).toBeGreaterThanOrEqual(2);
    expect(materials.some((each) => new Set(each.offers.map(({ date }) => date)).size >= 2)).toBe(true);
    expect(new Set(offers.map(({ supplier }) => supplier))).toEqual(new Set(Object.values(SUPPLIERS)));
  });
});

describe('compositions', () => {
  it.each(materials)('$code can be made up to 100 %', ({ composition: parts }) => {
    const low = parts.reduce((sum, part) => sum + part.lowPpm, 0);
    const high = parts.reduce((sum, part) => sum + part.highPpm, 0);
    expect(low).toBeLessThanOrEqual(1_000_000);
    expect(high).toBeGreaterThanOrEqual(1_000_000);
    // The midpoints are what the ingredient list is reckoned with: they must come to the whole, within 0.2 %.
    expect(Math.abs((low + high) / 2 - 1_000_000)).toBeLessThanOrEqual(2_000);
  });

  it('includes a blend whose supplier states ranges', () => {
    const ranged = materials.filter(({ composition }) =>
      composition.some((part) => part.lowPpm < part.highPpm),
    );
    expect(ranged.some(({ composition }) => composition.length > 1)).toBe(true);
  });
});

describe('cautions', () => {
  const needing: Hazard[] = [
    'caustic',
    'strong acid',
    'fine dust',
    'flammable',
    'harmful undiluted',
    'sensitiser',
  ];

  it.each(needing)('every material marked %s says how to handle it', (hazard) => {
    const marked = materials.filter(({ hazards }) => hazards.includes(hazard));
    expect(marked.length).toBeGreaterThan(0);
    for (const each of marked) expect(each.handling, each.code).not.toBe('');
  });

  it.each([
    ['Sodium Hydroxide', 'caustic'],
    ['Potassium Hydroxide', 'caustic'],
    ['Phosphoric Acid', 'strong acid'],
    ['Alcohol Denat.', 'flammable'],
    ['Phenoxyethanol', 'harmful undiluted'],
    ['Carbomer', 'fine dust'],
  ] as const)('%s is marked %s', (inci, hazard) => {
    const holding = materials.filter(({ composition }) => composition.some((part) => part.inci === inci));
    expect(holding.length).toBeGreaterThan(0);
    for (const each of holding) expect(each.hazards, each.code).toContain(hazard);
  });

  it('every fragrance names its allergens', () => {
    const fragrances = materials.filter(({ functions }) => functions.includes('fragrance'));
    expect(fragrances.length).toBeGreaterThanOrEqual(3);
    for (const each of fragrances) expect(each.allergens.length, each.code).toBeGreaterThan(0);
  });

  it('every limit tells the reader to check the current text', () => {
    const limited = materials.flatMap(({ legalLimit }) => (legalLimit ? [legalLimit] : []));
    expect(limited.length).toBeGreaterThanOrEqual(8);
    for (const { source } of limited) expect(source).toContain('check the current text');
  });
});

describe('the library as a whole', () => {
  it('has valid settings of an invented maker', () => {
    expect(settings.parse(library.settings)).toEqual(library.settings);
    expect(library.settings.makerName).not.toBe('');
  });

  it('is the same every time it is made', () => {
    expect(demoLibrary()).toEqual(library);
  });

  it('takes identifiers and the moment from its caller, asking for each key once', () => {
    const asked: string[] = [];
    const made = demoLibrary((key) => {
      asked.push(key);
      return demoId(`other:${key}`);
    }, '2030-01-01T00:00:00.000Z');
    expect(new Set(asked).size).toBe(asked.length);
    expect(made.materials[0]?.createdAt).toBe('2030-01-01T00:00:00.000Z');
    const shelf = new Set(made.materials.map((each) => each.id));
    for (const formula of made.formulas)
      for (const line of formula.phases.flatMap((phase) => phase.lines))
        expect(shelf).toContain(line.materialId);
  });

  it('derives identifiers that are valid UUIDs and differ', () => {
    const made = Array.from({ length: 2_000 }, (_, index) => demoId(`key:${index}`));
    expect(made.every((each) => id.safeParse(each).success)).toBe(true);
    expect(new Set(made).size).toBe(made.length);
  });
});
