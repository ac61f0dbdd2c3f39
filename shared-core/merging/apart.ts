/** A change of a number that both libraries drew. */
export interface ToldApart {
  was: string;
  is: string;
}

/** The first letters of a text, at most so many UTF-16 units: never half of a sign, which no library can keep. */
export function cutTo(text: string, most: number): string {
  return text.slice(0, most).replace(/[\ud800-\udbff]$/, '');
}

/** What another library is called, as it may stand within a line: without what a folder's name can hold and no line can. */
export function nameInLine(library: string): string {
  return library
    .toWellFormed()
    .replace(/[\s\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]+/gu, ' ')
    .normalize('NFC')
    .trim();
}

/**
 * A number that both libraries drew, told apart by the name of the one that it comes from: `B-0031 (North Bench)`.
 * @param taken whether something else bears a number already
 * @param most as many letters as it may have
 */
export function toldApart(
  number: string,
  library: string,
  taken: (number: string) => boolean,
  most: number,
): string {
  for (let count = 1; ; count += 1) {
    const end = count === 1 ? '' : ` ${count}`;
    const room = most - number.length - end.length - 3;
    const name = cutTo(nameInLine(library), Math.max(0, room)).trim();
    const written = name === '' ? `${cutTo(number, most - 4)} ${count + 1}` : `${number} (${name}${end})`;
    if (!taken(written)) return written;
  }
}
