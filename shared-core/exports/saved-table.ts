import type { Region } from '../locale/numbers';
import { writeCsv } from '../tables/csv';
import { sureNumber } from '../tables/sure-number';
import { cellText, type Cell } from '../tables/table';
import { writeXlsx } from '../tables/xlsx/write-xlsx';

export const TABLE_FORMATS = ['xlsx', 'csv'] as const;
export type TableFormat = (typeof TABLE_FORMATS)[number];

/** A table on its way out: its name, the heads of its columns, and its rows. */
export interface SavedTable {
  name: string;
  head: string[];
  rows: Cell[][];
}

/** The columns in which something stands, and the first one, which says what a row is of. */
export function withoutEmptyColumns({ name, head, rows }: SavedTable): SavedTable {
  const said = head.map((_, at) => at === 0 || rows.some((cells) => (cells[at] ?? null) !== null));
  const kept = <T>(cells: readonly T[]): T[] => cells.filter((_, at) => said[at]);
  return { name, head: kept(head), rows: rows.map(kept) };
}

const hasComma = (region: Region): boolean =>
  new Intl.NumberFormat(region)
    .formatToParts(0.5)
    .some(({ type, value }) => type === 'decimal' && value === ',');

/** Numbers as the region writes them, every digit; else as a maker reads the cell. */
function csvText(cell: Cell, comma: boolean): string {
  if (typeof cell !== 'number') return cellText(cell);
  return comma ? sureNumber(cell).replace('.', ',') : sureNumber(cell);
}

/**
 * Tables as the bytes of a file. CSV holds one table and follows the region, as its spreadsheets expect: decimal commas
 * and semicolons, or points and commas. What would run as a formula is made inert, and taken back by our own reader.
 * @param tables at least one; CSV takes the first
 */
export function savedTable(tables: readonly SavedTable[], format: TableFormat, region: Region): Uint8Array {
  if (format === 'xlsx') return writeXlsx(tables.map(({ name, head, rows }) => ({ name, head, rows })));
  const [first] = tables;
  if (!first) throw new Error('A CSV file holds one table.');
  const comma = hasComma(region);
  const rows = first.rows.map((cells) => cells.map((cell) => csvText(cell, comma)));
  return new TextEncoder().encode(writeCsv(first.head, rows, comma ? ';' : ','));
}
