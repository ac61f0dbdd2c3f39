import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { describe, expect, it } from 'vitest';
import {
  parts,
  relationships,
  sheetEntry,
  sheetOf,
  sharedStrings,
  workbook,
  worksheet,
  zipped,
} from './hand-built';

const number = (at: string, value: number) => `<c r="${at}"><v>${value}</v></c>`;
const numbers = (...all: number[]) => all.map((value) => `<c><v>${value}</v></c>`).join('');
const read = (sheet: string, more: Record<string, string | null> = {}) =>
  readXlsx(zipped(parts(sheet, more)))[0]!;

describe('a worksheet', () => {
  it('keeps gaps, leaves empty rows out, and numbers the rest as the sheet does', () => {
    const rows =
      `<row r="2">${number('B2', 1)}${number('D2', 2)}<c r="E2"/></row>` +
      `<row r="4"><c r="A4" s="0"/></row><row r="7">${number('A7', 3)}</row>`;
    expect(sheetOf(rows).rows).toEqual([
      { line: 2, hidden: false, cells: [null, 1, null, 2] },
      { line: 7, hidden: false, cells: [3] },
    ]);
  });

  it('counts rows and cells on where they do not say their place', () => {
    const rows = `<row>${numbers(1, 2)}</row><row r="5"><c r="C5"><v>3</v></c>${numbers(4)}</row><row>${numbers(5)}</row>`;
    expect(sheetOf(rows).rows.map(({ line, cells }) => [line, cells])).toEqual([
      [1, [1, 2]],
      [5, [null, null, 3, 4]],
      [6, [5]],
    ]);
  });

  it('is put in order where its rows and cells are not', () => {
    const rows = `<row r="3">${number('C3', 3)}${number('A3', 1)}</row><row r="1">${number('A1', 0)}</row>`;
    expect(sheetOf(rows).rows.map(({ line, cells }) => [line, cells])).toEqual([
      [1, [0]],
      [3, [1, null, 3]],
    ]);
  });

  it('reaches to its last row and column', () => {
    const [row] = sheetOf(`<row r="1048576">${number('XFD1048576', 9)}</row>`).rows;
    expect([row!.line, row!.cells.length, row!.cells.at(-1)]).toEqual([1048576, 16384, 9]);
  });

  it('tells hidden rows, and which hidden columns hold something', () => {
    const rows = `<row hidden="1">${numbers(1, 2, 3)}</row><row hidden="0">${numbers(4)}</row>`;
    const columns = '<cols><col min="2" max="3" hidden="1"/><col min="9" max="16384" hidden="true"/></cols>';
    const sheet = read(worksheet(rows, columns));
    expect(sheet.rows.map((row) => row.hidden)).toEqual([true, false]);
    expect(sheet.notes).toEqual(['Columns B, C are hidden; they are read all the same.']);
  });

  it('leaves out what a later program added', () => {
    const later =
      '<mc:AlternateContent><mc:Choice><row><c><v>9</v></c></row></mc:Choice></mc:AlternateContent>' +
      '<extLst><ext><sheetData><row r="1"><c r="A1"><v>9</v></c></row></sheetData></ext></extLst>';
    expect(read(worksheet(`<row>${numbers(1)}</row>`, '', later)).rows).toHaveLength(1);
  });

  it('may use a prefix for its vocabulary, and be written in UTF-16', () => {
    const sheet =
      '<x:worksheet xmlns:x="m"><x:sheetData><x:row><x:c><x:v>5</x:v></x:c></x:row></x:sheetData></x:worksheet>';
    expect(read(sheet).rows[0]!.cells).toEqual([5]);
    const wide = Uint8Array.from(
      Buffer.from(`\ufeff<?xml version="1.0" encoding="UTF-16"?>${sheet}`, 'utf16le'),
    );
    const files = { ...parts(''), 'xl/worksheets/sheet1.xml': wide };
    expect(readXlsx(zipped(files))[0]!.rows[0]!.cells).toEqual([5]);
  });
});

