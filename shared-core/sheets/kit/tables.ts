import type { Alignment, Cell, SheetNode, TableLayout, TableNode, TextNode } from './definition';
import { heading } from './text';
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
/** Above and below the text of a row. */
const ROW_PADDING = 2.5;
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
export function ruledLayout(
  columns: readonly Column[],
  headerRows: number,
  rows: number,
  padding = ROW_PADDING,
): TableLayout {
  const firm = (row: number): boolean => row === headerRows || row === headerRows + rows;
  return {
    hLineWidth: (row) => (row < headerRows ? 0 : firm(row) ? 0.9 : 0.4),
    hLineColor: (row) => (firm(row) ? RULE : QUIET_RULE),
    vLineWidth: (column) => (isUpright(columns, column) ? UPRIGHT : 0),
    vLineColor: () => QUIET_RULE,
    paddingLeft: (column) => leftPadding(columns, column),
    paddingRight: () => PADDING,
    paddingTop: () => padding,
    paddingBottom: () => padding,
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
  /** Points above and below the text of a row, where a table must be set closer than others. */
  padding?: number;
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
export function ruledTable({
  columns,
  rows,
  width,
  caption,
  rowHeight: least,
  padding,
}: RuledTable): TableNode {
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
      heights: (row) => (row >= headerRows && least ? least : 'auto'),
      body: [...(caption ? [captionRow] : []), head, ...rows],
    },
    layout: ruledLayout(columns, headerRows, rows.length, padding),
  };
}

// About the mean width of a character, and the height of a line, by the size of the type.
const CHARACTER = 0.47;
const LINE = 1.38;
/** Surely fits on either paper lying down. */
const FITS_A_PAGE = 350;

function roughHeight(node: SheetNode | Cell, width: number): number {
  if ('stack' in node)
    return (node.stack as SheetNode[]).reduce((sum, one) => sum + roughHeight(one, width), 0);
  if (!('text' in node)) return LINE * SIZE.body;
  const { text: runs, fontSize = SIZE.body } = node as TextNode;
  const text = typeof runs === 'string' ? runs : runs.map((run) => run.text).join('');
  const lines = text
    .split('\n')
    .reduce((sum, line) => sum + Math.max(1, Math.ceil((line.length * CHARACTER * fontSize) / width)), 0);
  return lines * LINE * fontSize;
}

function rowHeight(row: readonly Cell[], widths: readonly number[]): number {
  return Math.max(0, ...row.map((one, index) => roughHeight(one, widths[index] ?? 1)));
}

/** Whether a row, with the head that is repeated over it, may not fit on one page. */
function isTall(row: Cell[], head: Cell[], widths: readonly number[]): boolean {
  return rowHeight(row, widths) + rowHeight(head, widths) > FITS_A_PAGE;
}

/** The rows that a table begins with: its head and its first row. */
const beginning = ({ table }: TableNode): number => (table.headerRows ?? 0) + 1;

/** The height of a table's first rows, in points; of all where `count` is left out. */
function heightOf({ table, layout }: TableNode, count = table.body.length): number {
  return table.body.slice(0, count).reduce((sum, row, index) => {
    const least = table.heights?.(index) ?? 0;
    const height = Math.max(rowHeight(row, table.widths), typeof least === 'number' ? least : 0);
    return sum + height + layout.paddingTop(index) + layout.paddingBottom(index);
  }, 0);
}

/**
 * A table with its margin that stays on one page, such as a phase: unless it is so long that it would leave half of one.
 * @param after a line that stays with it, such as a total
 */
export function wholeTable(table: TableNode, ...after: SheetNode[]): SheetNode {
  return { margin: [0, 4, 0, 0], stack: [table, ...after], unbreakable: heightOf(table) < FITS_A_PAGE };
}

function firstTable(node: SheetNode | undefined): TableNode | null {
  if (!node) return null;
  if ('table' in node) return node;
  return 'stack' in node ? firstTable(node.stack[0]) : null;
}

/** A heading that stays on one page with the head and the first row of the table below it. */
export function headed(text: string, ...below: SheetNode[]): SheetNode[] {
  const [first] = below;
  const table = firstTable(first);
  const whole = first !== undefined && 'unbreakable' in first && first.unbreakable === true;
  // One line more than reckoned, for words do not fill their lines.
  const room = table
    ? Math.ceil(heightOf(table, whole ? undefined : beginning(table)) + LINE * SIZE.body)
    : 0;
  return [room > FITS_A_PAGE || room === 0 ? heading(text) : heading(text, room), ...below];
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
