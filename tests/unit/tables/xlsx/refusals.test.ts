import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { parts, refusalOf, refused, relationships, workbook, worksheet, zipped } from './hand-built';

const told = (bytes: Uint8Array) => refusalOf(() => readXlsx(bytes));
const ROW = '<row><c><v>1</v></c></row>';
const CFB = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

describe('what is no .xlsx spreadsheet is told apart', () => {
  it.each<[string, Uint8Array, RegExp, RegExp]>([
    ['nothing', new Uint8Array(), /empty/, /save it once more/],
    ['an old .xls', Uint8Array.from([...CFB, ...Buffer.from('Workbook', 'utf16le')]), /\(\.xls\)/, /\.xlsx/],
    [
      'a locked one',
      Uint8Array.from([...CFB, ...Buffer.from('EncryptedPackage', 'utf16le')]),
      /password/,
      /remove the password/,
    ],
    ['a CSV', strToU8('Name;HLB\r\nCetearyl alcohol;15,5\r\n'), /text file/, /\.csv/],
    ['a CSV in UTF-16', Uint8Array.from(Buffer.from('\ufeffName;Größe', 'utf16le')), /text file/, /\.csv/],
    ['a CSV in Latin letters', Uint8Array.from([0x4e, 0xe4, 0x6d, 0x65]), /text file/, /\.csv/],
    ['a web page', strToU8('\n<html><body><table></table>'), /\(HTML\)/, /\.xlsx/],
    ['a spreadsheet of XML', strToU8('<?xml version="1.0"?><Workbook/>'), /file of XML/, /\.xlsx/],
    ['a picture', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0]), /not a spreadsheet/, /CSV/],
    [
      'an .ods',
      zipped({ mimetype: 'application/vnd.oasis.opendocument.spreadsheet', 'content.xml': '<a/>' }),
      /\.ods/,
      /\.xlsx/,
    ],
    ['another archive', zipped({ 'letter.txt': 'Dear' }), /of the kind/, /CSV/],
    [
      'a text document',
      zipped(parts('', { 'xl/workbook.xml': '<w:document xmlns:w="w"/>' })),
      /of the kind/,
      /CSV/,
    ],
    [
      'a binary workbook',
      zipped({
        '_rels/.rels': relationships(['a', 'officeDocument', 'xl/workbook.bin']),
        'xl/workbook.bin': 'x',
      }),
      /\.xlsb/,
      /\.xlsx/,
    ],
    [
      'one without a worksheet',
      zipped(parts('', { 'xl/workbook.xml': workbook('') })),
      /no worksheet/,
      /choose it/,
    ],
  ])('%s', (_, bytes, title, advice) => {
    const problem = told(bytes);
    expect(problem.code).toBe('invalid-input');
    expect(problem.message).toMatch(title);
    expect(problem.advice).toMatch(advice);
  });

  it('an archive whose parts are locked', () => {
    const bytes = zipped(parts(worksheet(ROW)));
    const directory = Buffer.from(bytes).indexOf(Buffer.from([0x50, 0x4b, 1, 2]));
    bytes[directory + 8]! |= 1;
    expect(told(bytes).message).toMatch(/password/);
  });
});

