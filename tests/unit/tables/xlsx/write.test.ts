import type { Cell } from '@core/tables/table';
import { escapeText, unescapeText } from '@core/tables/xlsx/escaped-text';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { lawfulSheetNames } from '@core/tables/xlsx/sheet-names';
import { writeXlsx } from '@core/tables/xlsx/write-xlsx';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { refusalOf } from './hand-built';

const HEAD = ['Trade name', 'HLB', 'Tested'];
const ROWS: Cell[][] = [
  ['Velmora VQ 7', 10.5, { date: '2026-03-01' }],
  [null, null, null],
  ['=SUM(A1:A9)', true, { date: '2026-03-01T09:30:15' }],
  ['', { error: '#DIV/0!' }],
];
const STOCK = { name: 'Stock', head: HEAD, rows: ROWS };
const written = (rows: Cell[][]) => readXlsx(writeXlsx([{ name: 'T', head: ['H'], rows }]))[0]!;
const partsOf = (bytes: Uint8Array) =>
  Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));

describe('a written table', () => {
  it('is read back with its head, its cells, and its empty row left out', () => {
    expect(readXlsx(writeXlsx([STOCK]))).toEqual([
      {
        name: 'Stock',
        hidden: false,
        notes: [],
        rows: [
          { line: 1, hidden: false, cells: HEAD },
          { line: 2, hidden: false, cells: ROWS[0] },
          { line: 4, hidden: false, cells: ROWS[2] },
          { line: 5, hidden: false, cells: [null, { error: '#DIV/0!' }] },
        ],
      },
    ]);
  });

  it('has a bold head that stays in sight, columns as wide as they need, dates as dates', () => {
    const parts = partsOf(writeXlsx([{ ...STOCK, rows: [['x'.repeat(400), 1, { date: '2026-03-01' }]] }]));
    const sheet = parts['xl/worksheets/sheet1.xml']!;
    expect(sheet).toContain('<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>');
    expect(sheet).toContain('<c r="A1" s="1" t="s">');
    expect(sheet).toContain('<c r="C2" s="2"><v>46082</v></c>');
    expect([...sheet.matchAll(/width="(\d+)"/g)].map(([, width]) => Number(width))).toEqual([60, 8, 12]);
    expect(parts['xl/styles.xml']).toMatch(/<cellXfs.*?<xf[^>]*fontId="0".*?<xf[^>]*fontId="1"/);
    expect(parts['xl/styles.xml']).toContain('<font><b/>');
  });

  it('never holds a formula, and marks a text that looks like one', () => {
    const texts = ['=1+1', '+1', '-1', '@x', '=HYPERLINK("http://example.org")'];
    const sheet = partsOf(writeXlsx([{ name: 'T', head: ['=A1'], rows: [texts] }]))[
      'xl/worksheets/sheet1.xml'
    ]!;
    expect(sheet).not.toContain('<f');
    expect(sheet.match(/s="4" t="s"/g)).toHaveLength(texts.length);
    expect(written([texts]).rows[1]!.cells).toEqual(texts);
  });

  it('gives the same bytes for the same table', () => {
    expect(Buffer.from(writeXlsx([STOCK])).equals(Buffer.from(writeXlsx([structuredClone(STOCK)])))).toBe(
      true,
    );
    const other = writeXlsx([{ ...STOCK, name: 'Shelf' }]);
    expect(Buffer.from(writeXlsx([STOCK])).equals(Buffer.from(other))).toBe(false);
  });

  it('keeps as text what no spreadsheet has as a value', () => {
    const cells: Cell[] = [
      { date: '1899-12-31' },
      { date: '1900-02-28T08:00:00' },
      { date: '2026-02-30' },
      { error: '#SPILL!' },
      Infinity,
      -0,
    ];
    expect(written([cells]).rows[1]!.cells).toEqual([
      '1899-12-31',
      '1900-02-28 08:00:00',
      '2026-02-30',
      '#SPILL!',
      { error: '#NUM!' },
      0,
    ]);
  });

  it('may have no head, no rows, and several sheets of like names', () => {
    const sheets = [
      { name: 'A', head: [], rows: [[1]] },
      { name: 'a', head: ['x'], rows: [] },
      { name: '', head: [], rows: [] },
    ];
    expect(
      readXlsx(writeXlsx(sheets)).map(({ name, rows }) => [name, rows.map((row) => [row.line, row.cells])]),
    ).toEqual([
      ['A', [[1, [1]]]],
      ['a (2)', [[1, ['x']]]],
      ['Sheet', []],
    ]);
  });

  it('is refused where it does not fit, and it is said where', () => {
    const table = (rows: Cell[][]) => refusalOf(() => writeXlsx([{ name: 'Lots', head: ['A'], rows }]));
    expect(table([[1, 'x'.repeat(32_768)]]).message).toMatch(/text in B2 of “Lots” is longer/);
    expect(table([Array.from({ length: 16_385 }, () => 1)]).message).toMatch(/more rows or columns/);
    expect(table(Array.from({ length: 1_048_576 }, () => [])).message).toMatch(/more rows or columns/);
    expect(refusalOf(() => writeXlsx([])).message).toMatch(/nothing to save/);
    expect(written([['x'.repeat(32_767)]]).rows[1]!.cells).toEqual(['x'.repeat(32_767)]);
  });
});

describe('a name of a sheet', () => {
  it('is made lawful', () => {
    const names = [
      '[a]:b*c?d/e\\f',
      "'quoted'",
      '   ',
      'History',
      'tab\there',
      'x'.repeat(40),
      '\ud800',
      `${'x'.repeat(30)}😀`,
    ];
    const long = 'x'.repeat(31);
    expect(lawfulSheetNames(names)).toEqual([
      'a b c d e f',
      'quoted',
      'Sheet',
      'History sheet',
      'tab here',
      long,
      '\ufffd',
      'x'.repeat(30),
    ]);
  });

  it('is told apart from the others in 31 letters', () => {
    const names = lawfulSheetNames(Array.from({ length: 12 }, () => `Formula ${'x'.repeat(40)}`));
    expect(new Set(names).size).toBe(12);
    expect(names[11]).toBe(`Formula ${'x'.repeat(18)} (12)`);
    expect(lawfulSheetNames(['A', 'a', 'a (2)'])).toEqual(['A', 'a (2)', 'a (2) (2)']);
  });
});

describe('escaping', () => {
  it('is as the format has it, and undone by reading', () => {
    const cases = [
      ['\b', '_x0008_'],
      ['_x0008_', '_x005F_x0008_'],
      ['_x0041\u0001', '_x005F_x0041_x0001_'],
      ['a\r\n\tb', 'a_x000D_\n\tb'],
      ['_\u0000_', '__x0000__'],
      ['\ud800\ud800\udc00\udc00', '_xD800_\ud800\udc00_xDC00_'],
      ['_x12_', '_x12_'],
    ] as const;
    for (const [text, escaped] of cases) {
      expect(escapeText(text)).toBe(escaped);
      expect(unescapeText(escaped)).toBe(text);
    }
  });
});
