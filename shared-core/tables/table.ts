/** A day or a moment of a spreadsheet, ISO 8601 without a zone: `2026-03-01` or `2026-03-01T09:30:00`. */
export interface DateCell {
  date: string;
}

/** What a spreadsheet shows where a formula fails, such as `#N/A`. */
export interface ErrorCell {
  error: string;
}

/** What stands in a cell; null for an empty one. Text is as written, not trimmed. */
export type Cell = null | string | number | boolean | DateCell | ErrorCell;

export interface SheetRow {
  /** The row of the sheet, or the line of the text file, that it begins on; the first is 1. */
  line: number;
  /** Whether the spreadsheet hides it. */
  hidden: boolean;
  cells: Cell[];
}

/** One sheet of a spreadsheet, or a whole text file of rows. Rows without any content are left out. */
export interface Sheet {
  name: string;
  hidden: boolean;
  rows: SheetRow[];
  /** What is to be told before it is used, in sentences: merged cells, formulas without a value. */
  notes: string[];
  /** Whether numbers that its file shows as per cent or money stand here as text: with a point, whatever its own mark. */
  withPoint?: boolean;
}

/** A number as text that a spreadsheet shows as per cent or money. */
const SHOWN_WITH_POINT = /^-?\d+(?:\.\d+)?(?:%| \S{1,4})$/;

/** The texts of a sheet that its maker wrote, and not a number as it is shown. */
export function isWritten(text: string, { withPoint = false }: Pick<Sheet, 'withPoint'>): boolean {
  return !withPoint || !SHOWN_WITH_POINT.test(text);
}

export const isDate = (cell: Cell): cell is DateCell =>
  typeof cell === 'object' && cell !== null && 'date' in cell;
export const isError = (cell: Cell): cell is ErrorCell =>
  typeof cell === 'object' && cell !== null && 'error' in cell;

/** A cell as text, as a maker reads it; empty for an empty one. Numbers with a point and every digit. */
export function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (isDate(cell)) return cell.date.replace('T', ' ');
  if (isError(cell)) return cell.error;
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return String(cell);
}
