import { readCsv, writeCsv } from '@core/tables/csv';
import { decodeText } from '@core/tables/decode';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const cellsOf = (text: string) => readCsv(text, 'file').rows.map(({ cells }) => cells);

describe('a CSV file is read (RFC 4180)', () => {
  it.each([
    [
      'records end with CR LF, the last one need not',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'fields may stand between quotation marks',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'quoted fields hold line breaks and commas',
      '"aaa","b\r\nb,b","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nb,b', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['a quotation mark in a field is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('2.: %s', (_, text, rows) => {
    expect(cellsOf(text)).toEqual(rows);
  });

  it('finds semicolons although numbers hold commas, tabs, bars, and what a first line names', () => {
    expect(cellsOf('Name;HLB\nA;5,8\nB;1,2')).toEqual([
      ['Name', 'HLB'],
      ['A', '5,8'],
      ['B', '1,2'],
    ]);
    expect(cellsOf('Name\tHLB\nA; b\t5,8')).toEqual([
      ['Name', 'HLB'],
      ['A; b', '5,8'],
    ]);
    expect(cellsOf('Name|HLB\nA|5')).toEqual([
      ['Name', 'HLB'],
      ['A', '5'],
    ]);
    expect(cellsOf('sep=|\r\na,b|c')).toEqual([['a,b', 'c']]);
  });

  it('numbers rows by the line they begin on, and leaves empty ones out', () => {
    const { rows } = readCsv('Name;Note\n\nA;"two\nlines"\n;;\nB;x', 'file');
    expect(rows.map(({ line }) => line)).toEqual([1, 3, 6]);
  });

  it('says where a quotation mark is left open', () => {
    expect(() => readCsv('a;b\n1;2\n"x;3\n4;5', 'file')).toThrow(/near line 3/);
    expect(() => readCsv(' \n;;\n', 'file')).toThrow('The file is empty.');
  });
});

describe('a CSV file is written', () => {
  it('keeps a spreadsheet from running a text, and reads it back as it was', () => {
    const texts = ['=1+1', '+A1', '-cmd', '@SUM(A1)', "'=x", '-5,3', '+4', 'a=b', ''];
    const text = writeCsv(
      ['Text', 'More'],
      texts.map((one) => [one, 'x']),
    );
    expect(text).toContain("'=1+1");
    expect(text).toMatch(/\n-5,3|"-5,3"/);
    expect(
      cellsOf(text)
        .slice(1)
        .map(([cell]) => cell ?? ''),
    ).toEqual(texts);
  });

  it('round trip of any cells that hold something', () => {
    const cell = fc
      .string({ minLength: 1, maxLength: 12 })
      .filter((text) => text.trim() !== '' && !text.includes('\uFEFF'));
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 8 }),
        (rows) => {
          expect(cellsOf(writeCsv(['Name', 'INCI name'], rows)).slice(1)).toEqual(rows);
        },
      ),
    );
  });
});

describe('the text of a file', () => {
  const bytes = (...all: number[]) => Uint8Array.from(all);
  it('UTF-8, with a mark or without; else what Windows writes', () => {
    expect(decodeText(new TextEncoder().encode('Löslichkeit'))).toEqual({
      text: 'Löslichkeit',
      encoding: 'UTF-8',
      notes: [],
    });
    expect(decodeText(bytes(0x4c, 0xf6, 0x73, 0x80))).toEqual({
      text: 'Lös€',
      encoding: 'Windows-1252',
      notes: [],
    });
  });
  it('UTF-16 by its mark, and by its zeros', () => {
    const wide = Buffer.from('Name;HLB', 'utf16le');
    expect(decodeText(wide).text).toBe('Name;HLB');
    expect(decodeText(Buffer.concat([Buffer.from([0xff, 0xfe]), wide]))).toEqual({
      text: 'Name;HLB',
      encoding: 'UTF-16',
      notes: [],
    });
    expect(decodeText(Buffer.concat([Buffer.from([0xfe, 0xff]), Buffer.from(wide).swap16()])).text).toBe(
      'Name;HLB',
    );
  });
  it('refuses what is no text', () => {
    expect(() => decodeText(bytes(0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 0x49))).toThrow(
      'This is not a text file.',
    );
  });
});
