import { badInput, between, nonNegative } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { emulsifierHlb } from './hlb-scale';
import { GRIFFIN_1949 } from './sources';

/** Binary noise of a computed target must not push it out of a pair's reach. */
const NOISE = 1e-9;

export interface TwoForTarget {
  targetHlb: number;
  lowHlb: number;
  highHlb: number;
  /** Both together, in any unit (% of the formula, g); absent when only the ratio is wanted. */
  total?: number;
}

export interface Blend {
  /** Mass % of the high-HLB one in the pair; carries the working. */
  worked: Worked;
  highPercent: number;
  lowPercent: number;
  /** In the unit of `total`; null when no total was given. */
  highMass: number | null;
  lowMass: number | null;
}

/**
 * The ratio of two emulsifiers for a target HLB: x = (target − low) / (high − low).
 *
 * @throws Problem `invalid-input` when both HLBs are equal or swapped, or the target lies out of reach: then
 *   `facts` hold `gap`, `lowHlb`, `highHlb` and `partnerHlb` (the HLB from which a new partner reaches it)
 * Source: Griffin 1949.
 */
export function blendForTarget(wish: TwoForTarget): Blend {
  const target = emulsifierHlb(wish.targetHlb, 'Target HLB');
  const low = emulsifierHlb(wish.lowHlb, 'HLB of the low one');
  const high = emulsifierHlb(wish.highHlb, 'HLB of the high one');
  if (wish.total !== undefined) nonNegative(wish.total, 'Total level');
  mustDiffer(low, high);
  mustReach(target, low, high);
  const share = Math.min(1, Math.max(0, (target - low) / (high - low)));
  const steps: WorkingStep[] = [
    {
      says: 'share of the high-HLB emulsifier in the pair: (target − low) / (high − low)',
      shows: `100 × (${show(target)} − ${showTerm(low)}) / (${show(high)} − ${showTerm(low)})`,
      result: 100 * share,
      unit: '%',
    },
  ];
  return {
    worked: worked(steps, [GRIFFIN_1949], ['A starting point for trials: try ±1 HLB in steps of 0.5.']),
    highPercent: 100 * share,
    lowPercent: 100 * (1 - share),
    highMass: wish.total === undefined ? null : wish.total * share,
    lowMass: wish.total === undefined ? null : wish.total * (1 - share),
  };
}

/**
 * The HLB that a partner must have so that, at its share, the pair meets the target.
 *
 * @param keptPercent mass % of the kept emulsifier in the pair, 0 to below 100
 * @returns an HLB; it may lie off the scale, which says that no such partner exists
 */
export function partnerHlbFor(targetHlb: number, keptHlb: number, keptPercent: number): Worked {
  emulsifierHlb(targetHlb, 'Target HLB');
  emulsifierHlb(keptHlb, 'HLB of the kept one');
  between(keptPercent, 0, 100, 'Share of the kept one', '%');
  const partner = 1 - keptPercent / 100;
  if (partner <= 0)
    throw badInput('No share is left for a partner.', 'Keep less than 100 % of the first emulsifier.');
  const step = {
    says: 'HLB a partner needs: (target − kept share × kept HLB) / partner’s share',
    shows: `(${show(targetHlb)} − ${show(keptPercent / 100)} × ${showTerm(keptHlb)}) / ${show(partner)}`,
    result: (targetHlb - (keptPercent / 100) * keptHlb) / partner,
    unit: '',
  };
  return worked([step], [GRIFFIN_1949]);
}

function mustDiffer(low: number, high: number): void {
  if (low === high)
    throw badInput(
      `Both emulsifiers have HLB ${hlbWord(low)}, so any ratio gives ${hlbWord(low)}.`,
      'Choose two emulsifiers of different HLB.',
      'highHlb',
    );
  if (low > high)
    throw badInput(
      `The low HLB (${hlbWord(low)}) is above the high one (${hlbWord(high)}).`,
      'Swap the two emulsifiers.',
      'lowHlb',
    );
}

function mustReach(target: number, low: number, high: number): void {
  if (target > high + NOISE)
    throw badInput(
      `Target HLB ${hlbWord(target)} is ${hlbWord(target - high)} above what this pair reaches (${hlbWord(low)} to ${hlbWord(high)}).`,
      `Replace the low one (${hlbWord(low)}) by an emulsifier of HLB ${hlbWord(target)} or more: ` +
        `${atEqualParts(target, high)}.`,
      'targetHlb',
      reach(target - high, low, high, target),
    );
  if (target < low - NOISE)
    throw badInput(
      `Target HLB ${hlbWord(target)} is ${hlbWord(low - target)} below what this pair reaches (${hlbWord(low)} to ${hlbWord(high)}).`,
      `Replace the high one (${hlbWord(high)}) by an emulsifier of HLB ${hlbWord(target)} or less: ` +
        `${atEqualParts(target, low)}.`,
      'targetHlb',
      reach(low - target, low, high, target),
    );
}

function reach(gap: number, lowHlb: number, highHlb: number, partnerHlb: number) {
  return { gap, lowHlb, highHlb, partnerHlb };
}

function atEqualParts(target: number, kept: number): string {
  const partner = partnerHlbFor(target, kept, 50).value;
  return partner < 0 || partner > 20
    ? 'equal parts would need a partner off the scale, so the kept one can only be the smaller part'
    : `at equal parts one of HLB ${hlbWord(partner)}`;
}

/** An HLB in a sentence: two decimals, finer than any is known. */
function hlbWord(hlb: number): string {
  return show(Math.abs(hlb) < 0.01 ? hlb : Math.round(hlb * 100) / 100);
}
