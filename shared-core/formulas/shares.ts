import { WHOLE_PPM } from '../quantities/share';
import type { FormulaContent, FormulaLine, FormulaPhase } from './formula';

/** What the lines of a formula come to. All shares in ppm of the formula. */
export interface FormulaShares {
  /** Each line's share, the q.s. line's computed; below zero there when the others pass 100 %. */
  byLine: Map<string, number>;
  byPhase: Map<string, number>;
  totalPpm: number;
  /** What is missing to (positive) or beyond (negative) 100 %. */
  differencePpm: number;
  hasToHundred: boolean;
}

/** All lines of a formula in the order they stand. */
export function formulaLines(content: Pick<FormulaContent, 'phases'>): FormulaLine[] {
  return content.phases.flatMap((phase: FormulaPhase) => phase.lines);
}

/** Resolves the q.s. line and adds up lines and phases. */
export function formulaShares(content: Pick<FormulaContent, 'phases'>): FormulaShares {
  const lines = formulaLines(content);
  const fixed = lines.filter((line) => !line.toHundred).reduce((sum, line) => sum + line.ppm, 0);
  const byLine = new Map(lines.map((line) => [line.id, line.toHundred ? WHOLE_PPM - fixed : line.ppm]));
  const byPhase = new Map(
    content.phases.map((phase) => [
      phase.id,
      phase.lines.reduce((sum, line) => sum + (byLine.get(line.id) ?? 0), 0),
    ]),
  );
  const totalPpm = [...byLine.values()].reduce((sum, ppm) => sum + ppm, 0);
  const hasToHundred = lines.some((line) => line.toHundred);
  return { byLine, byPhase, totalPpm, differencePpm: WHOLE_PPM - totalPpm, hasToHundred };
}
