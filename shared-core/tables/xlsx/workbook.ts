import type { Archive } from './archive';
import { unescapeText } from './escaped-text';
import { notAWorkbook, tooLarge, withoutWorksheet } from './refusals';
import { partOfType, readRelationships } from './relationships';
import { type Attributes, isOn, prefixedAttribute, readXmlPart } from './xml-part';

/** A worksheet of a workbook, and the part that holds it. */
export interface WorksheetPart {
  name: string;
  hidden: boolean;
  part: string;
}

export interface Workbook {
  sheets: WorksheetPart[];
  from1904: boolean;
  /** Whether it asks for its formulas to be worked out anew, so that their kept values may be old. */
  stale: boolean;
  sharedStrings: string | undefined;
  styles: string | undefined;
}

const MOST_SHEETS = 2_000;

const foreign = () =>
  notAWorkbook(
    'This file is not a spreadsheet of the kind that is read here.',
    'Choose a spreadsheet saved as .xlsx, or a table saved as CSV.',
  );

/** @throws Problem where the archive is sound but holds something else than a workbook in XML. */
function workbookPart(archive: Archive): string {
  const part = partOfType(readRelationships(archive, ''), 'officeDocument');
  if (part === undefined || !archive.has(part)) throw foreign();
  if (part.toLowerCase().endsWith('.bin')) {
    throw notAWorkbook(
      'This is a binary spreadsheet (.xlsb), which is not read here.',
      'Open it in a spreadsheet program, save it as .xlsx, and choose the new file.',
    );
  }
  return part;
}

/**
 * The sheets of a workbook in its order (ECMA-376 Part 1, 18.2.20 sheets), and what reading them takes.
 * @throws Problem where it is none, or has no worksheet.
 */
export function readWorkbook(archive: Archive): Workbook {
  const part = workbookPart(archive);
  const relationships = readRelationships(archive, part);
  const book: Workbook = {
    sheets: [],
    from1904: false,
    stale: false,
    sharedStrings: partOfType(relationships, 'sharedStrings'),
    styles: partOfType(relationships, 'styles'),
  };
  const addSheet = (attributes: Attributes) => {
    const target = relationships.get(prefixedAttribute(attributes, 'id') ?? '');
    // Sheets of charts and dialogues have rows of nothing.
    if (target?.type !== 'worksheet') return;
    if (book.sheets.length === MOST_SHEETS) throw tooLarge('more sheets than a person can look through');
    const hidden = attributes.state === 'hidden' || attributes.state === 'veryHidden'; // 18.18.68 ST_SheetState
    book.sheets.push({ name: unescapeText(attributes.name ?? ''), hidden, part: target.part });
  };
  let root = '';
  readXmlPart(archive, part, {
    open(name, attributes) {
      if (root === '' && name !== 'workbook') throw foreign();
      root = 'workbook';
      if (name === 'workbookPr')
        book.from1904 = isOn(attributes.date1904); // 18.2.28
      else if (name === 'calcPr')
        book.stale = isOn(attributes.fullCalcOnLoad); // 18.2.2
      else if (name === 'sheet') addSheet(attributes); // 18.2.19
    },
  });
  if (book.sheets.length === 0) throw withoutWorksheet();
  return book;
}
