import type { FormulaContent } from '../formulas/formula';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import { COMMON_PRACTICE, type Worked, type WorkingStep } from '../working/working';
import type { Batch } from './batch';

/** Into how many parts a mixture is thinned at once: more is hard to stir in evenly. Common practice, no source. */
const FACTORS = [2, 5, 10, 20];
const MOST_STAGES = 4;

/** One mixture on the way: what is weighed into it, and the carrier that fills it up. */
export interface PremixStage {
  /** Of the material, or of the mixture before, mg. */
  weighMg: number;
  /** Parts of mixture to one part of what is weighed in. */
  parts: number;
  carrierMg: number;
}

/** A small line weighed as part of a larger mixture: how it is made, and how much of it goes into the batch. */
export interface Premix {
  /** The line that the material is mixed into; both must be of one phase, and the material must dissolve in it. */
  carrierLineId: string;
  stages: PremixStage[];
  /** Parts of the last mixture to one part of material. */
  parts: number;
  /** Of the last mixture, into the batch, mg. */
  takeMg: number;
  /** Of the carrier's line, what is left to weigh beside, mg. */
  carrierLeftMg: number;
  worked: Worked;
}

export interface PremixAsk {
  lineId: string;
  /** What the formula asks for, mg. */
  exactMg: number;
  minimumMg: number;
  readabilityMg: number;
  lines: Batch['lines'];
}

/** The other lines, those of the same phase first, the largest first. */
function carriersOf(content: FormulaContent, { lineId, lines }: PremixAsk): Batch['lines'] {
  const phase = content.phases.find((one) => one.lines.some((line) => line.id === lineId));
  const own = new Set(phase?.lines.map((line) => line.id));
  const others = lines.filter((line) => line.lineId !== lineId);
  return others.sort(
    (a, b) => Number(own.has(b.lineId)) - Number(own.has(a.lineId)) || b.targetMg - a.targetMg,
  );
}

/** The fewest mixtures, and then the least thinning, that reach a factor; null when none do. */
function factorsFor(needed: number): number[] | null {
  let reached: number[][] = [[]];
  for (let stage = 0; stage < MOST_STAGES; stage += 1) {
    reached = reached.flatMap((some) =>
      FACTORS.filter((one) => one <= (some.at(-1) ?? Infinity)).map((one) => [...some, one]),
    );
    const product = (factors: number[]): number => factors.reduce((a, b) => a * b, 1);
    const enough = reached.filter((factors) => product(factors) >= needed - 1e-9);
    enough.sort((a, b) => product(a) - product(b));
    if (enough[0]) return enough[0];
  }
  return null;
}

const grams = (mg: number): string => show(Number((mg / 1000).toFixed(4)));

function stageSteps(stages: readonly PremixStage[]): WorkingStep[] {
  return stages.map(({ weighMg, parts, carrierMg }, index) => ({
    says: `mixture ${index + 1}: ${grams(weighMg)} g of ${index === 0 ? 'the material' : `mixture ${index}`}, filled up with carrier to ${show(parts)} parts`,
    shows: `${grams(weighMg)} × (${show(parts)} − 1)`,
    result: carrierMg / 1000,
    unit: 'g of carrier',
  }));
}

function working(
  ask: PremixAsk,
  stages: readonly PremixStage[],
  parts: number,
  takeMg: number,
  left: number,
): Worked {
  const { exactMg, minimumMg, readabilityMg } = ask;
  return worked(
    [
      {
        says: `how far to thin it, so that what is taken reaches the minimum weight of ${grams(minimumMg)} g: at least ${grams(minimumMg)} / ${grams(exactMg)}`,
        shows: stages.map((stage) => show(stage.parts)).join(' × '),
        result: parts,
        unit: 'parts',
      },
      ...stageSteps(stages),
      {
        says: 'carrier to weigh into the batch beside it: its line less what the mixture brings',
        shows: `its line − ${grams(takeMg)} × (1 − 1 / ${show(parts)})`,
        result: left / 1000,
        unit: 'g',
      },
      {
        says: `mixture ${stages.length} to weigh into the batch, to the balance’s readability of ${grams(readabilityMg)} g`,
        shows: `${grams(exactMg)} × ${show(parts)}`,
        result: takeMg / 1000,
        unit: 'g',
      },
    ],
    [COMMON_PRACTICE],
    [
      'Only where the material dissolves or spreads evenly in the carrier, and both go into one phase. Stir until even, weigh out at once; what is left over is waste.',
    ],
  );
}

/** A premix by which a small line can be weighed; null where no line is large enough to carry it. */
export function premixFor(content: FormulaContent, ask: PremixAsk): Premix | null {
  const { exactMg, minimumMg, readabilityMg } = ask;
  const factors = factorsFor(Math.max(1.0001, minimumMg / exactMg));
  if (!factors) return null;
  const parts = factors.reduce((a, b) => a * b, 1);
  const takeMg = Math.round((exactMg * parts) / readabilityMg) * readabilityMg;
  const carried = takeMg * (1 - 1 / parts);
  const carrier = carriersOf(content, ask).find((line) => line.targetMg >= carried);
  if (!carrier) return null;
  // Each mixture must yield what the next one takes: the minimum weight always does, and the last what the batch takes.
  const stages = factors.map((factor, index): PremixStage => {
    const wanted = index === factors.length - 1 ? Math.max(minimumMg, takeMg / factor) : minimumMg;
    const weighMg = Math.ceil(wanted / readabilityMg - 1e-9) * readabilityMg;
    return { weighMg, parts: factor, carrierMg: weighMg * (factor - 1) };
  });
  const carrierLeftMg = Math.round((carrier.targetMg - carried) / readabilityMg) * readabilityMg;
  return {
    carrierLineId: carrier.lineId,
    stages,
    parts,
    takeMg,
    carrierLeftMg,
    worked: working(ask, stages, parts, takeMg, carrierLeftMg),
  };
}
