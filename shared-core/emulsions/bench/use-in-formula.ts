import type { FormulaContent, FormulaLine } from '../../formulas/formula';
import { formulaLines, formulaShares } from '../../formulas/shares';
import { shareDigits } from '../../locale/numbers';
import type { Material } from '../../materials/material';
import { largestRemainder } from '../../quantities/largest-remainder';
import { ppmFromPercent } from '../../quantities/share';
import { badInput } from '../../working/inputs';
import { chargeConflicts, type ChargeConflict } from '../conflicts/charge-conflicts';
import { isEmulsifier } from '../conflicts/recognise';
import type { BenchLine } from './bench-state';
import { forbids } from './reading';

export interface UseWish {
  phaseId: string;
  lines: readonly BenchLine[];
  /** Takes the formula's own emulsifiers away first; otherwise the lines are added to what stands there. */
  replace: boolean;
  newId: () => string;
}

type Materials = Readonly<Record<string, Material | undefined>>;

/** The lines of a formula that are emulsifiers: what a system put in their place replaces. */
export function emulsifierLines(content: FormulaContent, materials: Materials): FormulaLine[] {
  return formulaLines(content).filter((line) => {
    const material = materials[line.materialId];
    return material !== undefined && isEmulsifier(material);
  });
}

function without(content: FormulaContent, leaving: readonly FormulaLine[]): FormulaContent {
  const phases = content.phases.map((phase) => ({
    ...phase,
    lines: phase.lines.filter((line) => !leaving.includes(line)),
  }));
  return { ...content, phases };
}

/**
 * The shares of a system in ppm, rounded to the decimals that the formula's other lines are written with, so that one
 * computed share does not give every line four decimals. Together they stay the nearest to what they were; none that
 * is there is rounded to nothing.
 */
export function roundedShares(
  content: FormulaContent,
  materials: Materials,
  lines: readonly { percent: number }[],
): number[] {
  const own = emulsifierLines(content, materials);
  const others = formulaLines(content).filter((line) => !line.toHundred && !own.includes(line));
  const exact = lines.map(({ percent }) => ppmFromPercent(percent));
  const total = exact.reduce((sum, ppm) => sum + ppm, 0);
  for (let digits = shareDigits(others.map((line) => line.ppm)); digits < 4; digits += 1) {
    const step = 10 ** (4 - digits);
    const rounded = largestRemainder(exact, Math.round(total / step) * step, step);
    if (rounded.every((ppm, at) => ppm > 0 || exact[at] === 0)) return rounded;
  }
  return exact;
}

/**
 * A formula's content with the bench's emulsifiers in one of its phases.
 *
 * @throws Problem `invalid-input` when the phase is gone, or the fixed lines would pass 100 %
 */
export function withEmulsifiers(
  content: FormulaContent,
  materials: Materials,
  wish: UseWish,
): FormulaContent {
  if (!content.phases.some((phase) => phase.id === wish.phaseId))
    throw badInput('This phase is no longer in the formula.', 'Choose another phase.', 'phase');
  const base = wish.replace ? without(content, emulsifierLines(content, materials)) : content;
  const rounded = roundedShares(content, materials, wish.lines);
  const lines = wish.lines
    .map((line, at) => ({ ...line, ppm: rounded[at] ?? 0 }))
    .filter((line) => line.ppm > 0)
    .map(({ materialId, ppm }): FormulaLine => ({
      id: wish.newId(),
      materialId,
      ppm,
      toHundred: false,
      note: '',
    }));
  const phases = base.phases.map((phase) =>
    phase.id === wish.phaseId ? { ...phase, lines: [...phase.lines, ...lines] } : phase,
  );
  const after = { ...base, phases };
  const { byLine } = formulaShares(after);
  const over = [...byLine.values()].some((ppm) => ppm < 0);
  if (over)
    throw badInput(
      'With these lines the formula passes 100 %: nothing would be left for its q.s. line.',
      'Replace the emulsifiers already there, or lower another line first.',
      'lines',
    );
  return after;
}

/** The charge conflicts by which the formula must be refused: an emulsifier put in forms a salt there. */
export function refusals(
  content: FormulaContent,
  materials: Materials,
  put: readonly BenchLine[],
): ChargeConflict[] {
  const own = new Set(put.map((line) => line.materialId));
  const { byLine } = formulaShares(content);
  const doses = formulaLines(content).flatMap((line) => {
    const material = materials[line.materialId];
    return material ? [{ lineId: line.id, material, ppm: byLine.get(line.id) ?? 0 }] : [];
  });
  return chargeConflicts(doses).filter(
    (conflict) =>
      forbids(conflict) && (own.has(conflict.first.materialId) || own.has(conflict.second.materialId)),
  );
}
