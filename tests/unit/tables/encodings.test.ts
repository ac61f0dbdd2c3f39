import { readTableFile } from '@core/imports/read-table-file';
import { decodeText, LARGEST_TEXT_FILE, refuseLarge } from '@core/tables/decode';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const utf8 = (text: string): number[] => [...new TextEncoder().encode(text)];
/** As Windows-1252 writes it: the letters of Latin-1 by their own number, those of the trade from the code page. */
const SIGNS: Readonly<Record<string, number>> = {
  '€': 0x80,
  '–': 0x96,
  '“': 0x93,
  '”': 0x94,
  '’': 0x92,
  œ: 0x9c,
};
const windows = (text: string): number[] => [...text].map((sign) => SIGNS[sign] ?? sign.charCodeAt(0));
const bytes = (...parts: number[][]) => Uint8Array.from(parts.flat());

describe('a table put together from two files', () => {
  it('keeps the letters of both, and names the lines of the other encoding', () => {
    const mixed = bytes(
      utf8('Rohstoff;Lagerung\nÖlsäure;5–25 °C\n'),
      windows('Müllers Weiß;kühl\nCrème de cœur;“frais”\n'),
      utf8('β-Carotin;≤ 5 €\n'),
    );
    expect(decodeText(mixed)).toEqual({
      text: 'Rohstoff;Lagerung\nÖlsäure;5–25 °C\nMüllers Weiß;kühl\nCrème de cœur;“frais”\nβ-Carotin;≤ 5 €\n',
      encoding: 'UTF-8',
      notes: [
        'Lines 3, 4: letters are written in another encoding than the rest (Windows-1252). Check them there.',
      ],
    });
  });

  it('tells so at the sheet, before anything is taken in', async () => {
    const mixed = bytes(utf8('Name;Note\nÖl;x\n'), windows('Süß;y\n'));
    const [sheet] = await readTableFile('shelf.csv', mixed);
    expect(sheet!.rows.map(({ cells }) => cells[0])).toEqual(['Name', 'Öl', 'Süß']);
    expect(sheet!.notes.join()).toContain('Line 3: letters are written in another encoding');
  });

  it('names five lines, and how many more', () => {
    const lines = Array.from({ length: 8 }, () => windows('Süß\n'));
    expect(decodeText(bytes(utf8('Öl\n'), ...lines)).notes[0]).toMatch(/^Lines 2, 3, 4, 5, 6 and 3 more:/);
  });

  it('cut off within a letter keeps what came before', () => {
    const cut = bytes(utf8('Öl;Süß')).slice(0, -1);
    expect(decodeText(cut).text).toMatch(/^Öl;Sü/);
    expect(decodeText(cut).notes[0]).toContain('Line 1');
  });

  const western = fc.stringMatching(/^[A-Za-zäöüßéèàçñ°µ ]{1,12}$/);
  it('never loses a letter, whichever line is of which encoding', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(western, fc.boolean()), { minLength: 1, maxLength: 8 }), (lines) => {
        const made = lines.map(([text, wide]) => (wide ? utf8(`${text}\n`) : windows(`${text}\n`)));
        const { text } = decodeText(bytes(...made));
        expect(text).not.toContain('\uFFFD');
        expect(text).toBe(lines.map(([line]) => `${line}\n`).join(''));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a table of Windows alone', () => {
  it('is read as such, without a note: pairs that UTF-8 could also mean stay what they are', () => {
    for (const text of ['Größe 5 Å–7 Å', 'Fläche 3 Å²', '« QUALITÉ »', 'Gefäß“ usw. für', 'SERÁ – así'])
      expect(decodeText(bytes(windows(text))), text).toEqual({ text, encoding: 'Windows-1252', notes: [] });
  });
});

describe('letters that were lost before', () => {
  it('are told of by their line, in UTF-8 and UTF-16, and kept as they stand', () => {
    const text = 'Name;Note\nCr\uFFFDme;x\n';
    const note =
      'Line 2: letters were lost before the file was saved, where “\uFFFD” stands. Correct them in the table.';
    expect(decodeText(bytes(utf8(text)))).toEqual({ text, encoding: 'UTF-8', notes: [note] });
    expect(decodeText(Buffer.from(`\uFEFF${text}`, 'utf16le'))).toEqual({
      text,
      encoding: 'UTF-16',
      notes: [note],
    });
  });

  it('and a file of UTF-16 that ends within a letter is refused with what to do', () => {
    const cut = Buffer.from('\uFEFFName;Öl', 'utf16le').subarray(0, -1);
    expect(() => decodeText(cut)).toThrow('This text file is damaged: it holds halves of letters.');
    expect(() => decodeText(bytes([0xff, 0xfe], [0x41, 0, 0x00, 0xd8, 0x42, 0]))).toThrow(
      'halves of letters',
    );
  });
});

describe('what is no table', () => {
  it('is refused for its size before it is read', () => {
    expect(() => refuseLarge(LARGEST_TEXT_FILE)).not.toThrow();
    expect(() => refuseLarge(LARGEST_TEXT_FILE + 1)).toThrow('This file holds 64 MB; 64 MB is the most.');
  });

  it('is sent to where it belongs: a data sheet as PDF', async () => {
    await expect(readTableFile('sheet.csv', bytes(utf8('%PDF-1.7\n')))).rejects.toThrow(
      'This is a PDF, not a table.',
    );
  });

  it('is empty, or a picture called .csv', async () => {
    await expect(readTableFile('a.csv', bytes())).rejects.toThrow('The file is empty.');
    await expect(readTableFile('a.csv', bytes([0xff, 0xd8, 0xff, 0xe0, 0, 0x10]))).rejects.toThrow(
      'not a text file',
    );
  });
});
