import { MATERIAL_FIELDS, MATERIAL_SECTIONS } from '@core/materials/fields';
import { blankMaterial, material, materialContent, type Material } from '@core/materials/material';
import { createListIndex } from '@core/lists/list-index';
import { listQuery } from '@core/lists/query';
import { MATERIALS_LIST, MATERIALS_LISTED } from '@core/materials/list';
import { MATERIAL } from '@core/materials/noun';
import { fieldDifferences } from '@core/record/differences';
import type { Field, Fields } from '@core/record/field';
import { keptText, liftState } from '@core/record/noun';
import { fieldWords } from '@core/record/words';
import { settings } from '@core/settings/settings';
import { comparisonRows } from '@core/sheets/comparison-rows';
import { materialSheet } from '@core/sheets/material-sheet';
import { Engine } from '@db/library/sql/engine';
import { readMaterialEntries } from '@db/materials/list';
import { materials } from '@db/materials/materials';
import { migrations } from '@db/migrations/list';
import { migrate } from '@db/migrations/runner';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sampleContent, sampleValue } from './sample-values';

/** Every place a field of a raw material must reach: a field that is described and forgotten somewhere fails here. */
const FIELDS = Object.entries(MATERIAL_FIELDS as Fields);
const REGION = 'en-GB';

/** What a sample cannot make up by itself. */
const FITTING: Record<string, unknown> = {
  storage: { minC: 5, maxC: 25, keepFrom: ['light'], shelfLifeMonths: 24, afterOpeningMonths: 6 },
  usage: { minPpm: 10_000, typicalPpm: 20_000, maxPpm: 30_000, provenance: 'published', source: 'a book' },
  offers: [
    {
      supplier: 'Oakbarrow Supply',
      itemCode: 'OB-7',
      packMg: 1_000_000,
      priceMinor: 1234,
      currency: 'EUR',
      date: '2026-03-31',
    },
  ],
  documents: [
    {
      kind: 'certificate',
      title: 'Organic 2026',
      dated: '2026-01-02',
      validUntil: '2026-12-31',
      sha256: 'b'.repeat(64),
      mediaType: 'application/pdf',
      bytes: 9,
    },
  ],
};

const sample = (key: string, field: Field): unknown => FITTING[key] ?? sampleValue(key, field);

const whole: Material = material.parse({
  ...Object.fromEntries(FIELDS.map(([key, field]) => [key, sample(key, field)])),
  id: '0195c7a0-0000-7000-8000-000000000001',
  revision: 3,
  createdAt: '2026-01-01T00:00:00.000Z',
  updatedAt: '2026-02-01T00:00:00.000Z',
});
const blank: Material = { ...whole, ...blankMaterial('Plain', 'Aqua') };
const held = (of: object, key: string): unknown => (of as Record<string, unknown>)[key];

let engine: Engine;
beforeAll(async () => {
  engine = await Engine.open();
  migrate(engine, migrations, new Date('2026-01-01T00:00:00.000Z'));
});
afterAll(() => engine.close());

