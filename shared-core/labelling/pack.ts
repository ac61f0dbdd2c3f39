import { positive } from '../working/inputs';

/** The least height of the letters that a text asks, in mm. */
export const LEAST_LETTERS = {
  US: {
    mm: 1.6,
    text: '21 CFR 701.3(b): letters at least 1/16 inch high, 1/32 inch on packs with less than 12 square inches for labelling',
  },
  EU: {
    mm: null,
    text: 'Regulation (EC) No 1223/2009, Article 19: indelible, easily legible and visible; no height is set',
  },
} as const;

/** How wide an average letter and how far apart lines are, in heights of a small x; of the typeface of our sheets. */
const ADVANCE = 1.02;
const LINE = 2.45;

/** A text set for a pack. */
export interface PackText {
  lines: string[];
  /** Letters that a line holds, about. */
  perLine: number;
  heightMm: number;
}

/**
 * Breaks a text for a label of a width, between words only; a word longer than a line stands alone.
 * Letters are reckoned by their average width, so that the print itself may differ by a word or two.
 *
 * @param widthMm of the space for the list
 * @param letterMm height of a small x
 * @throws Problem `invalid-input` for a size that is not above zero
 */
export function layOutForPack(text: string, widthMm: number, letterMm: number): PackText {
  const perLine = Math.max(
    1,
    Math.floor(positive(widthMm, 'The width') / (positive(letterMm, 'The letter height') * ADVANCE)),
  );
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= perLine)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return { lines, perLine, heightMm: lines.length * letterMm * LINE };
}
