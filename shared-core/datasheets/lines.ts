/** Where something stands on a page: points from its upper left corner. */
export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A piece of text as it lies on a page. Its height is that of its letters. */
export interface TextItem extends Rect {
  text: string;
}

export interface PageText {
  /** From 1. */
  number: number;
  width: number;
  height: number;
  items: readonly TextItem[];
}

/** Words of a line that stand together, as in a cell of a table. */
export interface Cell extends Rect {
  text: string;
  line: number;
}

/** What stands at one height of a page, in cells from left to right. */
export interface Line extends Rect {
  page: number;
  /** Its place among all lines of the document. */
  at: number;
  cells: Cell[];
}

/** Two words are apart by a column, not by a space, from this share of the letters' height on. */
const COLUMN_GAP = 0.9;
/** Texts whose middles differ by less than this share of their height stand on one line. */
const SAME_LINE = 0.4;
/** What fills the room between a label and its value: a row of points, or of spaces. */
const LEADERS = /\s*(?:\.{4,}|…{2,}|_{4,}|\s{3,}|\t+)\s*/g;

/** A piece with dots or a run of spaces inside, as the cells that it draws. */
function parted(item: TextItem): TextItem[] {
  const { text, x, width } = item;
  const each = width / Math.max(1, text.length);
  const pieces: TextItem[] = [];
  let from = 0;
  for (const found of [...text.matchAll(LEADERS), null]) {
    const to = found?.index ?? text.length;
    const piece = text.slice(from, to).trim();
    if (piece !== '') pieces.push({ ...item, text: piece, x: x + from * each, width: (to - from) * each });
    from = to + (found?.[0].length ?? 0);
  }
  return pieces;
}

const right = ({ x, width }: Rect): number => x + width;
const middle = ({ y, height }: Rect): number => y + height / 2;

/** The box around several. */
export function around(rects: readonly Rect[]): Rect {
  const x = Math.min(...rects.map((one) => one.x));
  const y = Math.min(...rects.map((one) => one.y));
  const to = Math.max(...rects.map(right));
  return { x, y, width: to - x, height: Math.max(...rects.map((one) => one.y + one.height)) - y };
}

function rowsOf(items: readonly TextItem[]): TextItem[][] {
  const sorted = [...items].sort((a, b) => middle(a) - middle(b));
  const rows: TextItem[][] = [];
  for (const item of sorted) {
    const row = rows[rows.length - 1];
    const first = row?.[0];
    const same = first && middle(item) - middle(first) < Math.max(first.height, item.height) * SAME_LINE;
    if (same) row.push(item);
    else rows.push([item]);
  }
  return rows.map((row) => row.sort((a, b) => a.x - b.x));
}

function cellsOf(row: readonly TextItem[], line: number): Cell[] {
  const cells: Cell[] = [];
  for (const item of row) {
    const last = cells[cells.length - 1];
    const gap = last ? item.x - right(last) : Infinity;
    if (last && gap < Math.max(last.height, item.height) * COLUMN_GAP) {
      const space = gap > item.height * 0.12 && !last.text.endsWith(' ') ? ' ' : '';
      Object.assign(last, { ...around([last, item]), text: `${last.text}${space}${item.text}` });
    } else cells.push({ ...item, line });
  }
  return cells.map((cell) => ({ ...cell, text: cell.text.replace(/\s+/g, ' ').trim() }));
}

/** The lines of pages, from above to below, each with its cells. */
export function linesOf(pages: readonly PageText[]): Line[] {
  const lines: Line[] = [];
  for (const { number, items } of pages) {
    const pieces = items.filter(({ text, height }) => text.trim() !== '' && height > 0).flatMap(parted);
    for (const row of rowsOf(pieces)) {
      const at = lines.length;
      const cells = cellsOf(row, at);
      lines.push({ page: number, at, cells, ...around(cells) });
    }
  }
  return lines;
}

export const lineText = ({ cells }: Line): string => cells.map(({ text }) => text).join('  ');

/** How much of their widths two share, from 0 for nothing. */
export function overlap(a: Rect, b: Rect): number {
  return Math.min(right(a), right(b)) - Math.max(a.x, b.x);
}
