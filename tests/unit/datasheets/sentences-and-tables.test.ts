import type { PageText, TextItem } from '@core/datasheets/lines';
import { readDataSheet } from '@core/datasheets/read-data-sheet';
import { describe, expect, it } from 'vitest';

/* Pages as a reader of PDF gives them: invented sheets, letters about half as wide as high. */
const item = (text: string, x: number, y: number, height = 10): TextItem => ({
  ...{ text, x, y, height },
  width: text.length * height * 0.5,
});
const page = (items: TextItem[]): PageText => ({ number: 1, width: 595, height: 842, items });
/** Rows of texts at 50, 250 and 400 points. */
const rows = (...all: string[][]): PageText =>
  page(
    all.flatMap((texts, at) =>
      texts.flatMap((text, column) =>
        text === '' ? [] : [item(text, [50, 250, 400][column]!, 100 + at * 16)],
      ),
    ),
  );
const sentence = (text: string): PageText => page([item(text, 50, 100)]);
const read = (of: PageText): Record<string, unknown> =>
  Object.fromEntries(readDataSheet([of]).proposals.map(({ key, value }) => [key, value]));
const one = (value: number) => ({ low: null, value, high: null });
const between = (low: number, high: number) => ({ low, value: null, high });
const part = (inci: string, low: number, high = low) => ({
  inci,
  lowPpm: low * 10_000,
  highPpm: high * 10_000,
});

describe('what a sentence says of the material', () => {
  it.each<[string, string, unknown]>([
    ['The HLB value is approximately 12.', 'figures.hlb', one(12)],
    ['The product has an HLB of 15 and is easily used.', 'figures.hlb', one(15)],
    ['Das Produkt hat einen HLB-Wert von etwa 11,5 und ist hell.', 'figures.hlb', one(11.5)],
    ['The melting point of the wax is about 62 °C.', 'figures.meltingPoint', one(62)],
    ['It melts between 60 and 65 °C and sets again.', 'figures.meltingPoint', between(60, 65)],
    ['Das Produkt schmilzt bei ca. 55 °C.', 'figures.meltingPoint', one(55)],
    ['The acid value is 2 mg KOH/g.', 'figures.acidValue', one(2)],
    ['The density amounts to 0.95 g/ml.', 'figures.density', one(0.95)],
  ])('%s', (text, key, value) => {
    expect(read(sentence(text))[key]).toEqual(value);
  });

  it.each([
    'The HLB value of the blend should be adjusted to 12.',
    'The required HLB of the oil phase is 12.',
    'Together with a co-emulsifier the HLB value is 12.',
    'Emulsions with an HLB of 12 are stable.',
    'Another wax melts between 60 and 65 °C.',
    'The oil phase melts at 75 °C in the vessel.',
    'Die erforderliche Temperatur der Fettphase ist 75 °C.',
  ])('“%s” is of something else, and left out', (text) => {
    const found = read(sentence(text));
    expect(found['figures.hlb']).toBeUndefined();
    expect(found['figures.meltingPoint']).toBeUndefined();
  });

  it('is never surer than likely, however plain it is', () => {
    const { proposals } = readDataSheet([sentence('The HLB value is 12.')]);
    expect(proposals.map(({ key, sure }) => [key, sure])).toEqual([['figures.hlb', 'likely']]);
  });

  it('runs over the end of a line, and a word that is broken there is whole again', () => {
    const lines = ['The saponifica-', 'tion value is', '160 mg KOH/g.'];
    const found = read(page(lines.map((text, at) => item(text, 50, 100 + at * 13))));
    expect(found['figures.saponificationValue']).toEqual(one(160));
  });

  it('ends where the next one begins: what follows is not of its label', () => {
    const found = read(sentence('The HLB value is 12. The acid value is 2 mg KOH/g.'));
    expect(found).toMatchObject({ 'figures.hlb': one(12), 'figures.acidValue': one(2) });
  });

  it('says where it stands: its page and its own words', () => {
    const [found] = readDataSheet([sentence('The HLB value is 12. It is a wax of many uses.')]).proposals;
    expect(found).toMatchObject({ page: 1, line: 'The HLB value is 12.' });
  });
});

