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
  /** Of the carrier's line, what is left to weigh beside it and any other mixture that it carries, mg. */
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

/** The lines that need no premix themselves, those of the same phase first, the largest first. */
function carriersOf(
  content: FormulaContent,
  { lineId, lines }: PremixAsk,
  small: ReadonlySet<string>,
): Batch['lines'] {
  const phase = content.phases.find((one) => one.lines.some((line) => line.id === lineId));
  const own = new Set(phase?.lines.map((line) => line.id));
  const others = lines.filter((line) => !small.has(line.lineId));
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
  { stages, parts, takeMg }: Thinned,
  carried: readonly Thinned[],
  left: number,
): Worked {
  const { exactMg, minimumMg, readabilityMg } = ask;
  const brought = carried.map((one) => ` − ${grams(one.takeMg)} × (1 − 1 / ${show(one.parts)})`);
  return worked(
    [
      {
        says: `how far to thin it, so that what is taken reaches the minimum weight of ${grams(minimumMg)} g: at least ${grams(minimumMg)} / ${grams(exactMg)}`,
        // One mixture is its own product: “5 = 5 parts” would say nothing.
        shows: stages.length > 1 ? stages.map((stage) => show(stage.parts)).join(' × ') : '',
        result: parts,
        unit: 'parts',
      },
      ...stageSteps(stages),
      {
        says:
          carried.length === 1
            ? 'carrier to weigh into the batch beside it: its line less what the mixture brings'
            : `carrier to weigh into the batch beside them: its line less what all ${carried.length} mixtures with it bring`,
        shows: `its line${brought.join('')}`,
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

/** A mixture before it is known what else its carrier carries. */
interface Thinned extends Pick<Premix, 'stages' | 'parts' | 'takeMg'> {
  carrier: Batch['lines'][number];
  /** Of the carrier, what the mixture brings into the batch, mg. */
  carriedMg: number;
}

/** @param before what is mixed into a line already */
function thinned(
  content: FormulaContent,
  ask: PremixAsk,
  small: ReadonlySet<string>,
  before: (lineId: string) => readonly Thinned[],
): Thinned | null {
  const { exactMg, minimumMg, readabilityMg } = ask;
  const factors = factorsFor(Math.max(1.0001, minimumMg / exactMg));
  if (!factors) return null;
  const parts = factors.reduce((a, b) => a * b, 1);
  const takeMg = Math.round((exactMg * parts) / readabilityMg) * readabilityMg;
  const carriedMg = takeMg * (1 - 1 / parts);
  const carrier = carriersOf(content, ask, small).find(
    ({ lineId, targetMg }) => targetMg >= carriedMg + sumOf(before(lineId)),
  );
  if (!carrier) return null;
  // Each mixture must yield what the next one takes: the minimum weight always does, and the last what the batch takes.
  const stages = factors.map((factor, index): PremixStage => {
    const wanted = index === factors.length - 1 ? Math.max(minimumMg, takeMg / factor) : minimumMg;
    const weighMg = Math.ceil(wanted / readabilityMg - 1e-9) * readabilityMg;
    return { weighMg, parts: factor, carrierMg: weighMg * (factor - 1) };
  });
  return { carrier, stages, parts, takeMg, carriedMg };
}

const sumOf = (some: readonly Thinned[]): number => some.reduce((sum, one) => sum + one.carriedMg, 0);

/**
 * Premixes by which small lines can be weighed, in their order; null for one that no line is large enough to carry.
 * What is left of a carrier counts all the mixtures that it carries.
 */
export function premixesFor(content: FormulaContent, asks: readonly PremixAsk[]): (Premix | null)[] {
  const small = new Set(asks.map((ask) => ask.lineId));
  const carried = new Map<string, Thinned[]>();
  const mixturesWith = (lineId: string): Thinned[] => carried.get(lineId) ?? [];
  const all = asks.map((ask) => {
    const one = thinned(content, ask, small, mixturesWith);
    if (one) carried.set(one.carrier.lineId, [...mixturesWith(one.carrier.lineId), one]);
    return one;
  });
  return asks.map((ask, at): Premix | null => {
    const one = all[at];
    if (!one) return null;
    const { stages, parts, takeMg, carrier } = one;
    const together = mixturesWith(carrier.lineId);
    const { readabilityMg } = ask;
    const carrierLeftMg = Math.round((carrier.targetMg - sumOf(together)) / readabilityMg) * readabilityMg;
    const shown = working(ask, one, together, carrierLeftMg);
    return { carrierLineId: carrier.lineId, stages, parts, takeMg, carrierLeftMg, worked: shown };
  });
}
