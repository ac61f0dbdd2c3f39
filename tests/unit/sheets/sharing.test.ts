import { blankProductFile } from '@core/formulas/product-file';
import { formulaSheet } from '@core/sheets/formula-sheet';
import { forSharing } from '@core/sheets/sharing';
import type { FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { renderSheet } from '@service/sheets/render';
import { describe, expect, it } from 'vitest';
import { readPdf } from './read-pdf';
import { AT, sampleMaterial, WATER } from './sample-materials';
import { CREAM, MAKER, sampleLine, sampleStep } from './samples';

const offered = (supplier: string, itemCode: string, currency: 'EUR' | 'USD' = 'EUR') => ({
  ...{ supplier, itemCode, currency },
  ...{ packMg: 1_000_000, priceMinor: 900, date: '2026-01-12' },
});

const WAX = sampleMaterial(
  'Tallowmere VQ 7',
  // Short of 100 %, so that the ingredient list has something to say of it.
  [['Cetearyl Alcohol', 80]],
  { offers: [offered('Oakbarrow Supply', 'OB-118'), offered('Pennywhistle & Sons', 'WAXY')] },
);
const OIL = sampleMaterial('Lindmere IPM', [['Isopropyl Myristate', 100]], {
  offers: [offered('Oakbarrow Supply', '90218')],
  hazards: ['irritant'],
});
const NAMELESS = sampleMaterial('Quillwort Extra', [], { offers: [offered('Quillwort House', 'Q7')] });
const USED: Material[] = [WATER, WAX, OIL, NAMELESS];
const MATERIALS = Object.fromEntries(USED.map((one) => [one.id, one]));

/** A formula whose maker wrote names everywhere. */
const TALK =
  'tallowmere vq-7 or LINDMERE IPM of Oakbarrow  Supply (OB-118, ob-118, WAXY, 90218) by Quillwort Extra';
const NAMED: FormulaContent = {
  ...CREAM,
  code: 'OB-118',
  name: 'Tallowmere VQ7 cream for Pennywhistle & Sons',
  purpose: TALK,
  phases: [
    {
      ...CREAM.phases[0]!,
      title: TALK.slice(0, 80),
      lines: [
        sampleLine(WATER, 'q.s.'),
        sampleLine(WAX, 5, TALK),
        sampleLine(OIL, 10, TALK),
        sampleLine(NAMELESS, 1, TALK),
      ],
    },
  ],
  steps: [sampleStep([], TALK, { lookFor: TALK, caution: TALK })],
  target: {
    ...CREAM.target,
    ...{ appearance: TALK, odour: TALK, colour: TALK, viscosityMethod: TALK, microbiology: TALK },
  },
  accepted: [],
  ...blankProductFile(),
  notes: TALK,
};

const BOUGHT = ['Oakbarrow', 'Pennywhistle', 'Quillwort House', 'OB-118', 'WAXY', '90218'];
const TRADE = ['Tallowmere', 'Lindmere', 'Quillwort'];

async function everythingOf(tradeNames: boolean): Promise<string> {
  const formula = { content: NAMED, materials: MATERIALS, version: null };
  const sheet = formulaSheet(formula, { forSharing: true, tradeNames }, MAKER, AT);
  const { text, title } = await readPdf(await renderSheet(sheet, { now: new Date(AT) }));
  return `${title} ${text}`.toLowerCase();
}

describe('a formula sheet for sharing', () => {
  it('holds no supplier, item code or trade name, from its title to its foot', async () => {
    const all = await everythingOf(false);
    for (const name of [...BOUGHT, ...TRADE]) expect(all).not.toContain(name.toLowerCase());
    expect(all).toContain('cetearyl alcohol cream for the supplier');
    expect(all).toContain('the composition of cetearyl alcohol does not come to 100 %');
    expect(all).toContain('raw material without an inci name');
  });

  it('holds trade names when they are asked for, and no supplier or item code even then', async () => {
    const all = await everythingOf(true);
    for (const name of BOUGHT) expect(all).not.toContain(name.toLowerCase());
    for (const name of TRADE) expect(all).toContain(name.toLowerCase());
  });

  it('keeps figures and words that only look like item codes', () => {
    const instruction = 'Stir at 90218 rpm, 90218.5 g, with the waxy part of phase Q7B; then item 90218.';
    const content = { ...NAMED, steps: [sampleStep([], instruction)] };
    expect(forSharing(content, MATERIALS, false).steps[0]?.instruction).toBe(
      'Stir at 90218 rpm, 90218.5 g, with the waxy part of phase Q7B; then item Isopropyl Myristate.',
    );
  });

  it('names no material by an item code that two suppliers use', () => {
    const twin = sampleMaterial('Twin', [['Squalane', 100]], { offers: [offered('Other', 'OB-118')] });
    const lines = [...NAMED.phases[0]!.lines, sampleLine(twin, 1)];
    const content = { ...NAMED, phases: [{ ...NAMED.phases[0]!, lines }], purpose: 'Add OB-118.' };
    expect(forSharing(content, { ...MATERIALS, [twin.id]: twin }, false).purpose).toBe('Add the item.');
  });
});

describe('the cost on a full formula sheet', () => {
  it('says why there is none when all prices are in another currency', async () => {
    const formula = { content: NAMED, materials: MATERIALS, version: null };
    const options = { forSharing: false, tradeNames: true };
    const sheet = formulaSheet(formula, options, { ...MAKER, currency: 'USD' }, AT);
    const { text } = await readPdf(await renderSheet(sheet, { now: new Date(AT) }));
    expect(text).toContain('no material has a price in USD');
    expect(text).toContain('Lindmere IPM (priced in another currency)');
    expect(text).toContain('add offers in USD');
  });
});
