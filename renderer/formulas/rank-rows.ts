import { foldedWords } from '@core/quantities/fold';
import type { ShelfRow } from '@core/shelf/query';

/** How a row answers a text: by its trade name, by a name or code of it, by its supplier too, or by its notes only. */
type Nearness = 0 | 1 | 2 | 3;

function nearness(row: ShelfRow, typed: readonly string[]): Nearness {
  const answers = (text: string): boolean => {
    const words = foldedWords(text);
    return typed.every((part) => words.some((word) => word.startsWith(part)));
  };
  const names = `${row.tradeName}\n${row.inci}\n${row.code}`;
  if (answers(row.tradeName)) return 0;
  if (answers(names)) return 1;
  return answers(`${names}\n${row.supplier}`) ? 2 : 3;
}

/**
 * Rows in the order in which one who typed a name means them: by trade name first, those found by their notes last.
 * Rows as near as each other keep their order.
 *
 * @returns the rows, and whether the first one shows what was typed
 */
export function rankRows(rows: readonly ShelfRow[], text: string): { rows: ShelfRow[]; firstShows: boolean } {
  const typed = foldedWords(text);
  const ranked = rows
    .map((row) => ({ row, near: nearness(row, typed) }))
    .sort((one, other) => one.near - other.near);
  return { rows: ranked.map(({ row }) => row), firstShows: ranked.length > 0 && ranked[0]?.near !== 3 };
}
