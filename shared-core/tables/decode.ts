import { Problem } from '../problems/problem';

export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

export interface DecodedText {
  text: string;
  encoding: Encoding;
  /** What whoever uses the text must check, in sentences: lines of another encoding, letters that were lost before. */
  notes: string[];
}

/** The largest file of text that is read, in bytes: a row of 200 letters for each of 300,000 materials. */
export const LARGEST_TEXT_FILE = 64_000_000;

/** @throws Problem too-large for a file of more bytes than are read: to be asked before it is in memory */
export function refuseLarge(bytes: number): void {
  if (bytes <= LARGEST_TEXT_FILE) return;
  throw new Problem({
    code: 'too-large',
    title: `This file holds ${Math.round(bytes / 1_000_000)} MB; ${LARGEST_TEXT_FILE / 1_000_000} MB is the most.`,
    advice: 'Split it into several files, each with the heading row, and take them in one after another.',
  });
}

/** What the bytes 80 to 9F are there; some decoders leave them as the control characters of Latin-1. */
const WINDOWS_1252 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

function western(bytes: Uint8Array): string {
  return fromSigns(new TextDecoder('windows-1252').decode(bytes));
}

const fromSigns = (text: string): string =>
  text.replace(/[\u0080-\u009f]/g, (sign) => WINDOWS_1252[sign.charCodeAt(0) - 0x80]!);

/** Bytes that no text file of a maker holds: what begins with them is a picture, an archive or a program. */
const isBinary = (bytes: Uint8Array): boolean => bytes.subarray(0, 4_000).includes(0);

/** What stands where another program could not read a letter. */
const LOST = '\uFFFD';
const MOST_LINES = 5;

const linesWhere = (lines: readonly string[], is: (line: string, at: number) => boolean): string => {
  const found = lines.flatMap((line, at) => (is(line, at) ? [at + 1] : []));
  const more = found.length > MOST_LINES ? ` and ${found.length - MOST_LINES} more` : '';
  return `${found.length === 1 ? 'Line' : 'Lines'} ${found.slice(0, MOST_LINES).join(', ')}${more}`;
};

function lostLetters(text: string): string[] {
  if (!text.includes(LOST)) return [];
  const where = linesWhere(text.split(/\r\n|\r|\n/), (line) => line.includes(LOST));
  return [
    `${where}: letters were lost before the file was saved, where “${LOST}” stands. Correct them in the table.`,
  ];
}

/**
 * Letters of western languages and signs of the trade as UTF-8 writes them: accents, Greek, œ and ž, dashes, quotation
 * marks, €, ≤. As Windows-1252 the same bytes are pairs such as “Ã¶” or “â€“”, which no word holds; “Å²” and “Å–” do stand in texts and are left as they are.
 */
const LETTER =
  /[\u00C2-\u00C4\u00CE\u00CF][\u0080-\u00BF]|\u00C5[\u0080-\u0093\u0098-\u009F\u00A1-\u00B1\u00B4-\u00BF]|\u00E2[\u0080-\u0089][\u0080-\u00BF]/g;

/** Text put together from files of two encodings: letters of UTF-8 as such, what else is no ASCII as Windows wrote it. */
function mixedText(bytes: Uint8Array): { text: string; notes: string[] } | null {
  // Each byte as one sign of the same number.
  const signs = Array.from({ length: Math.ceil(bytes.length / 8192) }, (_, at) =>
    String.fromCharCode(...bytes.subarray(at * 8192, (at + 1) * 8192)),
  ).join('');
  if (signs.search(LETTER) < 0) return null;
  const lines = signs.split(/\r\n|\r|\n/);
  const utf8 = (letter: string): string =>
    new TextDecoder().decode(Uint8Array.from(letter, (sign) => sign.charCodeAt(0)));
  const text = signs
    .split(new RegExp(`(${LETTER.source})`))
    .map((piece, at) => (at % 2 === 1 ? utf8(piece) : fromSigns(piece)))
    .join('');
  const where = linesWhere(lines, (line) => /[\u0080-\u00FF]/.test(line.replace(LETTER, '')));
  return {
    text,
    notes: [
      `${where}: letters are written in another encoding than the rest (Windows-1252). Check them there.`,
    ],
  };
}

/** Two bytes a letter without a mark: every other byte of plain text is then zero. */
function looksLikeUtf16(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes.length < 4 || bytes.length % 2 !== 0) return null;
  const head = bytes.subarray(0, 400);
  const zeros = [0, 1].map((odd) => head.filter((byte, at) => at % 2 === odd && byte === 0).length);
  const most = head.length / 2;
  if (zeros[1]! > most * 0.7 && zeros[0]! < most * 0.1) return 'utf-16le';
  if (zeros[0]! > most * 0.7 && zeros[1]! < most * 0.1) return 'utf-16be';
  return null;
}

/**
 * The text of a file, in the encoding that its mark or its bytes tell: UTF-8, UTF-16, else what spreadsheets of western
 * Europe write without a mark.
 * @throws Problem invalid-input for what is no text, or too much of it
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  refuseLarge(bytes.length);
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return wide('utf-16le', bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return wide('utf-16be', bytes);
  const unmarked = looksLikeUtf16(bytes);
  if (unmarked) return wide(unmarked, bytes);
  if (isBinary(bytes))
    throw new Problem({
      code: 'invalid-input',
      title: 'This is not a text file.',
      advice: 'Save the table as CSV or XLSX in your spreadsheet, and choose that file.',
    });
  const whole = asUtf8(bytes);
  if (whole !== null) return { text: whole, encoding: 'UTF-8', notes: lostLetters(whole) };
  const mixed = mixedText(bytes);
  if (mixed) return { ...mixed, encoding: 'UTF-8' };
  return { text: western(bytes), encoding: 'Windows-1252', notes: [] };
}

function asUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** @throws Problem invalid-input for a file that ends within a letter, or holds halves of one */
function wide(label: 'utf-16le' | 'utf-16be', bytes: Uint8Array): DecodedText {
  try {
    const text = new TextDecoder(label, { fatal: true }).decode(bytes);
    return { text, encoding: 'UTF-16', notes: lostLetters(text) };
  } catch {
    throw new Problem({
      code: 'invalid-input',
      title: 'This text file is damaged: it holds halves of letters.',
      advice:
        'It may be cut off. Save the table again in your spreadsheet, as CSV or XLSX, and choose that file.',
    });
  }
}
