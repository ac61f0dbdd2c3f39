import { checkFormula } from '@core/checks/all';
import type { Finding } from '@core/checks/check';
import type { FormulaContent } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import { WHOLE_PPM } from '@core/quantities/share';
import { library } from '../demo/demo-shelf';
import { EXAMPLES } from '../limits/law';
import { added, without, type Shelf, type Way } from './follow';

const byId = new Map(library.materials.map((one) => [one.id, one]));
export const shelf: Shelf = { byId, code: (code) => library.materials.find((one) => one.code === code)! };

export const find = (content: FormulaContent): Finding[] =>
  checkFormula({ content, materials: byId, law: EXAMPLES, onDay: '2026-11-28' });

/** What the first advice of all asks for: the water takes what is left. */
export const toHundred = (formula: FormulaContent): FormulaContent => ({
  ...formula,
  phases: formula.phases.map((phase) => ({
    ...phase,
    lines: phase.lines.map((line) =>
      line.materialId === shelf.code('H-100').id ? { ...line, toHundred: true } : line,
    ),
  })),
});

const target =
  (step: number): Way =>
  (formula) => {
    const { phLow, phHigh } = formula.target;
    if (phLow === null || phHigh === null) return null;
    return { ...formula, target: { ...formula.target, phLow: phLow + step, phHigh: phHigh + step } };
  };

/**
 * Ways in which a sound formula is spoilt: a line left out, the pH moved, a material of the shelf put in at its highest
 * use (every so manieth, beginning at one, so that all formulas together go through the shelf).
 */
export function spoilt(formula: FormulaContent, at: number, of: number): FormulaContent[] {
  const lines = formula.phases.flatMap((phase) => phase.lines);
  const ways: Way[] = [
    ...lines.filter(({ toHundred: rest }) => !rest).map(({ id }) => without([id])),
    target(-1.5),
    target(1.5),
    ...library.materials
      .filter((_, n) => n % of === at)
      .filter((one) => !lines.some(({ materialId }) => materialId === one.id))
      .map((one) => added(one, (one.usage?.maxPpm ?? 20_000) / 10_000)),
  ];
  return ways.flatMap((way) => way(formula) ?? []).filter((one) => formulaShares(one).totalPpm === WHOLE_PPM);
}
