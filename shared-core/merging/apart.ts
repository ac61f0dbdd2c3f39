/** A change of a number that both libraries drew. */
export interface ToldApart {
  was: string;
  is: string;
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
    const name = library.slice(0, Math.max(0, room)).trim();
    const written = name === '' ? `${number.slice(0, most - 4)} ${count + 1}` : `${number} (${name}${end})`;
    if (!taken(written)) return written;
  }
}
