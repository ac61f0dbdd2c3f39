import fc from 'fast-check';
import type { Material } from '@core/materials/material';
import { HAZARDS } from '@core/materials/vocabulary';
import { FIRST_AID, HAZARD_CAUTIONS } from '@core/sheets/cautions';
import { comparisonRows, SUPPLY } from '@core/sheets/comparison-rows';
import { comparisonSheet, SIDE_BY_SIDE } from '@core/sheets/comparison-sheet';
import { materialSheet } from '@core/sheets/material-sheet';
import { describe, expect, it } from 'vitest';
import {
  ACID,
  AT,
  GLYCERIN,
  LYE,
  MATERIALS,
  OIL,
  POLYMER,
  QUAT,
  sampleMaterial,
  SOAP,
  WATER,
  WAX,
} from './sample-materials';
import { MAKER } from './samples';
import { factOf, rowsUnder, wordsOf } from './sheet-words';

const sheetOf = (material: Material) => materialSheet(material, MAKER, AT);

describe('the specification of a raw material', () => {
  it('gives ranges with the middle that is computed with, largest first, and says that it is an estimate', () => {
    const sheet = sheetOf(WAX);
    expect(rowsUnder(sheet.content, 'INCI name', 'Used in computing')).toEqual([
      ['Cetearyl Alcohol', '75.00\u00a0% – 85.00\u00a0%', 'about 80.00\u00a0%'],
      ['Ceteareth-20', '15.00\u00a0% – 25.00\u00a0%', 'about 20.00\u00a0%'],
    ]);
    expect(wordsOf(sheet).join()).toContain('midpoint is used and is an estimate');
  });

  it('gives exact shares alone where all are exact, and marks no one exact as about', () => {
    expect(rowsUnder(sheetOf(LYE).content, 'INCI name', 'Share')).toEqual([
      ['Aqua', '90.00\u00a0%'],
      ['Sodium Hydroxide', '10.00\u00a0%'],
    ]);
    const half = sampleMaterial('Half', [
      ['A', 60],
      ['B', 30, 50],
    ]);
    expect(rowsUnder(sheetOf(half).content, 'Used in computing')[0]).toEqual([
      'A',
      '60.00\u00a0%',
      '60.00\u00a0%',
    ]);
    expect(wordsOf(sheetOf(LYE)).join()).not.toContain('midpoint');
  });

  it('gives each figure with how and from where it is known, and no table where none is', () => {
    const rows = rowsUnder(sheetOf(WAX).content, 'Property', 'Source');
    expect(rows).toContainEqual(['HLB', '9.8 (9.0–10.5)', 'Computed', 'Griffin, from composition']);
    expect(rows).toHaveLength(4);
    expect(wordsOf(sheetOf(WATER))).not.toContain('Figures');
  });

  it.each(HAZARDS)('says what to do of %s, with first aid', (hazard) => {
    const words = wordsOf(sheetOf({ ...GLYCERIN, hazards: [hazard] }));
    expect(words).toContain(`– ${HAZARD_CAUTIONS[hazard]}`);
    expect(words).toContain(`– ${FIRST_AID}`);
  });

  it('says of a material without hazards that none is recorded, which is no proof', () => {
    const words = wordsOf(sheetOf(GLYCERIN));
    expect(words.some((one) => one.includes('none recorded: read the safety data sheet'))).toBe(true);
    expect(words.some((one) => one.includes(FIRST_AID))).toBe(false);
  });

  it('lists what suppliers offer, the newest first, and leaves open what is not known', () => {
    const offer = {
      supplier: 'Old',
      itemCode: 'O-1',
      packMg: 1_000_000,
      priceMinor: 1000,
      currency: 'EUR' as const,
      date: '2025-01-01',
    };
    const offers = [offer, { ...offer, supplier: 'New', packMg: null, priceMinor: null, date: '2026-02-01' }];
    const rows = rowsUnder(sheetOf({ ...WATER, offers }).content, 'Supplier', 'Per kg');
    expect(rows.map((row) => [row[0], row[3], row[4]])).toEqual([
      ['New', '', ''],
      ['Old', '€10.00', '€10.00'],
    ]);
    expect(wordsOf(sheetOf(WATER))).not.toContain('Suppliers and prices');
  });

  it('has four rows for deliveries, and the day of its last change in its foot', () => {
    const sheet = sheetOf(WAX);
    const rows = rowsUnder(sheet.content, 'Our lot', 'Accepted / rejected');
    expect(rows).toEqual(Array.from({ length: 4 }, () => ['', '', '', '', '', '']));
    expect(sheet.info.title).toBe('Raw-material specification – Velmora VQ 7 – E-14, as of 14 Mar 2026');
    expect(factOf(sheet, 'Status')).toBe('In use');
  });

  it('draws its form where there is no photo, and says so to who cannot see it', () => {
    expect(JSON.stringify(sheetOf(WAX).content)).toContain('"alt":"Drawing of its form: pellets"');
    const photo = { dataUrl: 'data:image/png;base64,AAAA' };
    const pictured = JSON.stringify(materialSheet(WAX, MAKER, AT, { photo }).content);
    expect(pictured).toContain('"alt":"Photo of Velmora VQ 7: White to off-white pellets, faint waxy odour"');
    expect(pictured).not.toContain('Drawing of its form');
    expect(wordsOf(materialSheet(WAX, MAKER, AT, { photo: { cannotPrint: 'it is cut short' } }))).toContain(
      'Photo cannot be printed: it is cut short.',
    );
  });
});

