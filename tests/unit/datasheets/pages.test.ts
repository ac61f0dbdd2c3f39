import { headsOf } from '@core/datasheets/grid';
import { around, linesOf, lineText, overlap, type PageText, type TextItem } from '@core/datasheets/lines';
import { pageText } from '@core/datasheets/page-text';
import { readDataSheet } from '@core/datasheets/read-data-sheet';
import { titleOf } from '@core/datasheets/trade-name';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** Letters are about half as wide as high. */
const item = (text: string, x: number, y: number, height = 10): TextItem => ({
  text,
  x,
  y,
  height,
  width: text.length * height * 0.5,
});
const page = (items: TextItem[], number = 1): PageText => ({ number, width: 595, height: 842, items });
/** Rows of texts, each at 50, 250 and 400 points. */
const rows = (...all: string[][]): PageText =>
  page(
    all.flatMap((texts, at) =>
      texts.flatMap((text, column) =>
        text === '' ? [] : [item(text, [50, 250, 400][column]!, 100 + at * 16)],
      ),
    ),
  );
const read = (...pages: PageText[]) =>
  Object.fromEntries(readDataSheet(pages).proposals.map(({ key, value, sure }) => [key, [value, sure]]));

describe('the lines of a page', () => {
  it('are words of one height, from left to right, parted where a column begins', () => {
    const lines = linesOf([
      page([item('12', 300, 101), item('value', 72, 100.5), item('HLB', 50, 100), item('pH', 50, 120)]),
    ]);
    expect(lines.map(lineText)).toEqual(['HLB value  12', 'pH']);
    expect(lines[0]?.cells.map(({ text }) => text)).toEqual(['HLB value', '12']);
  });
  it('part at a row of points, of underscores, and at tabs', () => {
    for (const text of ['HLB ........ 12', 'HLB______12', 'HLB\t\t12', 'HLB     12'])
      expect(
        linesOf([page([item(text, 50, 100)])])[0]?.cells.map((cell) => cell.text),
        text,
      ).toEqual(['HLB', '12']);
  });
  it('do not hang on the order in which a file holds its pieces', () => {
    const pieces = ['HLB', 'pH', 'Form', 'INCI'].flatMap((text, at) => [
      item(text, 50, 100 + at * 16),
      item('1', 300, 100 + at * 16),
    ]);
    const whole = linesOf([page(pieces)]).map(lineText);
    fc.assert(
      fc.property(fc.shuffledSubarray(pieces, { minLength: pieces.length }), (turned) => {
        expect(linesOf([page(turned)]).map(lineText)).toEqual(whole);
      }),
      { numRuns: 30 },
    );
  });
  it('the box around some holds each of them, and two apart share nothing', () => {
    const [a, b] = [item('HLB', 50, 100), item('12', 300, 104)];
    expect(around([a, b])).toEqual({ x: 50, y: 100, width: 260, height: 14 });
    expect(overlap(a, b)).toBeLessThan(0);
    expect(overlap(a, a)).toBe(a.width);
  });
  it('without text are none: a scanned sheet says so', () => {
    expect(readDataSheet([page([])])).toEqual({ proposals: [], hasText: false });
    expect(readDataSheet([page([item('  ', 50, 50)])]).hasText).toBe(false);
  });
});

describe('text as a reader of PDF places it (ISO 32000-1, 9.4.4)', () => {
  const placed = (str: string, transform: number[]) => ({ str, transform, width: 30, height: 10 });
  it('is turned to stand from the upper left corner', () => {
    const { items } = pageText(3, { width: 595, height: 842 }, [placed('HLB', [10, 0, 0, 10, 50, 732])]);
    expect(items).toEqual([{ text: 'HLB', x: 50, y: 100, width: 30, height: 10 }]);
  });
  it('leaves out a watermark, what stands up the margin, what stands on its head, and blanks', () => {
    const { items } = pageText(1, { width: 595, height: 842 }, [
      placed('DRAFT', [7, 7, -7, 7, 50, 500]),
      placed('margin', [0, 10, -10, 0, 20, 500]),
      placed('head', [-10, 0, 0, -10, 50, 500]),
      placed('   ', [10, 0, 0, 10, 50, 500]),
    ]);
    expect(items).toEqual([]);
  });
});

