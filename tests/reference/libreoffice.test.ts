import { demoLibrary } from '@core/demo/demo-library';
import { fieldColumns } from '@core/exports/field-columns';
import { savedTable, withoutEmptyColumns } from '@core/exports/saved-table';
import { MATERIAL_FIELDS } from '@core/materials/fields';
import { inert } from '@core/tables/csv';
import type { Cell, Sheet } from '@core/tables/table';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { writeXlsx } from '@core/tables/xlsx/write-xlsx';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { cell, emptyRows, flatFile, gap, paragraph, row, sheet, textCell } from './libreoffice/flat-sheet';
import { converted, haveLibreOffice } from './libreoffice/soffice';

/* Held against LibreOffice Calc (Debian's libreoffice-calc): it writes what we read, and reads what we write. */

const formula = (text: string, type: string, value: string | number) =>
  cell(type, value, '', `table:formula="of:=${text}"`);
const column = (rest = '') => `<table:table-column ${rest}/>`;

const STOCK = sheet(
  'Rohstoffe',
  column() +
    column('table:visibility="collapse"') +
    row(
      textCell(
        paragraph('Rohstoffe 2026'),
        'table:number-columns-spanned="3" table:number-rows-spanned="1"',
      ) +
        '<table:covered-table-cell office:value-type="string"><text:p>unseen</text:p></table:covered-table-cell>',
    ) +
    emptyRows(2) +
    row(
      textCell(paragraph('Cetyl <text:span>alcohol</text:span><text:s text:c="2"/>')) +
        textCell(paragraph('two') + paragraph('lines')) +
        gap(2) +
        cell('float', 0.1) +
        cell('percentage', 0.055, 'percent') +
        cell('currency', 12.5, 'money', 'office:currency="EUR"'),
    ) +
    row(
      cell('date', '2026-03-01', 'date') +
        cell('date', '2026-03-01T09:30:00', 'moment') +
        cell('date', '1900-03-01', 'date') +
        cell('date', '9999-12-31', 'date') +
        cell('time', 'PT09H30M00S', 'time') +
        cell('time', 'PT36H00M00S', 'elapsed') +
        cell('boolean', true, 'logical'),
      'table:visibility="collapse"',
    ) +
    row(
      formula('1+1', 'float', 2) +
        formula('1/0', 'float', 0) +
        formula('NA()', 'float', 0) +
        formula('[.A4]&amp;&quot;!&quot;', 'string', '') +
        formula('TRUE()', 'boolean', 'true') +
        formula('&quot;&quot;', 'string', ''),
      'table:visibility="filter"',
    ) +
    emptyRows(100) +
    row(textCell(paragraph('_x0041_ &lt;&amp;&gt; 乳化'))),
);
const MADE = flatFile(
  STOCK +
    sheet('Versteckt', row(cell('float', 1)), 'table:style-name="hidden"') +
    sheet('Leer', row('<table:table-cell/>')),
);
const SINCE_1904 = flatFile(
  sheet('Since 1904', row(cell('date', '2026-03-01', 'date') + cell('date', '1904-01-01', 'date'))),
  '<table:calculation-settings><table:null-date table:date-value="1904-01-01"/></table:calculation-settings>',
);

/** Every kind of cell, and texts that another program could take for something else. */
const OURS: Cell[][] = [
  ['=1+1', 15.5, { date: '2026-03-01' }, { date: '2026-03-01T09:30:15' }, true, { error: '#N/A' }],
  [
    '“q” "q", ; _x0041_',
    1e-9,
    { date: '1900-03-01' },
    { date: '9999-12-31T23:59:59' },
    false,
    { error: '#DIV/0!' },
  ],
  ['  two  blanks ', -1234567890.125, null, null, 0],
  ['00123', '7732-18-5', '1/2', 'TRUE', '5%', '-x'],
  ['first\nsecond', '@x', "'quoted", '#N/A', '2026-03-01', '1e3'],
  ['乳化 😀 é', 'A\ta'],
];
const OUR_HEAD = ['Trade name', 'HLB', 'Tested', 'At', 'Natural', 'Sum'];
const ours = () =>
  writeXlsx([
    { name: 'Stock', head: OUR_HEAD, rows: OURS },
    { name: 'Maker’s [2]', head: ['a'], rows: [[1]] },
  ]);

/** German, as many makers have it: `;`, decimal comma, day first. */
const CSV = [
  'Handelsname;HLB;Geprüft;Anteil;Preis;Nr.',
  'Cetearyl-Alkohol;15,5;01.03.2026;5%;1.234,50;00123',
  '"Wachs; ""weiß""";-0,25;31.12.1999;12,5%;;7732-18-5',
].join('\r\n');
/** The fields are `;` and `"`, UTF-8, from line 1, German, unquoted text is looked at for numbers. */
const GERMAN = 'CSV:59,34,76,1,,1031,false,true';

