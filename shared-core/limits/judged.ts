import type { MarketRegion } from '../products/product-kinds';
import type { Substance } from '../substances/substance';
import type { Factor } from '../substances/counted-as';
import type { Amount, Bringing } from './contents';
import type { Limit } from './limit';

/** A substance as one limit counts it. */
export interface Counted {
  substance: Substance;
  parts: Bringing[];
  /** % of the product, as the substance stands in it. */
  amount: Amount;
  factor: Factor;
  /** Its own limit, %, where the shares of limits are summed. */
  ownPercent: number | null;
}

/**
 * `above`: even the least that the suppliers' ranges allow. `may be above`: only towards their upper end.
 * `below least`: an active that comes to less than its range.
 */
export type Verdict = 'within' | 'above' | 'may be above' | 'below least' | 'notice' | 'cannot tell';

/** One limit held against a formula for one region. */
export interface Judged {
  limit: Limit;
  region: MarketRegion;
  time: 'in force' | 'coming';
  /** False where it hangs on the kind of product, which the formula does not say. */
  certain: boolean;
  counted: Counted[];
  /** As the limit counts: % of the product, or % of the limits where their shares are summed. */
  total: Amount;
  /** What the total is held against, in the same unit; null where nothing is allowed or only a notice is asked. */
  most: number | null;
  verdict: Verdict;
  /** The pH asked for, where the formula's is not within it; `unknown` where the formula says none. */
  ph: 'within' | 'outside' | 'unknown' | null;
  /** The users of the formula by whom it must not be used. */
  forbiddenTo: string[];
  /** The words that its label must carry, as the amounts are. */
  phrase: string;
  cautions: string[];
}

/** Those of which nothing is allowed by their own limit: no share of nothing can be summed, so any of them is too much. */
export function ofNoneAllowed(counted: readonly Counted[]): Counted[] {
  return counted.filter(({ ownPercent }) => ownPercent === 0);
}

/** By what a substance's per cent goes into its limit's sum: as it is counted, or as a share of its own limit in %. */
export function factorInSum({ factor, ownPercent }: Pick<Counted, 'factor' | 'ownPercent'>): number {
  if (ownPercent === null) return factor.value;
  return ownPercent === 0 ? 0 : (factor.value * 100) / ownPercent;
}

/** Whether a total was converted by molar masses, and so is known as exactly as they are. */
export function isConverted(counted: readonly Pick<Counted, 'factor'>[]): boolean {
  return counted.some(({ factor }) => factor.value !== 1);
}

/** The largest that a total may come to, in per cent of what is allowed; null where nothing is to be compared. */
export function shareOfMost({
  total,
  most,
  counted,
}: Pick<Judged, 'total' | 'most' | 'counted'>): number | null {
  return most === null || most === 0 || ofNoneAllowed(counted).length > 0 ? null : (total.high / most) * 100;
}

/** Whether something must be done about it, as far as it applies. */
export function isBroken({ verdict, ph, forbiddenTo }: Judged): boolean {
  return (
    verdict === 'above' ||
    verdict === 'may be above' ||
    verdict === 'below least' ||
    ph === 'outside' ||
    forbiddenTo.length > 0
  );
}
