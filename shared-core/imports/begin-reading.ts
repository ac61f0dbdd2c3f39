import { isWritten, type Sheet } from '../tables/table';
import { guessColumns, headingRow, type Column } from './guess-columns';
import { dayOrderOf } from './money-and-dates';
import { decimalMarkOf } from './quantity';
import type { ReadingWays } from './read-cell';
import type { Subject } from './subjects';
import type { WordMap } from './words-of';

/** How a sheet is read to begin with: everything of it can be changed by whoever looks at it. */
export interface SheetReading {
  /** Which of the sheet's rows names the columns. */
  head: number;
  columns: Column[];
  ways: ReadingWays;
}

/** So many rows show what a table's numbers and dates look like. */
const SAMPLE = 2_000;

function textsOf(sheet: Sheet): string[] {
  const texts: string[] = [];
  for (const { cells } of sheet.rows.slice(0, SAMPLE))
    for (const cell of cells) if (typeof cell === 'string' && isWritten(cell, sheet)) texts.push(cell);
  return texts;
}

/**
 * Finds the heading row, the decimal mark, the order of days and months, and what each column holds.
 * @param head the heading row where it was said
 */
export function beginReading(
  sheet: Sheet,
  told: WordMap,
  head?: number,
  subject: Subject = 'materials',
): SheetReading {
  const at = head ?? headingRow(sheet.rows, subject);
  const texts = textsOf(sheet);
  const ways: ReadingWays = { mark: decimalMarkOf(texts), order: dayOrderOf(texts), words: told };
  const headings = sheet.rows[at]?.cells ?? [];
  return { head: at, columns: guessColumns(headings, sheet.rows.slice(at + 1), ways, subject), ways };
}