/** The demonstration's shelf as its list is saved. */
const COLUMNS = fieldColumns(MATERIAL_FIELDS, 'en-GB');
const LIST = withoutEmptyColumns({
  name: 'Raw materials',
  head: COLUMNS.map(({ heading }) => heading),
  rows: demoLibrary().materials.map((one) => COLUMNS.map(({ cell }) => cell({ ...one }))),
});
const DANGER = {
  name: 'Danger',
  head: ['Name', 'Note'],
  rows: [
    ['=1+1', 'a'],
    ['@SUM(A1)', '-x'],
    ['+x', "'=2"],
  ],
};
/** Rows are read up to their last cell. */
const withoutEmptyEnd = (cells: Cell[]): Cell[] =>
  cells.slice(0, cells.findLastIndex((cell) => cell !== null) + 1);

const cellsOf = (sheets: Sheet[], at = 0) => sheets[at]!.rows.map((read) => read.cells);

describe.skipIf(!haveLibreOffice())('against LibreOffice', () => {
  let written: Map<string, Buffer> | undefined;
  const sheetsOf = (name: string) => {
    written ??= converted(
      {
        'made.fods': MADE,
        'since.fods': SINCE_1904,
        'ours.xlsx': ours(),
        'list.xlsx': savedTable([LIST], 'xlsx', 'en-GB'),
        'danger.csv': savedTable([DANGER], 'csv', 'en-GB'),
      },
      'xlsx',
    );
    return readXlsx(written.get(name)!);
  };

  it('what it writes is read: texts, numbers, per cent, dates, times, formulas, errors', () => {
    const [stock, hidden, empty] = sheetsOf('made.xlsx');
    expect(stock!.rows).toEqual([
      { line: 1, hidden: false, cells: ['Rohstoffe 2026'] },
      { line: 4, hidden: false, cells: ['Cetyl alcohol  ', 'two\nlines', null, null, 0.1, '5.5%', '12.5 €'] },
      {
        line: 5,
        hidden: true,
        cells: [
          { date: '2026-03-01' },
          { date: '2026-03-01T09:30:00' },
          { date: '1900-03-01' },
          { date: '9999-12-31' },
          '09:30',
          '36:00',
          true,
        ],
      },
      {
        line: 6,
        hidden: true,
        cells: [2, { error: '#DIV/0!' }, { error: '#N/A' }, 'Cetyl alcohol  !', true],
      },
      { line: 107, hidden: false, cells: ['_x0041_ <&> 乳化'] },
    ]);
    expect(stock!.notes).toEqual([
      'The cells A1:C1 are merged: their value is read in the first of them only.',
      'Column B is hidden; it is read all the same.',
    ]);
    expect(hidden).toMatchObject({ name: 'Versteckt', hidden: true, rows: [{ cells: [1] }], notes: [] });
    expect(empty).toEqual({ name: 'Leer', hidden: false, rows: [], notes: [] });
  });

  it('what it counts since 1904 is read so', () => {
    expect(cellsOf(sheetsOf('since.xlsx'))).toEqual([[{ date: '2026-03-01' }, { date: '1904-01-01' }]]);
  });

  it('a CSV that it saves as a spreadsheet is read with its numbers and dates', () => {
    const sheets = readXlsx(converted({ 'stock.csv': CSV }, 'xlsx', GERMAN).get('stock.xlsx')!);
    expect(cellsOf(sheets)).toEqual([
      ['Handelsname', 'HLB', 'Geprüft', 'Anteil', 'Preis', 'Nr.'],
      ['Cetearyl-Alkohol', 15.5, { date: '2026-03-01' }, '5%', 1234.5, 123],
      ['Wachs; "weiß"', -0.25, { date: '1999-12-31' }, '12.5%', null, '7732-18-5'],
    ]);
  });

  it('what we write it opens, and saves with the same cells and names', () => {
    const sheets = sheetsOf('ours.xlsx');
    expect(sheets.map((read) => read.name)).toEqual(['Stock', 'Maker’s 2']);
    expect(cellsOf(sheets)).toEqual([OUR_HEAD, ...OURS]);
    expect(cellsOf(sheets, 1)).toEqual([['a'], [1]]);
  });

  it('a list of ours that is saved as a spreadsheet it opens with the same cells', () => {
    expect(cellsOf(sheetsOf('list.xlsx'))).toEqual([LIST.head, ...LIST.rows.map(withoutEmptyEnd)]);
  });

  it('what would run as a formula does not, in a list of ours that is saved as text', () => {
    const [, ...rows] = cellsOf(sheetsOf('danger.xlsx'));
    // The mark stands before them as text; our own reader takes it off again.
    expect(rows).toEqual(DANGER.rows.map((cells) => cells.map(inert)));
  });

  it('what we write it opens, and says the same values in words', () => {
    // Fields are `,` and `"`, UTF-8, English, and what the cells show; of every sheet (the last token).
    const filter = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,1033,false,true,false,false,false,-1';
    const files = converted({ 'ours.xlsx': ours() }, filter);
    const [head, ...rows] = Papa.parse<string[]>(
      files.get('ours-Stock.csv')!.toString('utf8').trimEnd(),
    ).data;
    expect(head).toEqual(OUR_HEAD);
    const words = (value: Cell = null): string => {
      if (value === null) return '';
      if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
      if (typeof value === 'object') return 'date' in value ? value.date.replace('T', ' ') : value.error;
      return value === 1e-9 ? '0.000000001' : String(value);
    };
    expect(rows).toEqual(OURS.map((cells) => OUR_HEAD.map((_, at) => words(cells[at]))));
  });
});
