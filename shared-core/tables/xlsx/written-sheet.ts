import { type Cell, cellText, isDate, isError } from '../table';
import { MOST_COLUMNS, MOST_ROWS, writeReference } from './cell-reference';
import { escapeText, xmlText } from './escaped-text';
import { cannotBeWritten } from './refusals';
import { serialOfDate } from './serial-dates';
import { STYLE } from './written-styles';

/** A table as it is written: its head row, and the rows below it. */
export interface WrittenSheet {
  name: string;
  head: string[];
  rows: Cell[][];
}

/** The texts of a workbook, each once (ECMA-376 Part 1, 18.4.9 sst). */
export class WrittenStrings {
  private readonly places = new Map<string, number>();
  private uses = 0;

  place(text: string): number {
    this.uses++;
    const known = this.places.get(text);
    if (known !== undefined) return known;
    this.places.set(text, this.places.size);
    return this.places.size - 1;
  }

  part(): string {
    // 18.4.12 t: without `preserve`, blanks at the ends would not be kept.
    const items = [...this.places.keys()].map(
      (text) => `<si><t xml:space="preserve">${xmlText(escapeText(text))}</t></si>`,
    );
    const counts = `count="${this.uses}" uniqueCount="${this.places.size}"`;
    return `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ${counts}>${items.join('')}</sst>`;
  }
}

/** The most letters that spreadsheet programs take in a cell. */
const LONGEST_TEXT = 32_767;
/** What a cell of kind `e` may hold: the error values of 18.17.3 in ECMA-376 Part 1. */
const ERRORS = new Set(['#DIV/0!', '#GETTING_DATA', '#N/A', '#NAME?', '#NULL!', '#NUM!', '#REF!', '#VALUE!']);
const FORMULA_LIKE = /^[=+\-@]/;
const NARROWEST = 8;
const WIDEST = 60;

/** A cell with a value that is not text, or whose text is a date or an error; else null. */
function valueCell(cell: Cell, at: string): string | null {
  if (typeof cell === 'number') {
    return Number.isFinite(cell) ? `<c r="${at}"><v>${cell}</v></c>` : `<c r="${at}" t="e"><v>#NUM!</v></c>`;
  }
  if (typeof cell === 'boolean') return `<c r="${at}" t="b"><v>${cell ? 1 : 0}</v></c>`;
  if (isDate(cell)) {
    const serial = serialOfDate(cell.date);
    const style = cell.date.includes('T') ? STYLE.moment : STYLE.date;
    return serial === null ? null : `<c r="${at}" s="${style}"><v>${serial}</v></c>`;
  }
  if (isError(cell) && ERRORS.has(cell.error)) return `<c r="${at}" t="e"><v>${cell.error}</v></c>`;
  return null;
}

/** Writes one sheet, and gathers its texts and the widths of its columns on the way. */
class SheetWriter {
  private readonly widths: number[] = [];

  constructor(
    private readonly sheet: WrittenSheet,
    private readonly strings: WrittenStrings,
  ) {}

  part(): string {
    const { head, rows } = this.sheet;
    this.check();
    const headRow = this.row(head, 1, STYLE.head);
    const below = head.length > 0 ? 2 : 1;
    const data = headRow + rows.map((cells, at) => this.row(cells, at + below)).join('');
    const xmlns = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
    return `<worksheet ${xmlns}>${this.view()}${this.columns()}<sheetData>${data}</sheetData></worksheet>`;
  }

  private check(): void {
    const { name, head, rows } = this.sheet;
    const columns = rows.reduce((most, row) => Math.max(most, row.length), head.length);
    if (rows.length + (head.length > 0 ? 1 : 0) <= MOST_ROWS && columns <= MOST_COLUMNS) return;
    throw cannotBeWritten(
      `“${name}” has more rows or columns than a spreadsheet holds (${MOST_ROWS} and ${MOST_COLUMNS}).`,
      'Narrow the list down and save it in parts, or save it as CSV.',
    );
  }

  private row(cells: readonly Cell[], line: number, style: number = STYLE.plain): string {
    const written = cells.map((cell, column) => this.cell(cell, { column, line }, style)).join('');
    return written === '' ? '' : `<row r="${line}">${written}</row>`;
  }

  private cell(cell: Cell, place: { column: number; line: number }, style: number): string {
    const text = cellText(cell);
    if (text === '') return '';
    this.widen(place.column, text);
    const at = writeReference(place);
    const value = valueCell(cell, at);
    if (value !== null) return value;
    if (text.length > LONGEST_TEXT) {
      throw cannotBeWritten(
        `The text in ${at} of “${this.sheet.name}” is longer than a spreadsheet takes (${LONGEST_TEXT} letters).`,
        'Shorten it, or save the table as CSV.',
      );
    }
    const shown = style === STYLE.plain && FORMULA_LIKE.test(text) ? STYLE.inert : style;
    const styled = shown === STYLE.plain ? '' : ` s="${shown}"`;
    return `<c r="${at}"${styled} t="s"><v>${this.strings.place(text)}</v></c>`;
  }

  private widen(column: number, text: string): void {
    const longest =
      text.length < WIDEST
        ? text.length
        : Math.max(
            ...text
              .slice(0, 4000)
              .split('\n')
              .map((l) => l.length),
          );
    this.widths[column] = Math.max(this.widths[column] ?? NARROWEST, Math.min(longest + 2, WIDEST));
  }

  /** The head stays in sight: 18.3.1.66 pane. */
  private view(): string {
    if (this.sheet.head.length === 0) return '';
    const pane = '<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>';
    return `<sheetViews><sheetView workbookViewId="0">${pane}</sheetView></sheetViews>`;
  }

  /** 18.3.1.13 col: widths in letters. */
  private columns(): string {
    const columns = Array.from(this.widths, (width, at) =>
      width === undefined ? '' : `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
    ).join('');
    return columns === '' ? '' : `<cols>${columns}</cols>`;
  }
}

/** The worksheet part (ECMA-376 Part 1, 18.3.1.99) of a table. */
export const writeSheet = (sheet: WrittenSheet, strings: WrittenStrings) =>
  new SheetWriter(sheet, strings).part();
