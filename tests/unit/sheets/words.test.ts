import { comparisonRows } from '@core/sheets/comparison-rows';
import { bestUse } from '@core/materials/best-use';
import { figureWords, storageWords, usageWords } from '@core/materials/words';
import { printable, unprintableCharacters } from '@core/sheets/printable-text';
import { sheetFileName, sheetRequest } from '@core/sheets/requests';
import { describe, expect, it } from 'vitest';
import { idOf, QUAT, SOAP, WAX } from './sample-materials';

const ascii = (codePoint: number) => codePoint < 128;

describe('words on sheets', () => {
  it('say figures with their spread', () => {
    const known = { provenance: 'supplier' as const, source: '' };
    expect(figureWords('hlb', { ...known, low: null, value: 15, high: null }, 'en-GB')).toBe('15.0');
    expect(figureWords('meltingPoint', { ...known, low: 52, value: null, high: 58 }, 'en-GB')).toBe(
      '52–58 °C',
    );
    expect(figureWords('workingPh', { ...known, low: 4, value: null, high: null }, 'de-DE')).toBe('from 4,0');
  });

  it('say usage, storage and best use in a line', () => {
    expect(usageWords(WAX.usage, 'en-GB')).toBe('2\u00a0% to 8\u00a0%, typically 5\u00a0%');
    expect(storageWords(WAX.storage, 'en-GB')).toBe(
      'At 5 °C to 25 °C; away from light and moisture; unopened 24 months; once opened 6 months',
    );
    expect(bestUse(WAX, 'en-GB')).toBe(
      'Emulsifier for o/w emulsions; builds body; 2\u00a0% to 8\u00a0%, typically 5\u00a0%',
    );
  });

  it('mark a property as differing, alike or open', () => {
    const rows = new Map(comparisonRows([WAX, SOAP, QUAT], 'en-GB').map((row) => [row.label, row.outcome]));
    expect(rows.get('Charge')).toBe('differ');
    expect(rows.get('Emulsion type')).toBe('alike');
    expect(rows.get('Appearance')).toBe('open');
    expect(rows.has('Required HLB, w/o')).toBe(false);
  });
});

describe('text that cannot be printed', () => {
  it('is found with its place, once for each character', () => {
    const found = unprintableCharacters(
      [
        { text: 'née 柚', where: 'Title' },
        { text: '柚\tok\n', where: 'Notes' },
      ],
      ascii,
    );
    expect(found).toEqual([
      { character: 'é', code: 'U+00E9', where: ['Title'] },
      { character: '柚', code: 'U+67DA', where: ['Title', 'Notes'] },
    ]);
  });

  it('is never blank: a sign becomes its code, and only invisible marks go', () => {
    expect(printable('a\u200b柚😀\ufeff', ascii)).toBe('a[U+67DA][U+1F600]');
    // A soft hyphen, a mark of direction and a tag: nothing that a reader could see.
    expect(printable('so\u00adft\u200e\u{e0020}', ascii)).toBe('soft');
  });
});

describe('asking for a sheet', () => {
  it('fills in what is usual and refuses what cannot be', () => {
    expect(sheetRequest.parse({ kind: 'formula', formulaId: idOf(1) })).toEqual({
      kind: 'formula',
      formulaId: idOf(1),
      versionId: null,
      forSharing: false,
      tradeNames: true,
      replaceUnprintable: false,
    });
    expect(sheetRequest.safeParse({ kind: 'label' }).success).toBe(false);
    const one = sheetRequest.safeParse({ kind: 'comparison', materialIds: [idOf(1)] });
    expect(one.error?.issues[0]?.message).toBe('Choose at least two raw materials to compare.');
  });

  it('suggests a file name that every system takes', () => {
    expect(sheetFileName('batch', ['B-0041', 'Crème: “day/night”'])).toBe(
      'batch-record-b-0041-creme-day-night.pdf',
    );
    expect(sheetFileName('material', ['柚子'])).toBe('specification.pdf');
    expect(sheetFileName('material', ['x'.repeat(300)]).length).toBeLessThanOrEqual(84);
  });
});
