import type { FormulaContent, FormulaLine, FormulaPhase } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import { largestRemainder } from '../quantities/largest-remainder';
import type { Reformulation } from './reformulate';

/** The phase that a new material goes to: where most of what does the same stands. */
function phaseOf(content: FormulaContent, roleOf: ReadonlyMap<string, string>, role: string): string | null {
  const { byLine } = formulaShares(content);
  const sums = content.phases.map((phase) => ({
    id: phase.id,
    ppm: phase.lines
      .filter((line) => roleOf.get(line.materialId) === role)
      .reduce((sum, line) => sum + (byLine.get(line.id) ?? 0), 0),
  }));
  const [most] = sums.sort((a, b) => b.ppm - a.ppm);
  return most?.id ?? null;
}

/** The lines of a phase with their new shares; those that come to nothing go. */
function changedLines(phase: FormulaPhase, ppmOf: ReadonlyMap<string, number>): FormulaLine[] {
  return phase.lines.flatMap((line) => {
    const ppm = ppmOf.get(line.id) ?? 0;
    return ppm > 0 || line.toHundred ? [{ ...line, ppm }] : [];
  });
}

/**
 * A formula's content as a reformulation has it. Lines of one material keep their proportion; what is new comes as a
 * line of its own, in the phase of what does the same; the q.s. line stays q.s. and has what the others leave.
 */
export function reformulated(
  content: FormulaContent,
  { shares }: Pick<Reformulation, 'shares'>,
  newId: () => string,
): FormulaContent {
  const { byLine } = formulaShares(content);
  const roleOf = new Map(shares.map(({ materialId, role }) => [materialId, role]));
  const ppmOf = new Map<string, number>();
  for (const { materialId, is } of shares) {
    const own = formulaLines(content).filter((line) => line.materialId === materialId);
    const parts = largestRemainder(
      own.map((line) => Math.max(0, byLine.get(line.id) ?? 0)),
      is,
      1,
    );
    own.forEach((line, at) => ppmOf.set(line.id, parts[at] ?? 0));
  }
  const come = shares.filter(({ was, is }) => was === 0 && is > 0);
  const target = new Map(come.map(({ materialId, role }) => [materialId, phaseOf(content, roleOf, role)]));
  const phases = content.phases.map((phase) => ({
    ...phase,
    lines: [
      ...changedLines(phase, ppmOf),
      ...come
        .filter(({ materialId }) => target.get(materialId) === phase.id)
        .map(({ materialId, is }): FormulaLine => ({
          ...{ id: newId(), materialId, ppm: is, toHundred: false, note: '' },
        })),
    ],
  }));
  return { ...content, phases };
}
