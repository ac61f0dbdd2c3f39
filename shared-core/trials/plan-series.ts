import { figureValue } from '../materials/figure';
import { ppmFromPercent } from '../quantities/share';
import { badInput } from '../working/inputs';
import { meanHlbApplies } from '../emulsions/systems/character';
import { hlbSeries, levelSeries, type OtherLine } from './plan-trials';
import type { Trial } from './trial-series';
import type { MaterialLine } from '../emulsions/bench/lines';
import { refuseBeyondWhole, totalPercent } from '../emulsions/bench/shares';
import type { Target } from '../emulsions/bench/target';

export interface SeriesPlan {
  emulsifiers: readonly MaterialLine[];
  oils: readonly MaterialLine[];
  rest: readonly MaterialLine[];
  /** What the formula is filled up with to 100 %, such as water; null when nothing is missing. */
  fillWith: string | null;
  batchMg: number;
  readabilityMg: number;
}

/** What is missing to 100 % of oils, emulsifiers and the rest, %; zero when they come to that or more. */
export function missingPercent({ emulsifiers, oils, rest }: SeriesPlan): number {
  const present = totalPercent([...emulsifiers, ...oils, ...rest].map((line) => line.percent));
  return Math.max(0, totalPercent([100, -present]));
}

/** Below this, % of the formula, nothing needs filling up. */
const NOTHING = 0.05;

function others(plan: SeriesPlan): OtherLine[] {
  const held = [...plan.oils, ...plan.emulsifiers].map((line) => line.percent);
  // Scaling them down to fit would plan another phase than the one on the bench.
  refuseBeyondWhole('Oils and emulsifiers together come', held, 'oils');
  const missing = missingPercent(plan);
  const lines = [...plan.oils, ...plan.rest].map(({ material, percent }) => ({
    materialId: material.id,
    share: percent,
  }));
  if (missing <= NOTHING) return lines;
  if (plan.fillWith === null)
    throw badInput(
      `${missing} % of the batch is not accounted for.`,
      'Choose what to make it up with, such as water.',
      'fillWith',
    );
  const known = lines.find((line) => line.materialId === plan.fillWith);
  if (known) known.share += missing;
  else lines.push({ materialId: plan.fillWith, share: missing });
  return lines;
}

/**
 * Trials around the ratio of the two emulsifiers on the bench: the target HLB ± 1 in steps of 0.5.
 * @throws Problem `invalid-input` where there are not two classic non-ionics with HLBs, no target, or as `hlbSeries`
 */
export function planHlbSeries(plan: SeriesPlan, target: Target | null): Trial[] {
  const [first, second] = plan.emulsifiers;
  const hlbOfLine = (line: MaterialLine | undefined): number | null =>
    line && meanHlbApplies(line.material) ? figureValue(line.material.figures.hlb) : null;
  const [a, b] = [hlbOfLine(first), hlbOfLine(second)];
  if (plan.emulsifiers.length !== 2 || !first || !second || a === null || b === null)
    throw badInput(
      'A series of HLBs needs two classic non-ionic emulsifiers with an HLB on the bench.',
      'Put such a pair on the bench, or plan a series of levels.',
    );
  if (!target) throw badInput('There is no target HLB.', 'Give the oil phase, or set a target on the bench.');
  const [low, high] = a <= b ? [first, second] : [second, first];
  return hlbSeries({
    targetHlb: Number(target.value.toFixed(2)),
    low: { materialId: low.material.id, hlb: Math.min(a, b) },
    high: { materialId: high.material.id, hlb: Math.max(a, b) },
    levelPpm: ppmFromPercent(totalPercent(plan.emulsifiers.map((line) => line.percent))),
    others: others(plan),
    batchMg: plan.batchMg,
    readabilityMg: plan.readabilityMg,
  });
}

/**
 * Trials of the ratio on the bench at several levels, % of the formula.
 * @throws Problem `invalid-input` as `levelSeries`
 */
export function planLevelSeries(plan: SeriesPlan, levelsPercent: readonly number[]): Trial[] {
  return levelSeries({
    emulsifiers: plan.emulsifiers.map(({ material, percent }) => ({
      materialId: material.id,
      share: percent,
      hlb: meanHlbApplies(material) ? figureValue(material.figures.hlb) : null,
    })),
    levelsPpm: levelsPercent.map(ppmFromPercent),
    others: others(plan),
    batchMg: plan.batchMg,
    readabilityMg: plan.readabilityMg,
  });
}