describe('merged cells', () => {
  const rows = `<row r="1">${numbers(1, 2, 3)}</row><row r="2">${numbers(4, 5, 6)}</row><row r="9">${numbers(7)}</row>`;
  const merged = (...all: string[]) =>
    read(
      worksheet(
        rows,
        '',
        `<mergeCells>${all.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`,
      ),
    );

  it('hold their value in the first only, and the note says where', () => {
    const sheet = merged('A1:B2', 'C2:C9');
    expect(sheet.rows.map((row) => row.cells)).toEqual([[1, null, 3], [null, null, 6], [7]]);
    expect(sheet.notes).toEqual([
      'Cells are merged in 2 places, the first at A1:B2: the value of each is read in its first cell only.',
    ]);
  });

  it('leave out a row that they alone filled', () => {
    expect(merged('A1:XFD2').rows.map((row) => [row.line, row.cells])).toEqual([
      [1, [1]],
      [9, [7]],
    ]);
  });

  it('are not told of where nothing stands', () => {
    expect(merged('A3:C5', 'F1:G9', 'A20:B21').notes).toEqual([]);
  });
});

describe('formulas', () => {
  const formulas = '<c><f>A1</f></c><c><f>A2</f><v/></c><c><f>A3</f><v>3</v></c>';

  it('without a value are read as empty, and the note says how many and where the first is', () => {
    const sheet = sheetOf(`<row r="4">${formulas}</row>`);
    expect(sheet.rows[0]!.cells).toEqual([null, null, 3]);
    expect(sheet.notes[0]).toMatch(/^2 formulas have no value kept with them, the first in A4; /);
    const one = sheetOf('<row><c r="C1"><f>A1</f></c></row>');
    expect(one.rows).toEqual([]);
    expect(one.notes[0]).toMatch(/^The formula in C1 has no value/);
  });

  it('whose file asks for them to be worked out anew may have old values', () => {
    const book = workbook(sheetEntry('Stock', 's1'), '', '<calcPr calcId="1" fullCalcOnLoad="1"/>');
    const sheet = read(worksheet('<row><c><f>A9</f><v>0</v></c></row>'), { 'xl/workbook.xml': book });
    expect(sheet.notes[0]).toMatch(/the value kept with the formula in A1 may be old/);
    expect(read(worksheet('<row><c><v>0</v></c></row>'), { 'xl/workbook.xml': book }).notes).toEqual([]);
  });
});

describe('a workbook', () => {
  it('has its worksheets in its own order, hidden ones told, charts left out, wherever their parts lie', () => {
    const entries =
      sheetEntry('Zinc &amp; co', 's2') +
      sheetEntry('Chart', 'c') +
      sheetEntry('Old', 's1', ' state="hidden"') +
      sheetEntry('Older', 's3', ' state="veryHidden"');
    const files = parts(worksheet('<row><c><v>1</v></c></row>'), {
      'xl/workbook.xml': workbook(entries),
      'xl/_rels/workbook.xml.rels': relationships(
        ['s1', 'worksheet', 'worksheets/sheet1.xml'],
        ['s2', 'worksheet', '/elsewhere/Two.XML'],
        ['s3', 'worksheet', './../xl/worksheets/three.xml'],
        ['c', 'chartsheet', 'chartsheets/sheet1.xml'],
      ),
      'Elsewhere/two.xml': worksheet('<row><c><v>2</v></c></row>'),
      'xl\\worksheets\\three.xml': worksheet(''),
      'xl/styles.xml': null,
      'xl/sharedStrings.xml': null,
    });
    const sheets = readXlsx(zipped(files));
    expect(sheets.map(({ name, hidden, rows }) => [name, hidden, rows[0]?.cells])).toEqual([
      ['Zinc & co', false, [2]],
      ['Old', true, [1]],
      ['Older', true, undefined],
    ]);
  });

  it('may be of the strict kind, and have two sheets share its texts', () => {
    const strict = (xml: string) =>
      xml.replaceAll(
        'http://schemas.openxmlformats.org/officeDocument/2006',
        'http://purl.oclc.org/ooxml/officeDocument',
      );
    const files = parts(worksheet('<row><c t="s"><v>0</v></c></row>'), {
      'xl/sharedStrings.xml': sharedStrings('<si><t>Olive oil</t></si>'),
    });
    const read = readXlsx(zipped(Object.fromEntries(Object.entries(files).map(([n, x]) => [n, strict(x)]))));
    expect(read[0]!.rows[0]!.cells).toEqual(['Olive oil']);
  });
});