describe('a table of what a blend is made of', () => {
  it('is read row by row: names, shares, CAS numbers', () => {
    const found = read(
      rows(
        ['INCI name', 'Content %', 'CAS no.'],
        ['Cetearyl Alcohol', '70 – 80', '67762-27-0'],
        ['Ceteareth-20', '20 – 30', '68439-49-6'],
      ),
    );
    expect(found.composition).toEqual([part('Cetearyl Alcohol', 70, 80), part('Ceteareth-20', 20, 30)]);
    expect(found.casNumbers).toBe('67762-27-0, 68439-49-6');
  });

  it('ends before its total, and before what is no part of it', () => {
    const found = read(
      rows(['INCI', 'Content %'], ['Glycerin', '60'], ['Aqua', '40'], ['Total', '100'], ['HLB', '12']),
    );
    expect(found.composition).toEqual([part('Glycerin', 60), part('Aqua', 40)]);
    expect(found['figures.hlb']).toEqual(one(12));
  });

  it('counts what is filled up to 100 as anything that may be left', () => {
    const found = read(rows(['INCI', 'Content %'], ['Sodium Benzoate', '30'], ['Aqua', 'ad 100']));
    expect(found.composition).toEqual([part('Sodium Benzoate', 30), part('Aqua', 0, 100)]);
  });

  it('joins a name that runs over two lines', () => {
    const found = read(
      page([
        ...[item('INCI', 50, 100), item('Content %', 250, 100)],
        ...[
          item('Acrylates/C10-30 Alkyl', 50, 116),
          item('95', 250, 116),
          item('Acrylate Crosspolymer', 50, 128),
        ],
        ...[item('Aqua', 50, 144), item('5', 250, 144)],
      ]),
    );
    expect(found.composition).toEqual([
      part('Acrylates/C10-30 Alkyl Acrylate Crosspolymer', 95),
      part('Aqua', 5),
    ]);
  });

  it('of which a share cannot be read tells no composition: half of one would be a wrong one', () => {
    const found = read(rows(['INCI', 'Content %'], ['Glycerin', 'about half'], ['Aqua', '40']));
    expect(found.composition).toBeUndefined();
  });

  it('that passes 100 % tells none, and one that falls short is only asked about', () => {
    expect(read(rows(['INCI', 'Content %'], ['Glycerin', '70'], ['Aqua', '40'])).composition).toBeUndefined();
    const { proposals } = readDataSheet([rows(['INCI', 'Content %'], ['Glycerin', '50'], ['Aqua', '40'])]);
    expect(proposals.map(({ key, sure, note }) => [key, sure, note])).toEqual([
      ['composition', 'unsure', 'The shares do not come to 100 %: some of it may not be named.'],
    ]);
  });

  it('with a CAS number whose last digit is wrong takes none of them, and the names all the same', () => {
    const found = read(
      rows(['INCI', 'Content %', 'CAS'], ['Glycerin', '60', '56-81-6'], ['Aqua', '40', '7732-18-5']),
    );
    expect(found.casNumbers).toBeUndefined();
    expect(found.composition).toEqual([part('Glycerin', 60), part('Aqua', 40)]);
  });
});

describe('two places of a sheet', () => {
  it('that agree make one: a range and the figure within it are both kept', () => {
    const { proposals } = readDataSheet([rows(['HLB', '11 – 13'], ['Form', 'pellets'], ['HLB value', '12'])]);
    const found = proposals.filter(({ key }) => key === 'figures.hlb');
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ value: { low: 11, high: 13 } });
    expect(found[0]?.sure).not.toBe('unsure');
  });

  it('that do not are both shown, for the maker to choose', () => {
    const { proposals } = readDataSheet([rows(['HLB', '11 – 13'], ['Form', 'pellets'], ['HLB value', '14'])]);
    const found = proposals.filter(({ key }) => key === 'figures.hlb');
    expect(found.map(({ value, sure }) => [value, sure])).toEqual([
      [between(11, 13), 'unsure'],
      [one(14), 'unsure'],
    ]);
  });
});
