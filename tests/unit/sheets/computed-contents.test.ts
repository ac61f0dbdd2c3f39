import fc from 'fast-check';
import type { Calculated } from '@core/calculators/calculated';
import { shownMargin } from '@core/exposure/shown-margin';
import { NO_LAW } from '@core/limits/law';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import { NOT_PROOF } from '@core/sheets/cautions';
import { exposureSheet } from '@core/sheets/exposure-sheet';
import { blankSubstance, type Substance } from '@core/substances/substance';
import { worked } from '@core/working/one-step';
import { describe, expect, it } from 'vitest';
import { kept } from '../limits/law';
import { AT, MATERIALS } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER } from './samples';
import { rowsUnder, wordsOf } from './sheet-words';

describe('a calculation on paper', () => {
  const result = (
    value: number,
    part: Partial<Calculated['results'][number]> = {},
  ): Calculated['results'][number] => ({
    ...{ key: 'k', label: 'Figure', digits: 2, says: '' },
    worked: worked(
      [{ says: 'a sum', shows: '1 + 1', result: value, unit: 'g' }],
      [{ text: 'A book', basis: 'memory' }],
      ['Mind it.'],
    ),
    ...part,
  });
  const of = (part: Partial<Calculated>): Calculated => ({
    title: 'Sum',
    given: [],
    results: [],
    withheld: [],
    notes: [],
    ...part,
  });
  const words = (part: Partial<Calculated>, region: 'en-GB' | 'de-DE' = 'en-GB') =>
    wordsOf(calculationSheet(of(part), { ...MAKER, languageRegion: region }, AT));

  it('never prints a tiny figure as nothing, nor a hyphen for a minus', () => {
    expect(words({ results: [result(4.1e-8)] })).toContain('4.1 × 10⁻⁸ g');
    expect(words({ results: [result(0)] })).toContain('0.00 g');
    expect(words({ results: [result(-1.5)] })).toContain('−1.50 g');
  });

  it('shows each step with its numbers put in, its source once, and follows the region', () => {
    const said = words({ results: [result(2.5)] }, 'de-DE');
    expect(said).toContain('1. a sum');
    expect(said).toContain('1 + 1 = 2,5 g');
    expect(said).toContain('2,50 g');
    expect(said).toContain('Source: A book (not verified)');
  });

  it('says each caution once however many figures have it, and that it proves nothing', () => {
    const said = words({ results: [result(1), result(2)], notes: ['Mind it.'] });
    expect(said.filter((one) => one === '– Mind it.')).toHaveLength(1);
    expect(said).toContain(`– ${NOT_PROOF}`);
  });

  it('tells what went in, verdicts with why, tables, and what could not be computed with why', () => {
    const said = words({
      given: [
        { label: 'Level', value: 3.5, unit: '%' },
        { label: 'Acid', value: 'Lactic Acid', unit: '' },
      ],
      verdicts: [{ key: 'v', label: 'The count is', verdict: 'out', good: false, why: ['Too many.'] }],
      tables: [
        {
          label: 'By pH',
          head: ['pH', 'Share'],
          rows: [
            [4.5, 'half'],
            [5.5, 0.09],
          ],
        },
      ],
      withheld: [{ label: 'Inversion', why: 'There is none.' }],
    });
    for (const one of [
      '3.5 %',
      'Lactic Acid',
      'The count is',
      'out',
      'Too many.',
      'By pH',
      '4.5',
      'half',
      '0.09',
      'Not computed',
      'Inversion: There is none.',
    ])
      expect(said).toContain(one);
    expect(words({})).not.toContain('Not computed');
  });
});

describe('a margin of safety as it is shown', () => {
  it.each([
    [99.96, 99],
    [100, 100],
    [9.99, 9.9],
    [10, 10],
    [0.04, 0],
    [1, 1],
    [974.026, 974],
  ])('%d is shown as %d', (margin, shown) => {
    expect(shownMargin(margin)).toBeCloseTo(shown, 12);
  });

  it('is never more than it is, nor less by a whole one, and rises with it', () => {
    const margin = fc.double({ min: 0.1, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(margin, margin, (one, other) => {
        expect(shownMargin(one)).toBeLessThanOrEqual(one * (1 + 1e-11));
        expect(one - shownMargin(one)).toBeLessThan(one < 10 ? 0.1 + 1e-9 : 1);
        if (one <= other) expect(shownMargin(one)).toBeLessThanOrEqual(shownMargin(other));
      }),
      { numRuns: 60 },
    );
  });
});

describe('exposure on paper', () => {
  const phenoxyethanol = (part: Partial<Substance>): Substance => ({
    ...kept(blankSubstance('Phenoxyethanol')),
    ...part,
  });
  const sheetOf = (substance: Substance | null, kind: 'face cream' | 'nail product' | null = 'face cream') =>
    exposureSheet(
      {
        content: { ...CREAM, market: { ...CREAM.market, kind } },
        materials: MATERIALS,
        version: CREAM_VERSION,
        law: { ...NO_LAW, substances: substance ? [substance] : [] },
      },
      MAKER,
      AT,
    );

  it('has dose and margin by hand, the margin rounded down', () => {
    // 1 % of a blend of 88 to 92 %: 0.92 %; 24.14 × 0.0092 × 0.5 = 0.111044 mg/kg; 11.1 / 0.111044 = 99.96.
    const [row] = rowsUnder(
      sheetOf(phenoxyethanol({ pod: 11.1, dermalAbsorption: 50, oralBioavailability: 100 })).content,
      'Substance',
      'Margin',
    );
    expect(row?.slice(0, 5)).toEqual(['Phenoxyethanol', '0.92', '0.111', '11.1', '99']);
  });

  it('leaves the margin open without a point of departure, and says what it took', () => {
    const sheet = sheetOf(phenoxyethanol({}));
    // Columns that would stand empty are left out, and said.
    expect(rowsUnder(sheet.content, 'Substance', 'Margin')).toEqual([]);
    expect(wordsOf(sheet).join()).toContain('no margin of safety is given');
    const [row] = rowsUnder(sheet.content, 'Substance', 'Notes');
    // What is remarked of many substances stands once, below, by the letter in its row.
    expect(row?.at(-1)).toMatch(/^a\b/);
    expect(wordsOf(sheet).join()).toContain('a: No dermal absorption is recorded');
  });

  it('says so for a kind that the tables do not know, or that nobody said', () => {
    for (const kind of ['nail product', null] as const)
      expect(wordsOf(sheetOf(null, kind)).join()).toContain(
        'do not know this kind of product, or none is stated',
      );
    expect(wordsOf(sheetOf(null)).join()).toContain('Face cream: 1.54\u00a0g per day');
  });

  it('names every line of the formula with its natural origin, and who decides', () => {
    const sheet = sheetOf(null);
    expect(rowsUnder(sheet.content, 'Material', 'Index')).toHaveLength(12);
    expect(wordsOf(sheet).join()).toContain('a qualified safety assessor decides');
  });
});
