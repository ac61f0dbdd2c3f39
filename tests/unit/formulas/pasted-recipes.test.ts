import { isTotal } from '@core/formulas/pasting/total-row';
import { likelyMeaning, pastedLines, pastedShares } from '@core/formulas/pasting/pasted-lines';
import { amountOf } from '@core/formulas/pasting/pasted-table';
import { gatherFormulas, type FormulaRow } from '@core/imports/formula-rows';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const read = (text: string) =>
  pastedLines(text).map(({ names, amount, toHundred }) => [names.join('/'), toHundred ? 'q.s.' : amount]);
const shares = (text: string) => {
  const lines = pastedLines(text);
  return pastedShares(lines, likelyMeaning(lines)).map(({ ppm }) => ppm / 10_000);
};

describe('the line that is filled up to 100', () => {
  it.each([
    'Wasser ad 100',
    'Wasser ad 100,0',
    'Wasser ad 100 g',
    'Wasser auf 100',
    'Wasser q.s.',
    'Wasser, q.s.',
    'Wasser qs 100',
    'Wasser q.s. ad 100',
    'Wasser q.s. to 100 %',
    'Wasser q.s.p. 100',
    'Wasser to 100 %',
    'Wasser\tad 100',
    'Wasser;q.s.p. 100',
    'Wasser: ad 100',
  ])('%j', (text) => {
    expect(
      read(
        `${text}\n${text.includes('\t') ? 'Glycerin\t5' : text.includes(';') ? 'Glycerin;5' : 'Glycerin 5'}`,
      ),
    ).toEqual([
      ['Wasser', 'q.s.'],
      ['Glycerin', 5],
    ]);
  });
  it.each(['Wasser 100', 'Wasser 100 %', 'Wasser to go 100'])('%j is a hundred per cent', (text) => {
    expect(read(text)[0]?.[1]).toBe(100);
  });
});

describe('a recipe in masses', () => {
  it('counts kilograms, grams and milligrams against each other', () => {
    // 500 g, 20 g and 0.5 g of 520.5 g
    expect(shares('Wasser\t0,5 kg\nGlycerin\t20 g\nXanthan\t500 mg')).toEqual(
      [96.0615, 3.8425, 0.0961].map((one) => expect.closeTo(one, 3) as number),
    );
    expect(amountOf('2 kg')).toEqual({ kind: 'number', value: 2000, percent: false });
    expect(amountOf('250 mg')).toEqual({ kind: 'number', value: 0.25, percent: false });
    expect(amountOf('5 %')).toEqual({ kind: 'number', value: 5, percent: true });
    expect(amountOf('5 parts')).toEqual({ kind: 'number', value: 5, percent: false });
  });
  it('is the same recipe in whatever unit it is written', () => {
    const grams = fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(grams, (amounts) => {
        const written = (unit: string, by: number) =>
          shares(amounts.map((one, at) => `M${at}\t${one * by} ${unit}`).join('\n'));
        fc.pre(amounts.reduce((sum, one) => sum + one, 0) > 105);
        expect(written('g', 1)).toEqual(written('mg', 1000));
        const mixed = amounts
          .map((one, at) => (at % 2 === 0 ? `M${at}\t${one} g` : `M${at}\t${one * 1000} mg`))
          .join('\n');
        expect(shares(mixed)).toEqual(written('g', 1));
      }),
      { numRuns: 50 },
    );
  });
  it('takes a mark for thousands where another amount shows the decimals', () => {
    expect(read('Wasser\t1.200 g\nÖl\t52,5 g')).toEqual([
      ['Wasser', 1200],
      ['Öl', 52.5],
    ]);
    expect(read('Water\t1,200 g\nOil\t52.5 g')[0]).toEqual(['Water', 1200]);
    expect(read('Wasser\t12.345,5 g\nÖl\t52,5 g')[0]).toEqual(['Wasser', 12345.5]);
    expect(read('A\t0.125\nB\t99.875')).toEqual([
      ['A', 0.125],
      ['B', 99.875],
    ]);
  });
});

