import { nonNegative, positive } from '../working/inputs';

/** Room for the binary noise of summed products, relative to the limit; far below what is weighed. */
const NOISE = 1e-9;
/**
 * How exactly a share converted by molar masses is known, relative to itself: atomic weights vary in nature by up to one
 * in ten thousand (IUPAC: carbon 12.0096 to 12.0116), of which a salt and its acid share most.
 */
export const CONVERTED_TO_WITHIN = 1e-5;

/** How a share is held against a limit. */
export interface Holding {
  /** The text says "less than": the limit itself is too much. */
  strict?: boolean;
  /** It was converted by molar masses: what differs by less than they are known is the limit itself. */
  converted?: boolean;
}

/** Whether a share passes a limit. */
export function passes(
  percent: number,
  limitPercent: number,
  { strict = false, converted = false }: Holding = {},
): boolean {
  const room = (converted ? CONVERTED_TO_WITHIN : NOISE) * Math.max(limitPercent, 1e-9);
  return strict ? percent >= limitPercent - room : percent > limitPercent + room;
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
  const converted = substances.some(({ percent, factor }) => percent > 0 && factor !== 1);
  return {
    total,
    shareOfLimit: (total / limitPercent) * 100,
    verdict: passes(total, limitPercent, { strict, converted }) ? 'above' : 'within',
  };
}
