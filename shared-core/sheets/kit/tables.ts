import type { Alignment, Cell, SheetNode, TableLayout, TableNode, TextNode } from './definition';
import { QUIET_RULE, RULE, SIZE, SOFT_INK } from './type-scale';

export interface Column {
  head: string;
  /** Share of the table's width; only the proportion to the others counts. */
  share: number;
  alignment?: Alignment;
  /** Written in by hand: ruled on all sides. */
  byHand?: boolean;
}

export const PADDING = 4;
/** The weight of an upright rule. */
const UPRIGHT = 0.5;

/** Points for the text of each column, so that no long word can push a table over the edge of the page. */
export function columnWidths(columns: readonly Pick<Column, 'share' | 'byHand'>[], width: number): number[] {
  const whole = columns.reduce((sum, column) => sum + column.share, 0);
  const lines = columns.filter((_, index) => isUpright(columns, index)).length + 1;
  const usable = width - (lines > 1 ? lines * UPRIGHT : 0);
  return columns.map(({ share }, index) => (share / whole) * usable - leftPadding(columns, index) - PADDING);
}

function isUpright(columns: readonly Pick<Column, 'byHand'>[], index: number): boolean {
  return columns[index]?.byHand === true || columns[index - 1]?.byHand === true;
}

// Text at the left edge stands flush with the heading above, unless a rule stands there.
function leftPadding(columns: readonly Pick<Column, 'byHand'>[], index: number): number {
  return index === 0 && !isUpright(columns, 0) ? 0 : PADDING;
}

/** Quiet rules between rows, a firm one under the head and at the end, upright ones where hands write. */
export function ruledLayout(columns: readonly Column[], headerRows: number, rows: number): TableLayout {
  const firm = (row: number): boolean => row === headerRows || row === headerRows + rows;
  return {
    hLineWidth: (row) => (row < headerRows ? 0 : firm(row) ? 0.9 : 0.4),
    hLineColor: (row) => (firm(row) ? RULE : QUIET_RULE),
    vLineWidth: (column) => (isUpright(columns, column) ? UPRIGHT : 0),
    vLineColor: () => QUIET_RULE,
    paddingLeft: (column) => leftPadding(columns, column),
    paddingRight: () => PADDING,
    paddingTop: () => 2.5,
    paddingBottom: () => 2.5,
  };
}

export interface RuledTable {
  columns: readonly Column[];
  rows: Cell[][];
  width: number;
  /** A line over the head, such as a phase; repeated with it on every page. */
  caption?: SheetNode;
  /** Least height of a row in points: 24 and more where hands write. */
  rowHeight?: number;
}

export function headCell(column: Pick<Column, 'head' | 'alignment'>): TextNode {
  return {
    text: column.head,
    fontSize: SIZE.label,
    bold: true,
    color: SOFT_INK,
    alignment: column.alignment ?? 'left',
  };
}

/** A table with quiet rules, its head repeated on every page and its rows never split. */
export function ruledTable({ columns, rows, width, caption, rowHeight }: RuledTable): TableNode {
  const head: Cell[] = columns.map(headCell);
  const captionRow: Cell[] = [
    { ...(caption ?? { text: '' }), colSpan: columns.length, border: [false, false, false, false] },
    ...columns.slice(1).map((): Cell => ({})),
  ];
  const headerRows = caption ? 2 : 1;
  const widths = columnWidths(columns, width);
  return {
    table: {
      widths,
      headerRows,
      keepWithHeaderRows: rows[0] && !isTall(rows[0], head, widths) ? 1 : 0,
      // A row taller than a page would never fit unsplit, so only tables of ordinary rows are kept whole.
      dontBreakRows: !rows.some((row) => isTall(row, head, widths)),
      heights: (row) => (row >= headerRows && rowHeight ? rowHeight : 'auto'),
      body: [...(caption ? [captionRow] : []), head, ...rows],
    },
    layout: ruledLayout(columns, headerRows, rows.length),
  };
}

// About the mean width of a character at table size, and the lines that surely fit on either paper lying down.
const CHARACTER = 4.6;
const LINES_OF_A_PAGE = 28;

function lineCount(node: SheetNode, width: number): number {
  if ('stack' in node) return node.stack.reduce((sum, one) => sum + lineCount(one, width), 0);
  if (!('text' in node)) return 1;
  const text = typeof node.text === 'string' ? node.text : node.text.map((run) => run.text).join('');
  return text.split('\n').reduce((sum, line) => sum + Math.ceil((line.length * CHARACTER) / width), 0);
}

/** Whether a row, with the head that is repeated over it, may not fit on one page. */
function isTall(row: Cell[], head: Cell[], widths: readonly number[]): boolean {
  const lines = (cells: Cell[]): number =>
    Math.max(0, ...cells.map((one, index) => lineCount(one as SheetNode, widths[index] ?? 1)));
  return lines(row) + lines(head) > LINES_OF_A_PAGE;
}

/** A cell of text at table size. */
export function cell(text: string, more: Partial<TextNode> = {}): TextNode {
  return { text, fontSize: SIZE.table, ...more };
}

/** A figure: right-aligned; a column with one count of decimals then lines up on its decimal sign. */
export function figureCell(text: string, more: Partial<TextNode> = {}): TextNode {
  return { text, fontSize: SIZE.table, alignment: 'right', ...more };
}

/** Empty, for a hand to write in. */
export function blankCell(): TextNode {
  return { text: '' };
}
