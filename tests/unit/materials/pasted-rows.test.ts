import fc from 'fast-check';
import { pastedComposition, withPastedParts } from '@core/materials/pasting/pasted-composition';
import { pastedFigures } from '@core/materials/pasting/pasted-figures';
import type { FigureKind } from '@core/materials/figure';
import { describe, expect, it } from 'vitest';

type Parts = readonly (readonly [inci: string, low: number, high?: number])[];
const partsOf = (parts: Parts) =>
  parts.map(([inci, low, high = low]) => ({ inci, lowPpm: low * 10_000, highPpm: high * 10_000 }));
const pasted = (...rows: string[]) => pastedComposition(rows.join('\n'));

describe('a composition as it stands in somebody’s spreadsheet', () => {
  it.each<readonly [string, string[], Parts]>([
    [
      'with numbered rows',
      ['1\tAqua\t60', '2\tGlycerin\t40'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'numbered with points, below a head',
      ['No.\tINCI\t%', '1.\tAqua\t60', '2.\tGlycerin\t40'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'with shares first',
      ['60\tAqua', '40\tGlycerin'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'with about',
      ['Aqua\tca. 60', 'Glycerin\tapprox. 40 %'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'with about, in German',
      ['Aqua\tetwa 60', 'Glycerin\t~40'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'with decimal commas',
      ['Aqua\t60,5', 'Glycerin\t39,5'],
      [
        ['Aqua', 60.5],
        ['Glycerin', 39.5],
      ],
    ],
    [
      'with what it does beside',
      ['Aqua\t60\tsolvent', 'Glycerin\t40\thumectant'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'in ppm',
      ['Aqua\t995000 ppm', 'Glycerin\t5000 ppm'],
      [
        ['Aqua', 99.5],
        ['Glycerin', 0.5],
      ],
    ],
    [
      'as parts of one',
      ['Aqua\t0,6', 'Glycerin\t0,4'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'with bounds',
      ['Aqua\t> 60', 'Glycerin\t< 5'],
      [
        ['Aqua', 60, 100],
        ['Glycerin', 0, 5],
      ],
    ],
    [
      'with most and least in words',
      ['Aqua\tmax. 60', 'Glycerin\tmin 40'],
      [
        ['Aqua', 0, 60],
        ['Glycerin', 40, 100],
      ],
    ],
    [
      'with water to 100',
      ['Aqua\tad 100', 'Glycerin\t5'],
      [
        ['Aqua', 0, 95],
        ['Glycerin', 5],
      ],
    ],
    [
      'with a balance',
      ['Aqua\tbalance', 'Glycerin\t40'],
      [
        ['Aqua', 0, 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'of a trace',
      ['Aqua\t99.9995', 'Methylisothiazolinone\t0.0005'],
      [
        ['Aqua', 99.9995],
        ['Methylisothiazolinone', 0.0005],
      ],
    ],
    [
      'of names with figures',
      ['1,2-Hexanediol\t50', 'C12-15 Alkyl Benzoate\t50'],
      [
        ['1,2-Hexanediol', 50],
        ['C12-15 Alkyl Benzoate', 50],
      ],
    ],
    [
      'of a colour index',
      ['CI 77891\t75', 'Mica\t25'],
      [
        ['CI 77891', 75],
        ['Mica', 25],
      ],
    ],
    ['with a CAS number', ['Glycerin\t56-81-5\t100'], [['Glycerin', 100]]],
    [
      'in Spanish, with its total',
      ['Ingrediente\tContenido', 'Aqua\t60', 'Glycerin\t40', 'Suma\t100'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    [
      'in French, with its total',
      ['Nom INCI\tTeneur', 'Aqua\t60', 'Glycerin\t40', 'Somme\t100'],
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
  ])('%s', (_, rows, parts) => expect(pasted(...rows)).toEqual({ ok: true, parts: partsOf(parts) }));

  it.each([
    ['a share below zero', ['Glycerin\t-5', 'Aqua\t105'], /“-5” is not a share of 0 to 100 %/],
    ['a share above the whole', ['Glycerin\t101'], /not a share of 0 to 100 %/],
    ['more than the whole', ['Glycerin\t60', 'Aqua\t60'], /come to more than 100 %/],
    ['three numbers', ['Glycerin\t1\t2\t3'], /more than two numbers/],
    ['a range that falls', ['Glycerin\t60\t50'], /the range runs downwards/],
    ['numbers alone', ['12\t30'], /holds no INCI name/],
    ['nothing', [''], /holds no INCI name/],
  ] as const)('is refused for %s, with the words of the row', (_, rows, says) => {
    const answer = pasted(...rows);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.message).toMatch(says);
  });

  it('reads back what it would write, whatever the shares', () => {
    const shares = fc.array(fc.integer({ min: 1, max: 1_000_000 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(shares, fc.constantFrom('.', ','), fc.boolean(), (weights, mark, numbered) => {
        const total = weights.reduce((sum, one) => sum + one, 0);
        const parts = weights.map((one, at) => {
          const ppm = Math.floor((one / total) * 1_000_000);
          return { inci: `Substance ${'abcdef'.charAt(at)}x`, lowPpm: ppm, highPpm: ppm };
        });
        const rows = parts.map(
          ({ inci, lowPpm }, at) =>
            `${numbered ? `${at + 1}\t` : ''}${inci}\t${(lowPpm / 10_000).toFixed(4).replace('.', mark)} %`,
        );
        fc.pre(!numbered || rows.length > 1);
        expect(pasted(...rows)).toEqual({ ok: true, parts });
      }),
      { numRuns: 60 },
    );
  });

  it('of a part is added, and takes the place of the same name in another case', () => {
    const before = partsOf([
      ['Aqua', 60],
      ['GLYCERIN', 40],
    ]);
    expect(withPastedParts(before, partsOf([['Glycerin', 5]]))).toEqual(
      partsOf([
        ['Aqua', 60],
        ['Glycerin', 5],
      ]),
    );
    expect(withPastedParts(before, partsOf([['Urea', 100]]))).toEqual(partsOf([['Urea', 100]]));
    expect(withPastedParts([], [])).toEqual([]);
  });
});

describe('figures as they stand in somebody’s spreadsheet', () => {
  const one = (row: string) => pastedFigures(row).figures;
  const ends = (low: number | null, value: number | null, high: number | null) => ({ low, value, high });

  it.each<readonly [string, FigureKind, ReturnType<typeof ends>]>([
    ['HLB\t15', 'hlb', ends(null, 15, null)],
    ['HLB-Wert\t15,2', 'hlb', ends(null, 15.2, null)],
    ['HLB\tabout 15', 'hlb', ends(null, 15, null)],
    ['Density\t0.92\tg/mL', 'density', ends(null, 0.92, null)],
    ['Dichte (20 °C)\t0,92\tg/cm³', 'density', ends(null, 0.92, null)],
    ['Densité\t0,92', 'density', ends(null, 0.92, null)],
    // 920 kg/m³ is 0.92 g/mL; 126 °F is (126 − 32) × 5/9 = 52.22 °C.
    ['Density\t920\tkg/m³', 'density', ends(null, 0.92, null)],
    ['Melting point\t126\t°F', 'meltingPoint', ends(null, 52.2222, null)],
    ['Melting point\t52\t58\t°C', 'meltingPoint', ends(52, null, 58)],
    ['Schmelzpunkt\t52 - 58 °C', 'meltingPoint', ends(52, null, 58)],
    ['Point de fusion\t52 – 58 °C', 'meltingPoint', ends(52, null, 58)],
    ['Acid value\t< 2\tmg KOH/g', 'acidValue', ends(null, null, 2)],
    ['Säurezahl\tmax. 2', 'acidValue', ends(null, null, 2)],
    ['Indice d’acide\t2', 'acidValue', ends(null, 2, null)],
    ['Índice de acidez\t2', 'acidValue', ends(null, 2, null)],
    ['Viscosity\t3000 cP', 'viscosity', ends(null, 3000, null)],
    ['pH\t5.5 - 6.5', 'phAsSupplied', ends(5.5, null, 6.5)],
    ['pKa\t4.76', 'pKa', ends(null, 4.76, null)],
    ['Molar mass\t288.38 g/mol', 'molarMass', ends(null, 288.38, null)],
    ['Saponification value\t160-170', 'saponificationValue', ends(160, null, 170)],
    ['Active matter\t70 %', 'activePercent', ends(null, 70, null)],
  ])('%s', (row, kind, expected) => expect(one(row)).toEqual({ [kind]: expected }));

  it.each(['Nonsense\t12', 'HLB\t99', 'Refractive index\t1.45', 'pH (10 %)\t5,5 – 6,5'])(
    '%s is left, and shown as it stood',
    (row) => expect(pastedFigures(row)).toEqual({ figures: {}, left: [row.replace('\t', ' ')] }),
  );

  it('takes what it knows of a table, and leaves what it does not', () => {
    const { figures, left } = pastedFigures('HLB\t15\nColour\twhite\nLustre\t7\nAcid value\t2');
    expect(Object.keys(figures).sort()).toEqual(['acidValue', 'hlb']);
    expect(left).toEqual(['Lustre 7']);
  });
});
