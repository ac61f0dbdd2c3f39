import type { FormulaContent, FormulaLine } from '../../formulas/formula';
import { formulaLines, formulaShares } from '../../formulas/shares';
import type { Material } from '../../materials/material';
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

function without(content: FormulaContent, materials: Materials): FormulaContent {
  const stays = (line: FormulaLine): boolean => {
    const material = materials[line.materialId];
    return !material || !isEmulsifier(material);
  };
  const phases = content.phases.map((phase) => ({ ...phase, lines: phase.lines.filter(stays) }));
  return { ...content, phases };
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
  const base = wish.replace ? without(content, materials) : content;
  const lines = wish.lines
    .map((line) => ({ ...line, ppm: ppmFromPercent(line.percent) }))
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
