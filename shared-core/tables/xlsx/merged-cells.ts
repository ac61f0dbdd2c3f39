import type { SheetRow } from '../table';
import { type Place, readReference } from './cell-reference';
import { damaged, tooLarge } from './refusals';

/** A block of cells shown as one (ECMA-376 Part 1, 18.3.1.54 mergeCell), from its upper left to its lower right. */
export interface Merge {
  reference: string;
  from: Place;
  to: Place;
}

const MOST_MERGES = 200_000;
/** Blocks that do not overlap, as the format asks, touch no cell twice; and a sheet has 10 million cells at most. */
const MOST_STEPS = 20_000_000;

/** @throws Problem where the reference is no block of a worksheet. */
export function readMerge(reference: string, before: readonly Merge[]): Merge {
  if (before.length === MOST_MERGES) throw tooLarge('more merged cells than a table can hold');
  const [first = '', second = first] = reference.slice(0, 40).split(':');
  const [from, last] = [readReference(first), readReference(second)];
  if (!from || !last || last.line < from.line || last.column < from.column) {
    throw damaged(`merged cells lie outside of the sheet (${first})`);
  }
  return { reference, from, to: last };
}

/** The first of the rows, which are in order, that is on a line or below. */
function firstRowFrom(rows: readonly SheetRow[], line: number): number {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rows[middle]!.line < line) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Empties every cell of merged ones but the first, in place: what may still stand there is not seen by the maker.
 * Answers the blocks that meet rows with content, in the file's order.
 */
export function emptyMerged(rows: readonly SheetRow[], merges: readonly Merge[]): Merge[] {
  let steps = 0;
  return merges.filter(({ from, to }) => {
    let met = false;
    for (let at = firstRowFrom(rows, from.line); at < rows.length && rows[at]!.line <= to.line; at++) {
      const { cells, line } = rows[at]!;
      const end = Math.min(to.column + 1, cells.length);
      if (from.column < end) met = true;
      for (let column = from.column; column < end; column++) {
        if (line !== from.line || column !== from.column) cells[column] = null;
      }
      steps += 1 + Math.max(0, end - from.column);
      if (steps > MOST_STEPS) throw damaged('its merged cells overlap');
    }
    return met;
  });
}
