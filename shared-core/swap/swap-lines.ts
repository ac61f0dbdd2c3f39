import type { FormulaContent, FormulaLine } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import type { Material } from '../materials/material';
import { largestRemainder } from '../quantities/largest-remainder';

/** How much of the new material comes in. */
export const SWAP_DOSES = ['as it was', 'within its range', 'its usual share'] as const;
export type SwapDose = (typeof SWAP_DOSES)[number];

/** A formula with one material in the place of another. */
export interface SwappedLines {
  content: FormulaContent;
  /** Lines of the new material that were there already and now hold both shares. */
  merged: number;
  /** In how many lines, of different phases, the new material stands now. */
  lines: number;
}

/** What all lines of the old material come to together, put as the new one is to be used. ppm */
function wantedPpm(was: number, usage: Material['usage'], dose: SwapDose): number {
  if (dose === 'as it was' || !usage) return was;
  if (dose === 'its usual share') return usage.typicalPpm ?? was;
  return Math.min(Math.max(was, usage.minPpm ?? 0), usage.maxPpm ?? was);
}

const joinedNotes = (one: string, other: string): string =>
  [...new Set([one, other].filter((note) => note !== ''))].join('; ').slice(0, 300);

/** Two lines of one material in one phase are one, with both shares; q.s. where either was. */
function mergedPhase(lines: readonly FormulaLine[], materialId: string): FormulaLine[] {
  const [first, ...others] = lines.filter((line) => line.materialId === materialId);
  if (!first || others.length === 0) return [...lines];
  const whole = others.reduce(
    (sum, line): FormulaLine => ({
      ...sum,
      ppm: sum.ppm + line.ppm,
      toHundred: sum.toHundred || line.toHundred,
      note: joinedNotes(sum.note, line.note),
    }),
    first,
  );
  return lines.flatMap((line) => (line === first ? [whole] : others.includes(line) ? [] : [line]));
}

/**
 * Puts one material in the place of another, on every line of a formula. The q.s. line stays q.s.; where the new
 * material stands in the same phase already, the two lines become one with both shares.
 *
 * @param dose how much of the new one; over several lines in their old proportion
 */
export function swapLines(
  content: FormulaContent,
  from: string,
  to: Pick<Material, 'id' | 'usage'>,
  dose: SwapDose,
): SwappedLines {
  const { byLine } = formulaShares(content);
  const own = formulaLines(content).filter((line) => line.materialId === from && !line.toHundred);
  const shares = own.map((line) => byLine.get(line.id) ?? 0);
  const was = shares.reduce((sum, ppm) => sum + ppm, 0);
  const now = largestRemainder(shares, wantedPpm(was, to.usage, dose), 1);
  const ppmOf = new Map(own.map((line, at) => [line.id, now[at] ?? 0]));
  const before = formulaLines(content).filter((line) => line.materialId === to.id).length;
  const swappedIn = (lines: readonly FormulaLine[]): FormulaLine[] =>
    lines.map((line) =>
      line.materialId === from ? { ...line, materialId: to.id, ppm: ppmOf.get(line.id) ?? line.ppm } : line,
    );
  // A phase without the old material stays as it is, two lines of the new one included.
  const phases = content.phases.map((phase) =>
    phase.lines.some((line) => line.materialId === from)
      ? { ...phase, lines: mergedPhase(swappedIn(phase.lines), to.id) }
      : phase,
  );
  const after = { ...content, phases };
  const swapped = formulaLines(content).filter((line) => line.materialId === from).length;
  const lines = formulaLines(after).filter((line) => line.materialId === to.id).length;
  return { content: after, merged: before + swapped - lines, lines };
}
