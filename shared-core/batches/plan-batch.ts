import { formulaLines, formulaShares } from '../formulas/shares';
import type { FormulaContent } from '../formulas/formula';
import { formatMass, formatReadability } from '../locale/mass';
import { formatPercent } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import { Problem } from '../problems/problem';
import { largestRemainder } from '../quantities/largest-remainder';
import { LARGEST_BATCH_MG } from '../quantities/mass';
import { WHOLE_PPM } from '../quantities/share';
import type { Batch, BatchPlan } from './batch';
import { minimumWeightMg, smallLines, USUAL_LIMIT_PPM, type SmallLine } from './small-lines';

export interface PlannedBatch {
  /** What the lines add up to, exactly: a whole number of the balance's steps, in mg. */
  totalMg: number;
  lines: Batch['lines'];
  /** What must be said of lines too small for the balance. */
  cautions: string[];
  /** Lines that rounding moves too far, or below the balance's minimum weight, each with a premix. */
  small: SmallLine[];
}

function refuse(path: string, title: string, advice: string): never {
  throw new Problem({ code: 'invalid-input', title, advice, fields: [{ path, message: advice }] });
}

/** The mass asked for before and with overage, in mg. @throws Problem when it is none, or too large */
function askedMg(
  { size, overagePpm }: Pick<BatchPlan, 'size' | 'overagePpm'>,
  region: Region,
): { asked: number; made: number } {
  const path = size.by === 'mass' ? 'size.massMg' : 'size.units';
  const asked = size.by === 'mass' ? size.massMg : size.units * size.fillMg;
  const made = (asked * (WHOLE_PPM + overagePpm)) / WHOLE_PPM;
  const most = formatMass(LARGEST_BATCH_MG, region);
  if (!(asked > 0))
    refuse(path, 'A batch must weigh something.', 'Enter a mass, or units and a fill, above zero.');
  if (asked > LARGEST_BATCH_MG)
    refuse(
      path,
      `${formatMass(asked, region)} is more than Stillroom plans in one batch.`,
      `Plan up to ${most} at a time, in several batches if need be.`,
    );
  if (made > LARGEST_BATCH_MG)
    refuse(
      'overagePpm',
      `With its overage the batch comes to ${formatMass(made, region)}, more than Stillroom plans in one batch.`,
      `Lower the overage or the size, so that both come to ${most} at most.`,
    );
  return { asked, made };
}

function requireWhole(content: FormulaContent, region: Region): void {
  const { differencePpm, byLine } = formulaShares(content);
  if ([...byLine.values()].some((ppm) => ppm < 0))
    refuse(
      'phases',
      'The lines come to more than 100 %, so that nothing is left for the q.s. line.',
      'Lower the shares until they leave room, and record a new version.',
    );
  if (differencePpm !== 0)
    refuse(
      'phases',
      `The lines come to ${formatPercent(WHOLE_PPM - differencePpm, region)}, not 100 %.`,
      'A batch can be weighed only from a formula that totals 100 %. Complete it and record a new version.',
    );
}

function tooSmall(
  content: FormulaContent,
  lines: Batch['lines'],
  plan: Pick<BatchPlan, 'readabilityMg'>,
  region: Region,
): string[] {
  const shares = formulaShares(content).byLine;
  const lost = lines.filter((line) => line.targetMg === 0 && (shares.get(line.lineId) ?? 0) > 0);
  if (lost.length === 0) return [];
  const step = formatReadability(plan.readabilityMg, region);
  return [
    `${lost.length === 1 ? 'One line is' : `${lost.length} lines are`} too small for a balance that reads ` +
      `${step}: use a finer balance, a premix, or a larger batch.`,
  ];
}

function roundingCautions(
  small: readonly SmallLine[],
  readabilityMg: number,
  limitPpm: number,
  region: Region,
): string[] {
  const rounded = small.filter((line) => line.roundedTooFar).length;
  const light = small.filter((line) => line.belowMinimum).length;
  const limit = formatPercent(limitPpm, region, limitPpm % 10_000 === 0 ? 0 : 2);
  const least = formatMass(minimumWeightMg(readabilityMg, limitPpm), region);
  const many = (count: number, one: string, more: string): string =>
    count === 1 ? `One line ${one}` : `${count} lines ${more}`;
  return [
    ...(rounded > 0
      ? [
          `${many(rounded, 'is', 'are')} moved by more than ${limit} when rounded to the balance’s readability.`,
        ]
      : []),
    ...(light > 0
      ? [
          `${many(light, 'lies', 'lie')} below ${least}, the least that this balance weighs to within ${limit}: use a finer balance, or the premix below.`,
        ]
      : []),
  ];
}

/**
 * The target mass of every line of a batch, rounded to what the balance can read so that they add up exactly
 * (largest-remainder rule). The total is the size asked for plus overage, rounded to the balance's step.
 *
 * @param limitPpm what a line may miss by weighing before it is called out, ppm of it
 * @param plan size by mass (mg) or units × fill (mg), overage in ppm of the batch, readability in mg
 * @throws Problem `invalid-input` when the batch weighs nothing, passes 10 tonnes with its overage, is smaller than the
 *   balance can read, or the formula does not total 100 %
 */
export function batchLines(
  content: FormulaContent,
  plan: Pick<BatchPlan, 'size' | 'overagePpm' | 'readabilityMg'>,
  region: Region = 'en-GB',
  limitPpm = USUAL_LIMIT_PPM,
): PlannedBatch {
  if (!(plan.readabilityMg > 0))
    refuse(
      'readabilityMg',
      'A readability is above zero.',
      'Enter the balance’s readability, such as 0.1 g.',
    );
  const { asked, made } = askedMg(plan, region);
  requireWhole(content, region);
  const steps = Math.round(made / plan.readabilityMg);
  if (steps < 1)
    refuse(
      'readabilityMg',
      `The balance has a readability of ${formatReadability(plan.readabilityMg, region)}, coarser than the whole batch of ${formatMass(asked, region)}.`,
      'Choose a finer balance or make a larger batch.',
    );
  const totalMg = steps * plan.readabilityMg;
  const lines = formulaLines(content);
  const shares = formulaShares(content).byLine;
  const targets = largestRemainder(
    lines.map((line) => shares.get(line.id) ?? 0),
    totalMg,
    plan.readabilityMg,
  );
  const planned = lines.map((line, index) => ({
    lineId: line.id,
    materialId: line.materialId,
    targetMg: targets[index] ?? 0,
  }));
  const small = smallLines(content, { ...plan, totalMg, lines: planned }, limitPpm);
  return {
    totalMg,
    lines: planned,
    cautions: [
      ...tooSmall(content, planned, plan, region),
      ...roundingCautions(small, plan.readabilityMg, limitPpm, region),
    ],
    small,
  };
}
