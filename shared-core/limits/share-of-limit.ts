import { nonNegative, positive } from '../working/inputs';

/** Room for the binary noise of summed products, relative to the limit; far below what is weighed. */
const NOISE = 1e-9;

/** Whether a share passes a limit. @param strict the text says "less than": the limit itself is too much */
export function passes(percent: number, limitPercent: number, strict = false): boolean {
  const noise = NOISE * Math.max(limitPercent, 1e-9);
  return strict ? percent >= limitPercent - noise : percent > limitPercent + noise;
}

/** What substances come to against one limit. */
export interface ShareOfLimit {
  /** % of the product, as the limit counts. */
  total: number;
  /** % of the limit. */
  shareOfLimit: number;
  verdict: 'within' | 'above';
}

/**
 * Sums substances as a limit counts them, and holds the sum against it.
 *
 * @param substances each with its % of the product, and the factor by which the limit counts it (1 as it is)
 * @throws Problem `invalid-input` for a negative share or factor, or a limit that is not above zero
 */
export function shareOfLimit(
  substances: readonly { percent: number; factor: number }[],
  limitPercent: number,
  strict = false,
): ShareOfLimit {
  positive(limitPercent, 'The limit');
  const total = substances.reduce(
    (sum, { percent, factor }) => sum + nonNegative(percent, 'A share') * nonNegative(factor, 'A factor'),
    0,
  );
  return {
    total,
    shareOfLimit: (total / limitPercent) * 100,
    verdict: passes(total, limitPercent, strict) ? 'above' : 'within',
  };
}