describe('every field of a raw material', () => {
  it.each(FIELDS)(
    '%s has a label, a section that the form has, and words for what it holds',
    (key, field) => {
      expect(field.label).not.toBe('');
      expect(Object.keys(MATERIAL_SECTIONS)).toContain(field.section);
      expect(fieldWords(field, sample(key, field), REGION)).not.toBe('');
      if (key !== 'status') expect(fieldWords(field, field.blank, REGION)).toBe('');
    },
  );

  it('is read back from the library as it was written, filled and blank', () => {
    materials.insert(engine, whole);
    expect(materials.read(engine, whole.id)).toEqual(whole);
    materials.update(engine, whole, blank);
    expect(materials.read(engine, whole.id)).toEqual(blank);
    materials.update(engine, blank, whole);
    expect(materials.read(engine, whole.id)).toEqual(whole);
  });

  it.each(FIELDS)('%s is kept in a state, and read from it', (key, field) => {
    const one = { ...blankMaterial('Plain', 'Aqua'), [key]: sample(key, field) };
    const read = liftState(MATERIAL, 1, keptText(MATERIAL_FIELDS, one));
    expect(read).toEqual(one);
  });

  it.each(FIELDS)('%s leaves no trace in a state while it is blank', (key) => {
    const text = keptText(MATERIAL_FIELDS, { tradeName: 'Plain', composition: whole.composition });
    expect(Object.keys(JSON.parse(text) as object)).toEqual(['composition', 'tradeName']);
    const plain = { ...blankMaterial('Plain', ''), composition: whole.composition };
    expect(held(liftState(MATERIAL, 1, text), key)).toEqual(held(plain, key));
  });

  it.each(FIELDS)('%s is told where two states differ', (key, field) => {
    const told = fieldDifferences(MATERIAL_FIELDS, blank, { ...blank, [key]: sample(key, field) }, REGION);
    expect(told.map((one) => one.key)).toEqual([key]);
    expect(told[0]?.after).not.toBe('');
  });

  it.each(FIELDS.filter(([, { places }]) => places.sheet !== 'no'))(
    '%s stands on the sheet',
    (key, field) => {
      const settingsNow = settings.parse({});
      const print = (of: Material): string => JSON.stringify(materialSheet(of, settingsNow, whole.updatedAt));
      const without = print(blank);
      // A photo is a picture: tests/unit/sheets/photos-printed prints it.
      if (field.shape.kind === 'attachment') return;
      expect(print({ ...blank, [key]: sample(key, field) })).not.toBe(without);
      const words = fieldWords(field, sample(key, field), REGION);
      if (field.places.sheet === 'derived')
        expect(print({ ...blank, [key]: sample(key, field) })).toContain(JSON.stringify(words).slice(1, -1));
    },
  );

  it.each(FIELDS.filter(([, { places }]) => places.compare === 'derived'))(
    '%s is set side by side',
    (key, field) => {
      const other = { ...blank, [key]: sample(key, field) };
      const row = comparisonRows([blank, other], REGION).find(({ label }) => label === field.label);
      expect(row?.values[1]).toBe(fieldWords(field, sample(key, field), REGION));
    },
  );

  const listed = MATERIALS_LISTED.map(({ key, field }) => [key as string, field] as const);
  const searched = FIELDS.filter(([, { places }]) => places.search);

  it.each([...searched, ...listed.filter(([, { places }]) => places.search)])(
    '%s is searched',
    (key, field) => {
      materials.update(engine, materials.read(engine, whole.id)!, { ...blank, [key]: sample(key, field) });
      const index = createListIndex(MATERIALS_LIST, readMaterialEntries(engine));
      const value = sample(key, field);
      const told = typeof value === 'string' ? value : fieldWords(field, value, REGION);
      const [text = ''] = told.split(/[ ,;]/);
      expect(index.search(listQuery(MATERIALS_LIST, { text })).total).toBe(1);
    },
  );

  it.each(listed)('%s stands in the list, and filters it by its words', (key, field) => {
    materials.update(engine, materials.read(engine, whole.id)!, whole);
    const [entry] = readMaterialEntries(engine) as unknown as Record<string, unknown>[];
    const stored = key in whole ? held(whole, key) : held(whole.storage, key);
    expect(entry?.[key]).toEqual(stored);
    const facet = MATERIALS_LIST.facets.find((one) => one.key === key);
    expect(facet?.title).toBe(field.places.filter);
    expect(MATERIALS_LIST.sorts.some((one) => one.key === key)).toBe(field.places.list !== undefined);
  });

  it('may be entered as the sample has it', () => {
    expect(materialContent.safeParse(whole).error?.issues ?? []).toEqual([]);
    expect(Object.keys(sampleContent(MATERIAL_FIELDS))).toEqual(FIELDS.map(([key]) => key));
  });
});
