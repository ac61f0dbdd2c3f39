import { Problem } from '../problems/problem';

export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

export interface DecodedText {
  text: string;
  encoding: Encoding;
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
  const text = new TextDecoder('windows-1252').decode(bytes);
  return text.replace(/[\u0080-\u009f]/g, (sign) => WINDOWS_1252[sign.charCodeAt(0) - 0x80]!);
}

/** Bytes that no text file of a maker holds: what begins with them is a picture, an archive or a program. */
const isBinary = (bytes: Uint8Array): boolean => bytes.subarray(0, 4_000).includes(0);

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
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: western(bytes), encoding: 'Windows-1252' };
  }
}

function wide(label: 'utf-16le' | 'utf-16be', bytes: Uint8Array): DecodedText {
  return { text: new TextDecoder(label).decode(bytes), encoding: 'UTF-16' };
}
