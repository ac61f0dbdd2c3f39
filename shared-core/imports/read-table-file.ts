import { readCsv } from '../tables/csv';
import { decodeText } from '../tables/decode';
import { Problem } from '../problems/problem';
import type { Sheet } from '../tables/table';

/** Spreadsheets are archives, old ones compound files: their first bytes tell, whatever the file is called. */
const isSpreadsheet = (bytes: Uint8Array): boolean =>
  (bytes[0] === 0x50 && bytes[1] === 0x4b) || (bytes[0] === 0xd0 && bytes[1] === 0xcf);

const isPdf = (bytes: Uint8Array): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(0, 5)) === '%PDF-';

/**
 * The sheets of a maker's file: XLSX, CSV or text parted by tabs, told by what it holds and not by its name.
 * @throws Problem when it cannot be read, with what to do
 */
export async function readTableFile(name: string, bytes: Uint8Array): Promise<Sheet[]> {
  if (isPdf(bytes))
    throw new Problem({
      code: 'invalid-input',
      title: 'This is a PDF, not a table.',
      advice:
        'A supplier’s data sheet is read on a screen of its own: “Read a supplier’s data sheet instead”.',
    });
  if (!isSpreadsheet(bytes)) {
    const { text, notes } = decodeText(bytes);
    const sheet = readCsv(text, name);
    return [{ ...sheet, notes: [...sheet.notes, ...notes] }];
  }
  const { readXlsx } = await import('../tables/xlsx/read-xlsx');
  return readXlsx(bytes);
}