describe('a damaged workbook is refused, and it is known why', () => {
  const damage: [string, Record<string, string>, RegExp][] = [
    [
      'a part is missing',
      (({ 'xl/worksheets/sheet1.xml': _, ...rest }) => rest)(parts('')),
      /sheet1\.xml is missing/,
    ],
    ['a part is empty', parts(''), /empty/],
    ['XML is broken off', parts(worksheet(ROW).slice(0, -5)), /unclosed/],
    ['XML is not well-formed', parts(worksheet('<row><c></row>')), /tag/],
    ['an entity is unknown', parts(worksheet('<row><c t="str"><v>&who;</v></c></row>')), /entity/],
    [
      'letters are others than said',
      parts(`<?xml version="1.0" encoding="ISO-8859-1"?>${worksheet(ROW)}`),
      /ISO-8859-1/,
    ],
    ['a worksheet is something else', parts('<chartsheet/>'), /not a worksheet/],
    ['a row is beyond the last', parts(worksheet('<row r="1048577"/>')), /outside/],
    ['a row is row nought', parts(worksheet('<row r="0"/>')), /outside/],
    ['a row is a word', parts(worksheet('<row r="one"/>')), /outside/],
    ['a cell is beyond the last column', parts(worksheet('<row><c r="XFE1"><v>1</v></c></row>')), /outside/],
    ['a cell is far off', parts(worksheet('<row><c r="A99999999"><v>1</v></c></row>')), /outside/],
    ['a cell is in another row', parts(worksheet('<row r="2"><c r="A3"><v>1</v></c></row>')), /outside/],
    ['a cell counts on beyond the last', parts(worksheet('<row><c r="XFD1"/><c/></row>')), /outside/],
    [
      'a cell is there twice',
      parts(worksheet('<row><c r="A1"><v>1</v></c><c r="A1"><v>2</v></c></row>')),
      /A1 is there twice/,
    ],
    [
      'a row is there twice',
      parts(worksheet('<row r="1"><c><v>1</v></c></row>'.repeat(2))),
      /row 1 is there twice/,
    ],
    ['a shared text is not there', parts(worksheet('<row><c t="s"><v>0</v></c></row>')), /shared text/],
    ['a cell is of an unknown kind', parts(worksheet('<row><c t="zz"><v>0</v></c></row>')), /unknown kind/],
    [
      'merged cells lie outside',
      parts(worksheet(ROW, '', '<mergeCells><mergeCell ref="A1:XFE2"/></mergeCells>')),
      /outside/,
    ],
    [
      'merged cells run backwards',
      parts(worksheet(ROW, '', '<mergeCells><mergeCell ref="B2:A1"/></mergeCells>')),
      /outside/,
    ],
    ['a part is there twice', { ...parts(worksheet(ROW)), 'XL/Workbook.xml': 'x' }, /twice/],
    ['elements lie in each other without end', parts(worksheet('<a>'.repeat(100_000))), /deep/],
    [
      'an element has attributes without end',
      parts(worksheet(`<row ${Array.from({ length: 9_999 }, (_, at) => `a${at}=""`).join(' ')}/>`)),
      /attributes/,
    ],
  ];
  it.each(damage)('where %s', (_, files, why) => {
    const problem = refused(files);
    expect(problem.message).toMatch(/damaged/);
    expect(problem.advice).toMatch(/save it again as \.xlsx/);
    expect(problem.facts.why).toMatch(why);
  });

  it('where letters are no UTF-8', () => {
    const bytes = Uint8Array.from([
      ...strToU8('<worksheet><sheetData>'),
      0xff,
      ...strToU8('</sheetData></worksheet>'),
    ]);
    expect(refused({ ...parts(''), 'xl/worksheets/sheet1.xml': bytes }).facts.why).toMatch(/letters/);
  });

  it('where it was cut short anywhere', () => {
    const bytes = zipped(parts(worksheet(ROW)));
    for (let length = 2; length < bytes.length; length += 7) {
      expect(told(bytes.subarray(0, length)).message).toMatch(/damaged/);
    }
  });
});

describe('what a spreadsheet has no need of is refused', () => {
  it.each([
    '<!DOCTYPE worksheet SYSTEM "http://example.org/x.dtd">',
    '<!DOCTYPE w [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>',
    '<!DOCTYPE w [<!ENTITY file SYSTEM "file:///etc/passwd">]>',
  ])('a document type: %s', (doctype) => {
    for (const part of ['xl/worksheets/sheet1.xml', 'xl/workbook.xml', '_rels/.rels', 'xl/styles.xml']) {
      const files = parts(worksheet(ROW));
      files[part] = doctype + files[part];
      expect(refused(files).message).toMatch(/no spreadsheet needs/);
    }
  });

  it('a part outside of the file', () => {
    const to = (target: string) => ({
      'xl/_rels/workbook.xml.rels': relationships(['s1', 'worksheet', target]),
    });
    for (const target of ['../../etc/passwd', '/../secret.xml', '../../../xl/worksheets/sheet1.xml']) {
      expect(refused(parts(worksheet(ROW), to(target))).facts.why).toMatch(/points outside/);
    }
    const files = { ...parts(worksheet(ROW), to('../secret.xml')), '../secret.xml': worksheet(ROW) };
    expect(refused(files).facts.why).toMatch(/missing/);
  });

  it('a sheet on another machine', () => {
    const external = relationships(['s1', 'worksheet', 'http://example.org/s.xml']).replace(
      '/></',
      ' TargetMode="External"/></',
    );
    expect(refused(parts(worksheet(ROW), { 'xl/_rels/workbook.xml.rels': external })).message).toMatch(
      /no worksheet/,
    );
  });
});
