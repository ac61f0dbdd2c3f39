import type { Material } from '../materials/material';
import { percentFromPpm } from '../quantities/share';

/** Taken as the highest use where the maker recorded none, in % of the formula. Common practice, no source. */
export const USUAL_HIGHEST_USE = 8;

/** Between which levels a material may be used, % of the formula. */
export interface UsageRange {
  minPercent: number;
  maxPercent: number;
  /** True where no highest use is recorded, so that the usual one stands in for it: to be said beside every answer. */
  maxAssumed: boolean;
}

type Recorded = { usage: Pick<NonNullable<Material['usage']>, 'minPpm' | 'maxPpm'> | null };

/** The recorded usage range; 0 % and the usual highest use where an end is not recorded. */
export function usageRange({ usage }: Recorded): UsageRange {
  const minPercent = percentFromPpm(usage?.minPpm ?? 0);
  const maxPpm = usage?.maxPpm ?? null;
  if (maxPpm !== null) return { minPercent, maxPercent: percentFromPpm(maxPpm), maxAssumed: false };
  return { minPercent, maxPercent: Math.max(USUAL_HIGHEST_USE, minPercent), maxAssumed: true };
}

/** Said beside an answer that rests on assumed usage ranges; nothing when none does. */
export function assumedUseCaution(names: readonly string[]): string[] {
  if (names.length === 0) return [];
  return [
    `No highest use is recorded for ${names.join(', ')}: ${USUAL_HIGHEST_USE} % of the formula is assumed (common practice, no source). Record the supplier’s range at the material.`,
  ];
}
