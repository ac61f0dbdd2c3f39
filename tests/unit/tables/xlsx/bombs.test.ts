import { Archive } from '@core/tables/xlsx/archive';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import {
  parts,
  refusalOf,
  relationships,
  sharedStrings,
  sheetEntry,
  workbook,
  worksheet,
  zipped,
} from './hand-built';

const SHEET = 'xl/worksheets/sheet1.xml';
const tooMuch = /far more than a table should hold/;
const told = (bytes: Uint8Array) => refusalOf(() => readXlsx(bytes));

/** Writes another size over that which the directory and the part's own header tell of a part. */
function sayingSize(zip: Uint8Array, part: string, size: number): Uint8Array {
  const bytes = Buffer.from(zip);
  for (let at = bytes.indexOf(part); at >= 0; at = bytes.indexOf(part, at + 1)) {
    if (bytes.readUInt32LE(at - 46) === 0x02014b50) bytes.writeUInt32LE(size, at - 46 + 24);
    else if (bytes.readUInt32LE(at - 30) === 0x04034b50) bytes.writeUInt32LE(size, at - 30 + 22);
  }
  return bytes;
}

describe('a workbook that unpacks to too much', () => {
  const blanks = strToU8('<worksheet><sheetData>'.padEnd(101_000_000));
  const bomb = zipSync({ ...mapped(parts('')), [SHEET]: blanks }, { level: 1 });

  function mapped(files: Record<string, string>) {
    return Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)]));
  }

  it('is refused before it is unpacked, where it says so', () => {
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(told(bomb).message).toMatch(tooMuch);
    expect(told(sayingSize(bomb, SHEET, 90_000_000)).message).toMatch(tooMuch);
  });

  it('is refused as soon as more comes out than it says', () => {
    for (const size of [0, 10, 9_000_000]) {
      expect(told(sayingSize(bomb, SHEET, size)).facts.why).toMatch(/more than it says/);
    }
  });

  it('and one of less than it says is damaged', () => {
    const bytes = zipped(parts(worksheet('<row><c><v>1</v></c></row>')));
    expect(told(sayingSize(bytes, SHEET, 9_999)).facts.why).toMatch(/not what was packed/);
  });
});

describe('the limits of an archive', () => {
  const limits = { part: 1_000, all: 2_500, large: 500, packedTimes: 20 };
  const noise = (length: number) =>
    Uint8Array.from({ length }, (_, at) => (at * at * 31 + (at >> 3) * 17) % 251);
  const archive = (files: Record<string, Uint8Array>) => new Archive(zipped(files), limits);
  function unpacked(from: Archive, name: string): number {
    let length = 0;
    from.unpack(name, (piece) => (length += piece.length));
    return length;
  }

  it('hold for each part', () => {
    expect(unpacked(archive({ a: noise(1_000) }), 'a')).toBe(1_000);
    expect(refusalOf(() => unpacked(archive({ a: noise(1_001) }), 'a')).message).toMatch(tooMuch);
  });

  it('hold for all that are read, also for one that is read again and again', () => {
    const several = archive({ a: noise(1_000), b: noise(900), unread: noise(50_000) });
    expect([unpacked(several, 'a'), unpacked(several, 'b')]).toEqual([1_000, 900]);
    expect(refusalOf(() => unpacked(several, 'b')).message).toMatch(tooMuch);
  });

  it('hold for a large part that was packed more often than tables can be', () => {
    expect(unpacked(archive({ a: new Uint8Array(500) }), 'a')).toBe(500);
    expect(refusalOf(() => unpacked(archive({ a: new Uint8Array(501) }), 'a')).message).toMatch(tooMuch);
  });
});

describe('a small file that would fill the memory or take for ever', () => {
  it('with gaps of 16,383 cells in every row', () => {
    const rows = Array.from({ length: 700 }, (_, at) => `<row><c r="XFD${at + 1}"><v>1</v></c></row>`);
    expect(told(zipped(parts(worksheet(rows.join(''))))).message).toMatch(tooMuch);
  });

  it('with a long text in many cells', () => {
    const more = { 'xl/sharedStrings.xml': sharedStrings(`<si><t>${'long '.repeat(200_000)}</t></si>`) };
    const rows = '<row><c t="s"><v>0</v></c></row>'.repeat(300);
    expect(told(zipped(parts(worksheet(rows), more))).message).toMatch(tooMuch);
  });

  it('with sheets without end', () => {
    const entries = sheetEntry('S', 's1').repeat(5_000);
    expect(told(zipped(parts(worksheet(''), { 'xl/workbook.xml': workbook(entries) }))).message).toMatch(
      tooMuch,
    );
  });

  it('with blocks of merged cells over each other', () => {
    const merges = (ref: string, count: number) =>
      `<mergeCells>${`<mergeCell ref="${ref}"/>`.repeat(count)}</mergeCells>`;
    const rows = '<row><c><v>1</v></c></row>'.repeat(5_000);
    const over = told(zipped(parts(worksheet(rows, '', merges('A1:XFD1048576', 5_000)))));
    expect(over.facts.why).toMatch(/overlap/);
    expect(told(zipped(parts(worksheet('', '', merges('A1:B1', 200_001))))).message).toMatch(tooMuch);
  });

  it('with words that take long to tell from numbers, formats and references', () => {
    const long = 1_000_000;
    const cells = `<row><c><v>${'1'.repeat(long)}x</v></c><c><v>${'1'.repeat(long)}</v></c></row>`;
    const format = `<numFmts><numFmt numFmtId="9" formatCode="${'['.repeat(long)}"/></numFmts>`;
    const styles = `<styleSheet>${format}<cellXfs><xf numFmtId="9"/></cellXfs></styleSheet>`;
    const [sheet] = readXlsx(zipped(parts(worksheet(cells), { 'xl/styles.xml': styles })));
    expect(sheet!.rows[0]!.cells.map((cell) => String(cell).length)).toEqual([long + 1, long]);
    const far = relationships(['s1', 'worksheet', '../'.repeat(long)]);
    expect(told(zipped(parts('', { 'xl/_rels/workbook.xml.rels': far }))).facts.why).toMatch(/too long/);
    const merge = `<mergeCells><mergeCell ref="${':'.repeat(long)}"/></mergeCells>`;
    expect(told(zipped(parts(worksheet('', '', merge)))).facts.why).toMatch(/outside/);
  });
});
