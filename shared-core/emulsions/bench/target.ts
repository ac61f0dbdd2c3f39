import { show } from '../../working/show';
import { hlbGap } from '../hlb-band';
import type { OfferedHlb } from '../offered-hlb';
import type { RequiredHlb } from '../required-hlb';
import type { BenchType } from './bench-state';
import type { Outcome } from './outcome';

/** The HLB to meet, with the band that its sources leave open. */
export interface Target {
  value: number;
  low: number;
  high: number;
  from: 'oils' | 'hand';
}

/** What a target by hand is allowed either way: the step of a trial series (common practice). */
const BY_HAND_EITHER_WAY = 0.5;
/** No band is narrower than this to either side: HLB values are not known more finely (common practice). */
export const LEAST_EITHER_WAY = 0.2;

/** The target: set by hand, else the required HLB of the oil phase; null where neither is known. */
export function targetOf(byHand: number | null, required: Outcome<RequiredHlb>): Target | null {
  if (byHand !== null)
    return {
      value: byHand,
      low: Math.max(0, byHand - BY_HAND_EITHER_WAY),
      high: byHand + BY_HAND_EITHER_WAY,
      from: 'hand',
    };
  if (!required.ok) return null;
  const { worked, low, high } = required.value;
  return {
    value: worked.value,
    low: Math.min(low, worked.value - LEAST_EITHER_WAY),
    high: Math.max(high, worked.value + LEAST_EITHER_WAY),
    from: 'oils',
  };
}

export type Fit = 'within' | 'above' | 'below' | 'not known';

/** How the offered HLB stands to the target, in words. */
export interface Verdict {
  fit: Fit;
  /** Offered less target, HLB units; null when HLB does not tell. */
  difference: number | null;
  says: string;
}

const figure = (value: number): string => show(Number(value.toFixed(1)));

function leaning(fit: 'above' | 'below', type: BenchType): string {
  if (type === 'w/o')
    return fit === 'above'
      ? 'The film leans towards o/w; raise the share of the lower HLB.'
      : 'Raise the share of the higher HLB.';
  return fit === 'above'
    ? 'Raise the share of the lower HLB.'
    : 'The film leans towards w/o; raise the share of the higher HLB.';
}

/** Compares what is offered with what is asked for; says so where the mean tells nothing. */
export function verdictOn(target: Target | null, offered: OfferedHlb, type: BenchType): Verdict {
  if (!offered.described) {
    const says =
      'HLB says nothing here: none of the emulsifiers is a classic non-ionic with an HLB. Go by charge, usage and trials.';
    return { fit: 'not known', difference: null, says };
  }
  if (!target) {
    const says = 'There is nothing to compare with: give the oil phase, or set a target HLB.';
    return { fit: 'not known', difference: null, says };
  }
  const mean = offered.described.value;
  const difference = mean - target.value;
  const band = `${figure(target.low)} to ${figure(target.high)}`;
  if (mean >= target.low - 1e-9 && mean <= target.high + 1e-9) {
    const off =
      Math.abs(difference) < 0.05 ? 'on the target' : `${figure(Math.abs(difference))} off the target`;
    return { fit: 'within', difference, says: `Within the band of ${band}, ${off}.` };
  }
  const spread = offered.band;
  if (spread && hlbGap(spread, target) === 0) {
    const says = `${figure(Math.abs(difference))} off the target, but within the spread of its figures (${figure(spread.low)} to ${figure(spread.high)}), which meets the band of ${band}.`;
    return { fit: 'within', difference, says };
  }
  const fit = difference > 0 ? 'above' : 'below';
  const by = figure(Math.abs(difference));
  return {
    fit,
    difference,
    says: `${by} ${fit} the target, outside the band of ${band}. ${leaning(fit, type)}`,
  };
}
