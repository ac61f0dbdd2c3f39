/** Bounds of a worksheet. Source: the A1 references of ECMA-376 Part 1, 18.17.2.3, end at XFD1048576. */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** Zero-based column and one-based row of a cell. */
export interface Place {
  column: number;
  line: number;
}

/** Zero-based column of letters such as `AB`; -1 where they lie beyond XFD. */
function columnOf(letters: string): number {
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return column <= MOST_COLUMNS ? column - 1 : -1;
}

/** A cell such as `AB12` (ECMA-376 Part 1, 18.18.7 ST_CellRef); null where it is none, or lies outside. */
export function readReference(reference: string): Place | null {
  const parts = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/.exec(reference);
  if (!parts) return null;
  const place = { column: columnOf(parts[1]!), line: Number(parts[2]) };
  return place.column < 0 || place.line > MOST_ROWS ? null : place;
}

/** Letters of a zero-based column: 0 is A, 27 is AB. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

export const writeReference = ({ column, line }: Place) => `${columnLetters(column)}${line}`;