describe('a table of properties', () => {
  it('is known by its heads, in four languages', () => {
    const heads = (...texts: string[]) => headsOf(linesOf([rows(texts)])[0]!)?.map(({ role }) => role);
    expect(heads('Property', 'Value', 'Method')).toEqual(['property', 'value', 'method']);
    expect(heads('Eigenschaft', 'Spezifikation', 'Einheit')).toEqual(['property', 'value', 'unit']);
    expect(heads('Propriétés', 'Valeurs', 'Unités')).toEqual(['property', 'value', 'unit']);
    expect(heads('Parámetros', 'Mín.', 'Máx.')).toEqual(['property', 'min', 'max']);
    expect(heads('HLB', '12', 'calculated')).toBeUndefined();
  });
  it('is read by its columns: the value, not the method', () => {
    expect(
      read(
        rows(
          ['Property', 'Value', 'Method'],
          ['HLB', '14 – 16', 'Griffin'],
          ['Acid value, mg KOH/g', '0.5', 'ISO 660'],
        ),
      ),
    ).toEqual({
      'figures.hlb': [{ low: 14, value: null, high: 16 }, 'sure'],
      'figures.acidValue': [{ low: null, value: 0.5, high: null }, 'sure'],
    });
  });
  it('of two values without heads says nothing: which is meant is not told', () => {
    expect(read(rows(['HLB', '12', '14']))).toEqual({});
    expect(read(rows(['HLB', '12', '']))).toEqual({
      'figures.hlb': [{ low: null, value: 12, high: null }, 'sure'],
    });
  });
  it('said twice alike is said once; said in two ways is only asked about', () => {
    expect(read(rows(['HLB', '12'], ['Form', 'pellets'], ['HLB value', '12']))['figures.hlb']).toEqual([
      { low: null, value: 12, high: null },
      'sure',
    ]);
    const { proposals } = readDataSheet([rows(['HLB', '12'], ['Form', 'pellets'], ['HLB value', '14'])]);
    const found = proposals.filter(({ key }) => key === 'figures.hlb');
    expect(found.map(({ value, sure }) => [(value as { value: number }).value, sure])).toEqual([
      [12, 'unsure'],
      [14, 'unsure'],
    ]);
    expect(found[0]?.note).toBe('The sheet says this in more than one way. Check which is right.');
  });
  it('names the page and the line of each', () => {
    const second = { ...rows(['HLB', '12']), number: 2 };
    const [one] = readDataSheet([rows(['Storage advice', 'ask']), second]).proposals.filter(
      ({ key }) => key === 'figures.hlb',
    );
    expect(one).toMatchObject({ page: 2, line: 'HLB  12' });
  });
});

describe('the title of a sheet', () => {
  const title = (...items: TextItem[]) =>
    titleOf(
      linesOf([page([...items, item('Some longer text of the usual size stands here.', 50, 400)])]),
      842,
    )?.value;
  it('is what is set largest near the top, without the kind of paper', () => {
    expect(title(item('Technical Data Sheet', 50, 50, 14), item('Alba Wax 12®', 50, 80, 20))).toBe(
      'Alba Wax 12',
    );
    expect(title(item('Produktdatenblatt: Alba Wachs', 50, 50, 18))).toBe('Alba Wachs');
    expect(title(item('Fiche technique – Cire Alba', 50, 50, 18))).toBe('Cire Alba');
  });
  it('is none where it is only the kind of paper, an address, a label, a sentence, or no larger than the rest', () => {
    for (const text of [
      'Technical Data Sheet',
      'www.example.org',
      'HLB: 12',
      'A wax for all creams.',
      '2026',
    ])
      expect(title(item(text, 50, 50, 18)), text).toBeUndefined();
    expect(title(item('Alba Wax 12', 50, 50, 10))).toBeUndefined();
    expect(title(item('Alba Wax 12', 50, 600, 20))).toBeUndefined();
  });
});