describe('headings in the languages of makers', () => {
  it.each([
    ['Rohstoff;Menge', 'Wasser;95\nGlycerin;5'],
    ['Rohstoff;Anteil', 'Wasser;95\nGlycerin;5'],
    ['Handelsname;Gew.-%', 'Wasser;95\nGlycerin;5'],
    ['Bezeichnung;Einwaage (g)', 'Wasser;95\nGlycerin;5'],
    ['Matière première;Pourcentage', 'Wasser;95\nGlycerin;5'],
    ['Ingrédient;Teneur', 'Wasser;95\nGlycerin;5'],
    ['Materia prima;Porcentaje', 'Wasser;95\nGlycerin;5'],
    ['Ingredient;% w/w', 'Wasser;95\nGlycerin;5'],
  ])('%s', (heading, rows) => {
    expect(read(`${heading}\n${rows}`)).toEqual([
      ['Wasser', 95],
      ['Glycerin', 5],
    ]);
  });
  it('an article number is a code, and a remark no name', () => {
    const [first] = pastedLines('Bezeichnung;Artikel-Nr.;Gew.-%;Bemerkung\nWasser;1001;95;kalt\nÖl;1002;5;');
    expect(first).toMatchObject({
      names: ['1001', 'Wasser'],
      tradeName: 'Wasser',
      amount: 95,
      note: 'kalt',
      saidPercent: true,
    });
  });
  it('without one nothing of the table is lost', () => {
    expect(read('Wasser;95\nGlycerin;5')).toHaveLength(2);
  });
});

describe('rows that only say a total', () => {
  it.each([
    'Total',
    'TOTAL',
    'Total:',
    'Total (%)',
    'Total 100 %',
    'Sum',
    'Summe',
    'Summe Phase A',
    'Gesamt',
    'Gesamtmenge',
    'Zwischensumme',
    'Sous-total',
    'Subtotal',
    'Sub-total',
    'Somme',
    'Suma',
    'Total of phase B',
    'Total der Phase A',
  ])('“%s” is one', (name) => {
    expect(isTotal(name)).toBe(true);
    expect(read(`Wasser;100\n${name};100`)).toEqual([['Wasser', 100]]);
  });
  it.each([
    'Total Repair Oil',
    'Summer Rose',
    'Sumac Extract',
    'Totarol',
    'Gesamtkräuterauszug',
    'Sum Cream Base',
  ])('“%s” is a material', (name) => {
    expect(isTotal(name)).toBe(false);
    expect(read(`Wasser;95\n${name};5`)).toEqual([
      ['Wasser', 95],
      [name, 5],
    ]);
  });
  it('nor is such a material lost where a table of formulas comes in', () => {
    const row = (line: number, material: string) => ({
      line,
      values: {
        'formula.name': 'F',
        'line.material': material,
        'line.amount': { percent: 50, toHundred: false },
      },
      faults: [],
    });
    const [formula] = gatherFormulas([row(2, 'Total Repair Oil'), row(3, 'Wasser'), row(4, 'Total')]);
    expect((formula?.values.lines as FormulaRow[]).map(({ names }) => names[0])).toEqual([
      'Total Repair Oil',
      'Wasser',
    ]);
  });
});

describe('a name that ends in a number', () => {
  it.each([
    ['PEG-40 Hydrogenated Castor Oil 2 %', 'PEG-40 Hydrogenated Castor Oil', 2],
    ['Polysorbate 20 1', 'Polysorbate 20', 1],
    ['CI 77491 0.1', 'CI 77491', 0.1],
    ['C12-15 Alkyl Benzoate 5', 'C12-15 Alkyl Benzoate', 5],
    ['2,5 % Glycerin', 'Glycerin', 2.5],
    ['Water — 95', 'Water', 95],
    ['Glycerin: 5 g', 'Glycerin', 5],
  ])('%s', (text, name, amount) => {
    expect(read(text)).toEqual([[name, amount]]);
  });
});
