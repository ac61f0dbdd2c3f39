import type { Problem } from '../../problems/problem';
import { notAWorkbook } from './refusals';

const SAVE_AS = 'Open it in a spreadsheet program, save it as .xlsx, and choose the new file.';
/** The first bytes of a compound file: [MS-CFB] 2.2. Old workbooks are such, and locked ones are put into one. */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
/** The stream that holds a locked workbook: [MS-OFFCRYPTO] 2.3.4.4; names stand as UTF-16 in the directory. */
const ENCRYPTED = [...'EncryptedPackage'].flatMap((letter) => [letter.charCodeAt(0), 0]);
const ZIP = [0x50, 0x4b];

const standsAt = (bytes: Uint8Array, at: number, wanted: readonly number[]) =>
  wanted.every((byte, offset) => bytes[at + offset] === byte);

function holds(bytes: Uint8Array, wanted: readonly number[]): boolean {
  for (let at = bytes.indexOf(wanted[0]!); at >= 0; at = bytes.indexOf(wanted[0]!, at + 1)) {
    if (standsAt(bytes, at, wanted)) return true;
  }
  return false;
}

const compound = (bytes: Uint8Array) =>
  holds(bytes, ENCRYPTED)
    ? notAWorkbook(
        'This spreadsheet is locked with a password.',
        'Open it in a spreadsheet program, remove the password, save it, and choose it again.',
      )
    : notAWorkbook('This is a spreadsheet of the old kind (.xls), which is not read here.', SAVE_AS);

/** What a file that begins as text is: a page, a spreadsheet written as XML, a plain table. */
function written(text: string): Problem {
  if (/<(!doctype html|html|table)\b/i.test(text)) {
    return notAWorkbook(
      'This is a page for a browser (HTML), not a spreadsheet, whatever its name says.',
      SAVE_AS,
    );
  }
  if (/^\s*<\?xml/.test(text))
    return notAWorkbook('This is not an .xlsx spreadsheet, but a file of XML.', SAVE_AS);
  return notAWorkbook(
    'This is a text file, not a spreadsheet, whatever its name says.',
    'If it holds a table, let its name end in .csv, and choose it again.',
  );
}

/** The text that a file begins with; null where it is not text. */
function beginning(bytes: Uint8Array): string | null {
  const head = bytes.subarray(0, 4096);
  const wide = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  if (wide) return new TextDecoder(head[0] === 0xff ? 'utf-16le' : 'utf-16be').decode(head);
  return head.some((byte) => byte < 32 && byte !== 9 && byte !== 10 && byte !== 13)
    ? null
    : new TextDecoder('windows-1252').decode(head);
}

/** Says what a file is that is no ZIP archive, so no workbook; null where it is one. */
export function otherThanArchive(bytes: Uint8Array): Problem | null {
  if (standsAt(bytes, 0, ZIP)) return null;
  if (bytes.length === 0) {
    return notAWorkbook(
      'This file is empty.',
      'It may not have come down whole: fetch it or save it once more.',
    );
  }
  if (standsAt(bytes, 0, COMPOUND)) return compound(bytes);
  const text = beginning(bytes);
  if (text !== null) return written(text);
  return notAWorkbook(
    'This file is not a spreadsheet.',
    'Choose a spreadsheet saved as .xlsx, or a table saved as CSV.',
  );
}

export const openDocument = () =>
  notAWorkbook('This is an OpenDocument spreadsheet (.ods), which is not read here.', SAVE_AS);
