/** How many cells of a kind there are, and the first of them. */
export interface Tally {
  count: number;
  first: string;
}

/** What is odd about a sheet, counted while it is read. */
export interface Oddities {
  /** Formulas, and those of them that no value was kept with. */
  formulas: Tally;
  unvalued: Tally;
  /** Numbers that are shown as dates, but are no day. */
  noDay: Tally;
  merged: Tally;
  /** Letters of hidden columns that hold something. */
  hiddenColumns: string[];
}

export const noTally = (): Tally => ({ count: 0, first: '' });

export function add(tally: Tally, place: () => string): void {
  if (tally.count === 0) tally.first = place();
  tally.count++;
}

const AGAIN = 'Open the file in a spreadsheet program, save it there, and choose it again.';

function unvaluedNote({ count, first }: Tally): string {
  if (count === 1) return `The formula in ${first} has no value kept with it, and is read as empty. ${AGAIN}`;
  return `${count} formulas have no value kept with them, the first in ${first}; they are read as empty. ${AGAIN}`;
}

function staleNote({ count, first }: Tally): string {
  const which = count === 1 ? `the formula in ${first}` : `${count} formulas, the first in ${first},`;
  return `The file asks for its formulas to be worked out anew, so the value kept with ${which} may be old. ${AGAIN}`;
}

function noDayNote({ count, first }: Tally): string {
  if (count === 1)
    return `The number in ${first} is shown as a date, but is not a day; it is read as a number.`;
  return `${count} numbers are shown as dates, but are no days, the first in ${first}; they are read as numbers.`;
}

function mergedNote({ count, first }: Tally): string {
  if (count === 1) return `The cells ${first} are merged: their value is read in the first of them only.`;
  return `Cells are merged in ${count} places, the first at ${first}: the value of each is read in its first cell only.`;
}

function hiddenNote(columns: string[]): string {
  const [what, them] =
    columns.length === 1 ? ['Column', 'is hidden; it is'] : ['Columns', 'are hidden; they are'];
  return `${what} ${columns.join(', ')} ${them} read all the same.`;
}

/** What is to be told of a sheet before it is used, in sentences; `stale` where its formulas are to be worked out anew. */
export function notesOf(odd: Oddities, stale: boolean): string[] {
  const notes: string[] = [];
  if (odd.unvalued.count > 0) notes.push(unvaluedNote(odd.unvalued));
  if (stale && odd.formulas.count > odd.unvalued.count) notes.push(staleNote(odd.formulas));
  if (odd.noDay.count > 0) notes.push(noDayNote(odd.noDay));
  if (odd.merged.count > 0) notes.push(mergedNote(odd.merged));
  if (odd.hiddenColumns.length > 0) notes.push(hiddenNote(odd.hiddenColumns));
  return notes;
}
