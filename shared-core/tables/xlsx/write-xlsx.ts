import { strToU8, zipSync } from 'fflate';
import { escapeText, xmlAttribute } from './escaped-text';
import { cannotBeWritten } from './refusals';
import { lawfulSheetNames } from './sheet-names';
import { writeSheet, type WrittenSheet, WrittenStrings } from './written-sheet';
import { STYLES_PART } from './written-styles';

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const SPREADSHEET = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
/** The earliest time that ZIP can hold, in local time as the format has it: the same input gives the same bytes. */
const ALWAYS = new Date(1980, 0, 1);

const relationship = (id: number, type: string, target: string) =>
  `<Relationship Id="rId${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
const relationships = (...all: string[]) =>
  `<Relationships xmlns="${PACKAGE}/relationships">${all.join('')}</Relationships>`;
const override = (part: string, type: string) =>
  `<Override PartName="/xl/${part}.xml" ContentType="${TYPE}.${type}+xml"/>`;

/** ECMA-376 Part 2 (2021), 7.2.3: what each part is. */
function contentTypes(sheets: readonly string[]): string {
  const parts = [
    override('workbook', 'sheet.main'),
    override('styles', 'styles'),
    override('sharedStrings', 'sharedStrings'),
    ...sheets.map((_, at) => override(`worksheets/sheet${at + 1}`, 'worksheet')),
  ];
  const rels =
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>';
  const xml = '<Default Extension="xml" ContentType="application/xml"/>';
  return `<Types xmlns="${PACKAGE}/content-types">${rels}${xml}${parts.join('')}</Types>`;
}

/** ECMA-376 Part 1, 18.2.27 workbook. */
function workbook(names: readonly string[]): string {
  const sheets = names.map(
    (name, at) => `<sheet name="${xmlAttribute(escapeText(name))}" sheetId="${at + 1}" r:id="rId${at + 3}"/>`,
  );
  return `<workbook xmlns="${SPREADSHEET}" xmlns:r="${OFFICE}"><sheets>${sheets.join('')}</sheets></workbook>`;
}

/**
 * Writes tables as an Office Open XML workbook (.xlsx; ECMA-376 Part 1, 18), one sheet each, with a bold head that stays
 * in sight, and cells of their own kind. `readXlsx` reads the same cells back. The same input gives the same bytes.
 *
 * - A name that spreadsheets refuse is made lawful. Every text stays text, also one that looks like a formula.
 * - A date before 1 March 1900, or that is none, is written as text; an error that the format does not know too; a
 *   number that is none as #NUM!. An empty text is an empty cell, and minus zero is zero.
 * @throws Problem (invalid-input) where there is no sheet, or one does not fit what spreadsheets hold.
 */
export function writeXlsx(sheets: WrittenSheet[]): Uint8Array {
  if (sheets.length === 0) throw cannotBeWritten('There is nothing to save.', 'Choose at least one table.');
  const names = lawfulSheetNames(sheets.map((sheet) => sheet.name));
  const strings = new WrittenStrings();
  const parts = sheets.map((sheet) => writeSheet(sheet, strings));
  const files: Record<string, string> = {
    '[Content_Types].xml': contentTypes(names),
    '_rels/.rels': relationships(relationship(1, 'officeDocument', 'xl/workbook.xml')),
    'xl/workbook.xml': workbook(names),
    'xl/_rels/workbook.xml.rels': relationships(
      relationship(1, 'styles', 'styles.xml'),
      relationship(2, 'sharedStrings', 'sharedStrings.xml'),
      ...names.map((_, at) => relationship(at + 3, 'worksheet', `worksheets/sheet${at + 1}.xml`)),
    ),
    'xl/styles.xml': STYLES_PART,
    'xl/sharedStrings.xml': strings.part(),
  };
  parts.forEach((part, at) => (files[`xl/worksheets/sheet${at + 1}.xml`] = part));
  const packed = Object.entries(files).map(([name, content]) => [name, strToU8(XML + content)] as const);
  return zipSync(Object.fromEntries(packed), { mtime: ALWAYS, level: 6 });
}
