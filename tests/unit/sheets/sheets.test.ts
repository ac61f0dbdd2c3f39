import { batchSheet } from '@core/sheets/batch-sheet';
import { comparisonSheet } from '@core/sheets/comparison-sheet';
import { formulaSheet } from '@core/sheets/formula-sheet';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { materialSheet } from '@core/sheets/material-sheet';
import { renderSheet } from '@service/sheets/render';
import { describe, expect, it } from 'vitest';
import { PHOTO } from './photo';
import { readPdf } from './read-pdf';
import { AT, GLYCERIN, MATERIALS, POLYMER, QUAT, sampleMaterial, SOAP, WAX } from './sample-materials';
import { CREAM, CREAM_VERSION, longVersion, MAKER, sampleBatch } from './samples';

const now = new Date(AT);
const read = async (definition: SheetDefinition) => readPdf(await renderSheet(definition, { now }));
const formula = { content: CREAM, materials: MATERIALS, version: CREAM_VERSION };

describe('the raw-material specification', () => {
  it('says what the material is, in words, with where each figure comes from', async () => {
    const { text, title, pages } = await read(materialSheet(WAX, MAKER, AT, { photo: PHOTO }));
    for (const said of [
      'Velmora VQ 7',
      'Marrow & Thyme Stillroom',
      'Ceteareth-20',
      '75.00 % – 85.00 %',
      'about 80.00 %',
      'Non-ionic',
      '9.8 (9.0–10.5)',
      'Griffin, from composition',
      'Oakbarrow Supply',
      '€11.60',
      'Deliveries checked against this sheet',
    ])
      expect(text).toContain(said);
    expect(title).toContain('Velmora VQ 7');
    pages.forEach((page, index) => expect(page).toContain(`page ${index + 1} of ${pages.length}`));
  });
});

describe('the formula sheet', () => {
  it('gives lines, total, procedure, target, ingredient list and cost', async () => {
    const { text } = await read(formulaSheet(formula, { forSharing: false, tradeNames: true }, MAKER, AT));
    for (const said of [
      'Purified water (q.s. to 100)',
      '69.325',
      '100.000 %',
      'Pour B into A',
      '5.2–5.8',
      'Aqua, Prunus Amygdalus Dulcis Oil',
      'per kg',
      'not proof of safety',
      'F-0012',
    ])
      expect(text).toContain(said);
  });

  it('for sharing, keeps back cost, suppliers, notes, and trade names wherever they stand', async () => {
    const content = structuredClone(CREAM);
    content.steps[0]!.instruction = 'Sprinkle lissagum clear, from Oakbarrow Supply, on the water.';
    const options = { forSharing: true, tradeNames: false };
    const { text } = await read(formulaSheet({ ...formula, content }, options, MAKER, AT));
    for (const one of Object.values(MATERIALS)) {
      if (one.tradeName !== 'Sweet almond oil')
        expect(text.toLowerCase()).not.toContain(one.tradeName.toLowerCase());
    }
    for (const hidden of ['Oakbarrow', '€', 'Cost', CREAM.notes]) expect(text).not.toContain(hidden);
    expect(text).toContain('Sprinkle Xanthan Gum, from the supplier, on the water.');
    expect(text).toContain('Cetearyl Alcohol (and) Ceteareth-20');
  });

  it('says how far a draft is from 100 %', async () => {
    const phases = CREAM.phases.slice(1);
    const draft = { content: { ...CREAM, phases }, materials: MATERIALS, version: null };
    const { text } = await read(formulaSheet(draft, { forSharing: false, tradeNames: true }, MAKER, AT));
    expect(text).toContain('Draft, not recorded');
    expect(text).toContain('73.575 % short of 100 %');
  });
});

describe('the batch record', () => {
  it('has targets, blanks to write in, checks, cautions and sign-off', async () => {
    const batch = sampleBatch();
    const { text } = await read(batchSheet(batch, CREAM_VERSION, MAKER, AT));
    for (const said of [
      'B-0041',
      'version 3',
      '2,550.0 g',
      '306.0',
      'Lot',
      'Tare, g',
      'Weighed, g',
      'Deviation, g',
      'Initials',
      '°C, actual',
      'In-process checks',
      'Deviations',
      'Fine dust (Lissagum Clear)',
      'Hot oil and water phases scald',
      'Released by',
    ])
      expect(text).toContain(said);
  });

  it('repeats the phase and the heads on every page, and keeps the sign-off whole', async () => {
    const version = longVersion(60);
    const { pages, text } = await read(batchSheet(sampleBatch(version), version, MAKER, AT));
    const weighing = pages.filter((page) => page.includes('Target, g'));
    expect(weighing.length).toBeGreaterThan(2);
    for (const page of weighing) expect(page).toMatch(/[ABC] (Water|Oil|Cool-down) phase/);
    const last = pages.filter((page) => page.includes('Sign-off and release'));
    expect(last).toHaveLength(1);
    for (const role of ['Made by', 'Checked by', 'Released by']) expect(last[0]).toContain(role);
    expect(text).toContain(`page ${pages.length} of ${pages.length}`);
  });
});

describe('the comparison hand-out', () => {
  it('marks differences by a sign and weight, and says what is not recorded', async () => {
    const { text } = await read(comparisonSheet([WAX, SOAP, QUAT, POLYMER], MAKER, AT, { [WAX.id]: PHOTO }));
    for (const said of [
      'Charge ≠ Non-ionic Anionic Cationic Anionic',
      'Emulsion type = o/w',
      'not recorded',
      'Best use',
    ])
      expect(text).toContain(said);
  });

  it('starts on the first page even with a monstrous name and sixty INCI names', async () => {
    const parts = Array.from({ length: 60 }, (_, at): [string, number] => [
      `Polyglyceryl-${at} Diisostearate/Sebacate`,
      1,
    ]);
    const wild = sampleMaterial('W'.repeat(200), parts);
    const { pages } = await read(comparisonSheet([wild, SOAP, QUAT, POLYMER, GLYCERIN, WAX], MAKER, AT));
    expect(pages[0]).toContain('Polyglyceryl-0');
    expect(pages[0]).toContain(SOAP.tradeName);
  });

  it('becomes a list for a whole class list', async () => {
    const many = Array.from({ length: 8 }, () => Object.values(MATERIALS)).flat();
    const { pages, text } = await read(comparisonSheet(many, { ...MAKER, paperSize: 'LETTER' }, AT));
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages.slice(0, -1)) expect(page).toContain('Best use');
    expect(text.split(GLYCERIN.tradeName).length - 1).toBe(8);
  });
});

describe('figures on a sheet', () => {
  it('follow the region', async () => {
    const german = { ...MAKER, languageRegion: 'de-DE' as const };
    const { text } = await read(batchSheet(sampleBatch(), CREAM_VERSION, german, AT));
    expect(text).toContain('2.550,0 g');
    expect(text).toContain('14.03.2026');
  });
});