describe('materials side by side', () => {
  const some = fc.shuffledSubarray(Object.values(MATERIALS), { minLength: 1, maxLength: 6 });

  it('differ where two recorded values do, are alike where all are recorded and one, else open', () => {
    fc.assert(
      fc.property(some, (materials) => {
        for (const { values, outcome, label } of comparisonRows(materials, 'en-GB', SUPPLY)) {
          expect(values, label).toHaveLength(materials.length);
          const recorded = values.filter((value) => value !== '');
          expect(recorded.length).toBeGreaterThan(0);
          const distinct = new Set(recorded).size;
          expect(outcome, label).toBe(
            distinct > 1 ? 'differ' : recorded.length === values.length ? 'alike' : 'open',
          );
        }
      }),
      { numRuns: 30 },
    );
  });

  it('one beside itself differ in nothing', () => {
    for (const { outcome } of comparisonRows([WAX, WAX], 'en-GB', SUPPLY)) expect(outcome).toBe('alike');
  });

  it('do not depend on their order, but for the order of their columns', () => {
    fc.assert(
      fc.property(some, (materials) => {
        const back = comparisonRows([...materials].reverse(), 'en-GB');
        expect(back.map((row) => ({ ...row, values: [...row.values].reverse() }))).toEqual(
          comparisonRows(materials, 'en-GB'),
        );
      }),
      { numRuns: 20 },
    );
  });
});

describe('the comparison hand-out', () => {
  const six = [WAX, SOAP, QUAT, POLYMER, OIL, ACID];
  const words = (materials: Material[]) => wordsOf(comparisonSheet(materials, MAKER, AT));

  it('stands upright with the names as its title for up to three, lies down for more', () => {
    const three = comparisonSheet(six.slice(0, 3), MAKER, AT);
    expect(three.pageOrientation).toBe('portrait');
    expect(three.info.title).toContain('Velmora VQ 7 · Corvane GS 40 · Aldermere BT 50');
    expect(comparisonSheet(six.slice(0, 4), MAKER, AT).pageOrientation).toBe('landscape');
  });

  it('is side by side up to six, and a list beyond', () => {
    expect(six).toHaveLength(SIDE_BY_SIDE);
    expect(words(six).join()).toContain('≠ and heavy type: they differ.');
    const list = comparisonSheet([...six, WATER], MAKER, AT);
    expect(wordsOf(list).join()).not.toContain('≠');
    const rows = rowsUnder(list.content, 'Raw material', 'Best use');
    expect(rows).toHaveLength(7);
    expect(rows[0]?.[rows[0].length - 2]).toBe('9.8 (9.0–10.5)');
  });

  it('never holds a supplier or a price: it is handed out', () => {
    for (const materials of [six, [...six, WATER]])
      for (const hidden of ['Oakbarrow', '€', 'OB-118'])
        expect(words(materials).join()).not.toContain(hidden);
  });

  it('says of a property that some lack that it is not recorded, and proves nothing', () => {
    expect(words([WAX, WATER])).toContain('not recorded');
    expect(words([WAX, WATER]).join()).toContain('not proof of safety');
  });
});
