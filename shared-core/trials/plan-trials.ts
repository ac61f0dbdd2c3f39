import { Problem } from '../problems/problem';
import { largestRemainder } from '../quantities/largest-remainder';
import { LARGEST_BATCH_MG } from '../quantities/mass';
import { WHOLE_PPM } from '../quantities/share';
import type { Trial, TrialLine } from './trial-series';

/** Published HLBs disagree by 1 to 2 units: one to each side, in halves (domain practice; Lin 1970 made such series). */
export const AROUND = 1;
export const STEP = 0.5;

/** All of a batch but its emulsifiers, in the proportions of the formula. */
export interface OtherLine {
  materialId: string;
  /** In any one unit; only the proportions count. */
  share: number;
}

interface Batch {
  others: readonly OtherLine[];
  /** The mass of one batch, mg. */
  batchMg: number;
  /** What the balance can read, mg. */
  readabilityMg: number;
}

export interface HlbSeriesInput extends Batch {
  targetHlb: number;
  low: { materialId: string; hlb: number };
  high: { materialId: string; hlb: number };
  /** Emulsifiers together, ppm of the batch. */
  levelPpm: number;
}

export interface LevelSeriesInput extends Batch {
  /** The emulsifiers in the proportions to keep, in any one unit. */
  emulsifiers: readonly { materialId: string; share: number; hlb: number | null }[];
  /** The levels to try, ppm of the batch. */
  levelsPpm: readonly number[];
}

function refuse(title: string, advice: string): never {
  throw new Problem({ code: 'invalid-input', title, advice });
}

function checkBatch({ others, batchMg, readabilityMg }: Batch): void {
  if (!Number.isInteger(batchMg) || batchMg <= 0 || batchMg > LARGEST_BATCH_MG) {
    refuse('A trial batch must weigh something.', 'Enter a mass above zero, such as 100 g.');
  }
  if (!Number.isInteger(readabilityMg) || readabilityMg <= 0 || readabilityMg > batchMg) {
    refuse(
      'The balance cannot read a batch this small.',
      'Make the batch larger, or enter a finer readability.',
    );
  }
  if (batchMg % readabilityMg !== 0) {
    refuse(
      'The batch is not a whole number of the balance’s readability.',
      'Round the batch to the balance’s readability.',
    );
  }
  if (others.some((line) => !(line.share >= 0)) || !others.some((line) => line.share > 0)) {
    refuse(
      'There is nothing to emulsify in these trials.',
      'Add the oil phase and the water, with shares above zero.',
    );
  }
}

function checkLevel(ppm: number): void {
  if (!Number.isInteger(ppm) || ppm <= 0 || ppm >= WHOLE_PPM) {
    refuse('An emulsifier level must lie between 0 and 100 %.', 'Enter a level such as 4 %.');
  }
}

/** Lines of one batch: shares that add up to 100 %, masses that add up to the batch. */
function linesOf(emulsifiers: readonly OtherLine[], levelPpm: number, batch: Batch): TrialLine[] {
  const emulsifierPpm = largestRemainder(
    emulsifiers.map((line) => line.share),
    levelPpm,
    1,
  );
  const otherPpm = largestRemainder(
    batch.others.map((line) => line.share),
    WHOLE_PPM - levelPpm,
    1,
  );
  const ppm = [...emulsifierPpm, ...otherPpm];
  const mg = largestRemainder(ppm, batch.batchMg, batch.readabilityMg);
  return [...emulsifiers, ...batch.others]
    .map(({ materialId }, i) => ({
      materialId,
      part: i < emulsifiers.length ? ('emulsifier' as const) : ('other' as const),
      ppm: ppm[i] ?? 0,
      mg: mg[i] ?? 0,
    }))
    .filter((line) => line.ppm > 0);
}

/** An HLB in whole millionths: in binary 8.2 − 1 lies below 7.2, and a trial at the end of a pair's reach is lost. */
const exactly = (hlb: number): number => Math.round(hlb * 1e6);

/**
 * The HLBs of a series: the target and its neighbours that the pair can reach, both ends counted, lowest first.
 *
 * @throws Problem `invalid-input` for an HLB that is no number
 */
export function hlbSteps(targetHlb: number, lowHlb: number, highHlb: number): number[] {
  for (const hlb of [targetHlb, lowHlb, highHlb])
    if (!Number.isFinite(hlb)) refuse('An HLB is not a number.', 'Enter the HLBs of both and the target.');
  const count = Math.round((2 * AROUND) / STEP);
  return Array.from({ length: count + 1 }, (_, i) => exactly(targetHlb - AROUND + i * STEP))
    .filter((hlb) => hlb >= exactly(lowHlb) && hlb <= exactly(highHlb))
    .map((hlb) => hlb / 1e6);
}

/**
 * A series round a computed ratio of two emulsifiers: the target HLB ± 1 in steps of 0.5, at one level. HLBs beyond the
 * pair's reach are left out.
 *
 * @throws Problem `invalid-input` when the pair does not reach the target, or the batch cannot be weighed
 */
export function hlbSeries(input: HlbSeriesInput): Trial[] {
  checkBatch(input);
  checkLevel(input.levelPpm);
  const { low, high, targetHlb } = input;
  if (!(low.hlb < high.hlb)) {
    refuse('The two emulsifiers must differ in HLB.', 'Choose one of lower and one of higher HLB.');
  }
  if (!(targetHlb >= low.hlb && targetHlb <= high.hlb)) {
    refuse(
      `HLB ${targetHlb} lies outside the pair, which reaches ${low.hlb} to ${high.hlb}.`,
      'Choose another pair, or another target.',
    );
  }
  return hlbSteps(targetHlb, low.hlb, high.hlb).map((hlb) => {
    const share = Math.min(1, Math.max(0, (hlb - low.hlb) / (high.hlb - low.hlb)));
    const emulsifiers = [
      { materialId: high.materialId, share },
      { materialId: low.materialId, share: 1 - share },
    ];
    const lines = linesOf(emulsifiers, input.levelPpm, input);
    return { label: `HLB ${Number(hlb.toFixed(2))}`, hlb, levelPpm: input.levelPpm, lines, result: '' };
  });
}

function meanHlb(emulsifiers: LevelSeriesInput['emulsifiers']): number | null {
  if (emulsifiers.some((one) => one.hlb === null)) return null;
  const whole = emulsifiers.reduce((sum, one) => sum + one.share, 0);
  return emulsifiers.reduce((sum, one) => sum + one.share * (one.hlb ?? 0), 0) / whole;
}

/**
 * A series of levels at one ratio.
 *
 * @throws Problem `invalid-input` without emulsifiers or levels, or when the batch cannot be weighed
 */
export function levelSeries(input: LevelSeriesInput): Trial[] {
  checkBatch(input);
  const { emulsifiers, levelsPpm } = input;
  if (emulsifiers.some((one) => !(one.share >= 0)) || !emulsifiers.some((one) => one.share > 0)) {
    refuse('There are no emulsifiers to try.', 'Choose at least one, with a share above zero.');
  }
  if (levelsPpm.length === 0) refuse('There are no levels to try.', 'Enter at least one level, such as 4 %.');
  for (const ppm of levelsPpm) checkLevel(ppm);
  const hlb = meanHlb(emulsifiers);
  return [...new Set(levelsPpm)]
    .sort((a, b) => a - b)
    .map((levelPpm) => ({
      label: `${levelPpm / 10_000} %`,
      hlb,
      levelPpm,
      lines: linesOf(emulsifiers, levelPpm, input),
      result: '',
    }));
}
