import { formulaShares } from '../formulas/shares';
import type { FormulaContent } from '../formulas/formula';
import { WHOLE_PPM } from '../quantities/share';
import type { Source } from '../working/working';
import type { Batch } from './batch';
import { premixesFor, type Premix } from './premix';

/** What weighing may miss a line by before it is called out, ppm of the line. Common practice, no source. */
export const USUAL_LIMIT_PPM = 10_000;

export const MINIMUM_WEIGHT_SOURCE: Source = {
  text: 'USP General Chapter 41, Balances: minimum weight = 2 s / limit, where s is not taken below 0.41 of the readability. The balance’s own certificate takes precedence.',
  basis: 'memory',
};

/**
 * The least that a balance weighs to within a limit: 2 × 0.41 × readability / limit.
 *
 * @param readabilityMg its step, mg
 * @param limitPpm what a weighing may miss, ppm of it
 * @returns mg
 */
export function minimumWeightMg(readabilityMg: number, limitPpm = USUAL_LIMIT_PPM): number {
  return (2 * 0.41 * readabilityMg * WHOLE_PPM) / limitPpm;
}

/** A line that the balance weighs too coarsely. */
export interface SmallLine {
  lineId: string;
  materialId: string;
  /** What the formula asks for, unrounded, mg. */
  exactMg: number;
  targetMg: number;
  /** How far rounding moves it, ppm of what is asked for; below zero when it is too little. */
  roundingPpm: number;
  /** Whether rounding alone passes the limit. */
  roundedTooFar: boolean;
  /** Whether it lies below the balance's minimum weight. */
  belowMinimum: boolean;
  /** Null where no line of the formula can carry it. */
  premix: Premix | null;
}

/**
 * The lines of a batch that rounding moves by more than a limit, or that lie below the minimum weight of the balance,
 * each with a premix that can be weighed.
 *
 * @param batch its whole and its lines, mg, as planned
 * @param limitPpm what a line may miss, ppm of it
 */
export function smallLines(
  content: FormulaContent,
  { totalMg, lines, readabilityMg }: Pick<Batch, 'totalMg' | 'lines' | 'readabilityMg'>,
  limitPpm = USUAL_LIMIT_PPM,
): SmallLine[] {
  const shares = formulaShares(content).byLine;
  const minimumMg = minimumWeightMg(readabilityMg, limitPpm);
  const small = lines.flatMap(({ lineId, materialId, targetMg }) => {
    const exactMg = ((shares.get(lineId) ?? 0) * totalMg) / WHOLE_PPM;
    if (exactMg <= 0) return [];
    const roundingPpm = ((targetMg - exactMg) / exactMg) * WHOLE_PPM;
    const roundedTooFar = Math.abs(roundingPpm) > limitPpm + 1e-6;
    const belowMinimum = exactMg < minimumMg;
    if (!roundedTooFar && !belowMinimum) return [];
    return [{ lineId, materialId, exactMg, targetMg, roundingPpm, roundedTooFar, belowMinimum }];
  });
  const premixes = premixesFor(
    content,
    small.map(({ lineId, exactMg }) => ({ lineId, exactMg, minimumMg, readabilityMg, lines })),
  );
  return small.map((line, at) => ({ ...line, premix: premixes[at] ?? null }));
}
