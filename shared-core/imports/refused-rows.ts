import { writeCsv } from '../tables/csv';
import { cellText, type Sheet } from '../tables/table';
import type { Outcome } from './plan-row';

/**
 * The rows that were refused, as a CSV file: as they stand in the table, each with why, so that they can be mended there
 * and taken in again.
 * @param head which row of the sheet names the columns
 */
export function refusedRowsCsv(sheet: Sheet, head: number, outcomes: readonly Outcome[]): string {
  const refused = new Map(outcomes.filter(({ kind }) => kind === 'refused').map((one) => [one.line, one]));
  const headings = sheet.rows[head]?.cells.map(cellText) ?? [];
  const width = Math.max(headings.length, ...sheet.rows.map(({ cells }) => cells.length));
  const filled = (texts: readonly string[]): string[] =>
    Array.from({ length: width }, (_, at) => texts[at] ?? '');
  const rows = sheet.rows.flatMap(({ line, cells }) => {
    const why = refused.get(line);
    if (!why) return [];
    const reasons = why.faults.map(({ heading, message }) => (heading ? `${heading}: ${message}` : message));
    return [[String(line), reasons.join(' '), ...filled(cells.map(cellText))]];
  });
  return writeCsv(['Line', 'Why it was refused', ...filled(headings)], rows);
}
