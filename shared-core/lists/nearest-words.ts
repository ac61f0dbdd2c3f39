const FIGURE = /\p{N}/u;

/** Whether a word holds a figure: it is then a code or a grade, and never meant for another one. */
export function holdsFigure(word: string): boolean {
  return FIGURE.test(word);
}

/** How many slips of the finger a word of a length may hold and still be known: none in the shortest. */
export function slipsAllowed(word: string): number {
  if (word.length < 4 || holdsFigure(word)) return 0;
  return word.length < 8 ? 1 : 2;
}

/**
 * The words that what was typed is nearest to, and how far: a letter wrong, missing, too many, or two swapped count one
 * each (optimal string alignment). What was typed may be the beginning of the word only.
 *
 * @param sorted words without figures in ascending order, walked once: words that begin alike share the work of their beginning
 * @returns null when none lies within `most` slips
 */
export function nearestWords(
  typed: string,
  sorted: readonly string[],
  most: number,
): { words: string[]; slips: number } | null {
  if (most < 1) return null;
  const walk = new PrefixWalk(typed);
  let words: string[] = [];
  let slips = most;
  for (const word of sorted) {
    const away = walk.distance(word, slips);
    if (away > slips) continue;
    if (away < slips) words = [];
    slips = away;
    words.push(word);
  }
  return words.length > 0 ? { words, slips } : null;
}

/** Distances of one typed text to the beginnings of many words in order. */
class PrefixWalk {
  /** `rows[k]` are the distances of the word's first k letters to each beginning of what was typed. */
  private readonly rows: number[][];
  /** `nearest[k]` is the least distance of any of the word's first 0…k letters to the whole of what was typed. */
  private readonly nearest: number[];
  /** The least of each row. */
  private readonly least: number[] = [0];
  private word = '';
  /** How many rows hold for `word`. */
  private depth = 0;

  constructor(private readonly typed: string) {
    this.rows = [Array.from({ length: typed.length + 1 }, (_, j) => j)];
    this.nearest = [typed.length];
  }

  /** The distance to the nearest beginning of a word; more than `most` says only that it is farther than that. */
  distance(word: string, most: number): number {
    let k = 0;
    while (k < this.depth && k < word.length && word[k] === this.word[k]) k++;
    this.word = word;
    while (k < word.length) {
      // Neither this row nor the one before leads on to anything near.
      if (this.hopeless(k, most)) break;
      k++;
      this.rows[k] = this.nextRow(k);
      this.nearest[k] = Math.min(this.nearest[k - 1]!, this.rows[k]![this.typed.length]!);
    }
    this.depth = k;
    return this.nearest[k]!;
  }

  private hopeless(k: number, most: number): boolean {
    return this.least[k]! > most && (k === 0 || this.least[k - 1]! > most - 1);
  }

  private nextRow(k: number): number[] {
    const { typed, word } = this;
    const above = this.rows[k - 1]!;
    const letter = word[k - 1];
    const row = [k];
    let lowest = k;
    for (let j = 1; j <= typed.length; j++) {
      const replaced = above[j - 1]! + (letter === typed[j - 1] ? 0 : 1);
      let least = Math.min(replaced, above[j]! + 1, row[j - 1]! + 1);
      if (k > 1 && j > 1 && letter === typed[j - 2] && word[k - 2] === typed[j - 1])
        least = Math.min(least, this.rows[k - 2]![j - 2]! + 1);
      row[j] = least;
      if (least < lowest) lowest = least;
    }
    this.least[k] = lowest;
    return row;
  }
}
