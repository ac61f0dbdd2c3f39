import { Problem } from '@core/problems/problem';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { strToU8, zipSync } from 'fflate';

/* Workbooks put together by hand, part by part, so that the reader is held to what the format allows and not only to
   what our own writer makes. */

const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const RELATION = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

/** A workbook part with its sheets in this order; `before` stands before them, `after` behind. */
export const workbook = (sheets: string, before = '', after = '') =>
  `<workbook ${MAIN} xmlns:r="${RELATION}">${before}<sheets>${sheets}</sheets>${after}</workbook>`;
export const sheetEntry = (name: string, id: string, rest = '') =>
  `<sheet name="${name}" sheetId="1" r:id="${id}"${rest}/>`;
export const relationships = (...all: [id: string, type: string, target: string][]) =>
  `<Relationships xmlns="${PACKAGE}">${all
    .map(([id, type, target]) => `<Relationship Id="${id}" Type="${RELATION}/${type}" Target="${target}"/>`)
    .join('')}</Relationships>`;
export const worksheet = (rows: string, before = '', after = '') =>
  `<worksheet ${MAIN}>${before}<sheetData>${rows}</sheetData>${after}</worksheet>`;
export const sharedStrings = (items: string) => `<sst ${MAIN}>${items}</sst>`;
/** Styles 0, 1, 2, … of these formats: an id, or a code of its own. */
export function styles(...formats: (number | string)[]): string {
  const codes = formats.map((format, at) =>
    typeof format === 'string'
      ? `<numFmt numFmtId="${164 + at}" formatCode="${format.replaceAll('"', '&quot;')}"/>`
      : '',
  );
  const xfs = formats.map(
    (format, at) => `<xf numFmtId="${typeof format === 'string' ? 164 + at : format}"/>`,
  );
  const others = '<cellStyleXfs><xf numFmtId="14"/></cellStyleXfs>';
  return `<styleSheet ${MAIN}><numFmts>${codes.join('')}</numFmts>${others}<cellXfs>${xfs.join('')}</cellXfs></styleSheet>`;
}

/** The parts of a workbook with one sheet, “Stock”; `more` replaces and adds, and null takes a part out. */
export function parts(sheet: string, more: Record<string, string | null> = {}): Record<string, string> {
  const all: Record<string, string | null> = {
    '_rels/.rels': relationships(['a', 'officeDocument', 'xl/workbook.xml']),
    'xl/workbook.xml': workbook(sheetEntry('Stock', 's1')),
    'xl/_rels/workbook.xml.rels': relationships(
      ['s1', 'worksheet', 'worksheets/sheet1.xml'],
      ['st', 'styles', 'styles.xml'],
      ['ss', 'sharedStrings', 'sharedStrings.xml'],
    ),
    'xl/styles.xml': styles(0),
    'xl/sharedStrings.xml': sharedStrings(''),
    'xl/worksheets/sheet1.xml': sheet,
    ...more,
  };
  return Object.fromEntries(
    Object.entries(all).filter((entry): entry is [string, string] => entry[1] !== null),
  );
}

export const zipped = (files: Record<string, string | Uint8Array>) =>
  zipSync(
    Object.fromEntries(
      Object.entries(files).map(([name, content]) => [
        name,
        typeof content === 'string' ? strToU8(content) : content,
      ]),
    ),
  );

export const sheetOf = (rows: string, more: Record<string, string | null> = {}) =>
  readXlsx(zipped(parts(worksheet(rows), more)))[0]!;
/** The cells of the first row with content. */
export const cellsOf = (cells: string, more: Record<string, string | null> = {}) =>
  sheetOf(`<row>${cells}</row>`, more).rows[0]?.cells;

/** What is said of a file that is not read. */
export function refusalOf(read: () => unknown): Problem {
  try {
    read();
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
  throw new Error('was read');
}
export const refused = (files: Record<string, string | Uint8Array>) =>
  refusalOf(() => readXlsx(zipped(files)));
