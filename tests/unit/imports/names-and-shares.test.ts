import { lackShares, namesOf, shareEnds } from '@core/imports/names';
import type { Quantity } from '@core/imports/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const names = (text: string, mark: ',' | '.' | null = null) =>
  namesOf(text, mark).map(({ inci, lowPpm, highPpm }) => [inci, lowPpm / 1e4, highPpm / 1e4]);

describe('a share belongs to its name, wherever it stands', () => {
  it.each<[string, (string | number)[][]]>([
    ['Sodium Laureth Sulfate, 27 %', [['Sodium Laureth Sulfate', 27, 27]]],
    ['Sodium Laureth Sulfate; 27-28 %', [['Sodium Laureth Sulfate', 27, 28]]],
    ['99,5 % Glycerin', [['Glycerin', 99.5, 99.5]]],
    [
      '70 % Aqua, 30 % Glycerin',
      [
        ['Aqua', 70, 70],
        ['Glycerin', 30, 30],
      ],
    ],
    ['Phenoxyethanol: 90', [['Phenoxyethanol', 90, 90]]],
    [
      'Limonene 0,5; Linalool 1.2',
      [
        ['Limonene', 0.5, 0.5],
        ['Linalool', 1.2, 1.2],
      ],
    ],
    [
      'Aqua, 60 %, Sodium Cocoamphoacetate, 40 %',
      [
        ['Aqua', 60, 60],
        ['Sodium Cocoamphoacetate', 40, 40],
      ],
    ],
    ['Glycerin (> 99 %)', [['Glycerin', 99, 100]]],
    ['Tocopherol [ca. 70 %]', [['Tocopherol', 70, 70]]],
    ['Disodium EDTA (0.1 - 0.2 %)', [['Disodium EDTA', 0.1, 0.2]]],
    ['Citral 150 ppm', [['Citral', 0.015, 0.015]]],
    ['Tocopherol (700 g/kg)', [['Tocopherol', 70, 70]]],
  ])('%s', (text, parts) => {
    expect(names(text)).toEqual(parts);
  });
});

describe('a number that belongs to a name stays there', () => {
  it.each([
    'Polysorbate 20',
    'PEG-40 Hydrogenated Castor Oil',
    'C12-15 Alkyl Benzoate',
    'CI 77891',
    'Polyquaternium-10',
    '1,2-Hexanediol',
    'Steareth-21',
    'Acrylates/C10-30 Alkyl Acrylate Crosspolymer',
    'PPG-15 Stearyl Ether',
    'Disodium Laureth Sulfosuccinate',
    '2-Bromo-2-Nitropropane-1,3-Diol',
    'Titanium Dioxide (nano)',
    'Alkyl Benzoate (C12-15)',
    'Methyl Perfluorobutyl Ether',
    'Vitamin A Palmitate 1.7 Mio IU/g',
  ])('%s', (text) => {
    expect(names(text)).toEqual([[text, 100, 100]]);
  });
});

describe('names parted in the ways of the trade', () => {
  it.each([
    'Aqua; Glycerin',
    'Aqua, Glycerin',
    'Aqua (and) Glycerin',
    'Aqua (und) Glycerin',
    'Aqua (et) Glycerin',
    'Aqua (y) Glycerin',
    'Aqua (e) Glycerin',
    'Aqua + Glycerin',
    'Aqua & Glycerin',
    'Aqua\nGlycerin',
    ' Aqua ;; Glycerin ; ',
  ])('%j is two, of each anything that the other leaves', (text) => {
    expect(names(text)).toEqual([
      ['Aqua', 0, 100],
      ['Glycerin', 0, 100],
    ]);
    expect(lackShares(namesOf(text, null))).toBe(true);
  });

  it('those without a share may be all that the others surely leave', () => {
    expect(names('Aqua, Phenoxyethanol 10-20 %')).toEqual([
      ['Aqua', 0, 90],
      ['Phenoxyethanol', 10, 20],
    ]);
    expect(names('Aqua, Phenoxyethanol 100 %')).toEqual([
      ['Aqua', 0, 0],
      ['Phenoxyethanol', 100, 100],
    ]);
  });

  it('what says that a name is not known is none', () => {
    expect(names('n/a')).toEqual([]);
    expect(names('?')).toEqual([]);
    expect(names('')).toEqual([]);
  });
});

describe('the ends of a share', () => {
  const quantity = (parts: Partial<Quantity>): Quantity => ({
    low: null,
    value: null,
    high: null,
    unit: '%',
    ...parts,
  });
  it('a bound goes to 0 or to 100 %', () => {
    expect(shareEnds(quantity({ high: 5 }))).toEqual([0, 50_000]);
    expect(shareEnds(quantity({ low: 95 }))).toEqual([950_000, 1_000_000]);
    expect(shareEnds(quantity({ value: 0 }))).toEqual([0, 0]);
    expect(shareEnds(quantity({ value: 100 }))).toEqual([1_000_000, 1_000_000]);
  });
  it('is counted in its own unit: 500 ppm, 5 ‰, and the unit of a heading', () => {
    expect(shareEnds(quantity({ value: 500, unit: 'ppm' }))).toEqual([500, 500]);
    expect(shareEnds(quantity({ value: 5, unit: '‰' }))).toEqual([5_000, 5_000]);
    expect(shareEnds(quantity({ value: 500, unit: '' }), 'mg/kg')).toEqual([500, 500]);
  });
  it('is none below 0, above 100 %, and in another unit', () => {
    expect(shareEnds(quantity({ value: -0.1 }))).toBeNull();
    expect(shareEnds(quantity({ value: 100.1 }))).toBeNull();
    expect(shareEnds(quantity({ low: 90, high: 110 }))).toBeNull();
    expect(shareEnds(quantity({ value: 5, unit: '°c' }))).toBeNull();
  });
});

describe('laws of a cell of names', () => {
  const inci = fc.constantFrom(
    'Aqua',
    'Glycerin',
    'Polysorbate 20',
    'C12-15 Alkyl Benzoate',
    'Cetearyl Alcohol',
  );
  const share = fc.integer({ min: 1, max: 200 }).map((n) => n / 10);
  it('order, brackets, colons and sides of the share say the same', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(inci, share), { selector: ([name]) => name, minLength: 2, maxLength: 5 }),
        (parts) => {
          const ways = [
            parts.map(([name, percent]) => `${name} (${percent} %)`).join('; '),
            parts.map(([name, percent]) => `${name}: ${percent} %`).join('; '),
            parts.map(([name, percent]) => `${percent} % ${name}`).join(' + '),
            parts.map(([name, percent]) => `${name}, ${percent} %`).join(', '),
          ].map((text) => names(text));
          for (const way of ways)
            expect(way).toEqual(parts.map(([name, percent]) => [name, percent, percent]));
          const turned = names(
            [...parts]
              .reverse()
              .map(([name, percent]) => `${name} (${percent} %)`)
              .join('; '),
          );
          expect(turned.reverse()).toEqual(ways[0]);
        },
      ),
      { numRuns: 60 },
    );
  });
});
