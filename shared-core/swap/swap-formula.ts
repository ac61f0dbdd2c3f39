import { formulaFacts } from '../checks/facts';
import { hlbOfFormula, type FormulaSide } from '../formulas/change/consequences';
import type { FormulaContent } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';
import { holdHlb } from './hold-hlb';
import { swapLines, type SwapDose } from './swap-lines';

/** A swap as it is asked for. */
export interface Swap {
  from: Pick<Material, 'id' | 'tradeName'>;
  to: Material;
  dose: SwapDose;
  /** Whether the emulsifiers are moved so that the match of offered to required HLB stays. */
  holdHlb: boolean;
}

/** A formula after a swap, and what is to be said of how it went. */
export interface SwappedFormula {
  content: FormulaContent;
  materials: FormulaSide['materials'];
  notes: string[];
}

function hlbs({ content, materials }: FormulaSide) {
  const known = new Map(Object.entries(materials).flatMap(([id, one]) => (one ? [[id, one] as const] : [])));
  return hlbOfFormula(formulaFacts({ content, materials: known }));
}

/** The offered HLB that keeps the distance to the required one; null where there was none to keep. */
function heldTarget(before: FormulaSide, after: FormulaSide): number | null {
  const [was, is] = [hlbs(before), hlbs(after)];
  if (was.offered === null) return null;
  const moved = was.required !== null && is.required !== null ? is.required - was.required : 0;
  return was.offered + moved;
}

function lineNotes(merged: number, lines: number, to: Material): string[] {
  return [
    ...(merged > 0
      ? [`${to.tradeName} was in the phase already: its lines became one, with both shares.`]
      : []),
    ...(lines > 1 ? [`${to.tradeName} is now on ${lines} lines, in different phases.`] : []),
  ];
}

function totalNotes(content: FormulaContent): string[] {
  const { totalPpm, byLine, hasToHundred } = formulaShares(content);
  if ([...byLine.values()].some((ppm) => ppm < 0))
    return ['Nothing is left for the q.s. line: lower another share.'];
  return !hasToHundred && totalPpm !== WHOLE_PPM
    ? [
        `The lines no longer come to 100 %: ${(totalPpm / 10_000).toFixed(2)} %. Distribute the rest, or mark a line q.s.`,
      ]
    : [];
}

/** Puts one material in the place of another in a formula, and re-solves the emulsifiers where that is asked for. */
export function swapInFormula(before: FormulaSide, swap: Swap): SwappedFormula {
  const { from, to, dose } = swap;
  const { content, merged, lines } = swapLines(before.content, from.id, to, dose);
  const materials = { ...before.materials, [to.id]: to };
  const notes = lineNotes(merged, lines, to);
  const target = swap.holdHlb ? heldTarget(before, { content, materials }) : null;
  const held = target === null ? null : holdHlb(content, materials, target);
  if (held?.moved && target !== null)
    notes.push(`The emulsifiers were moved to hold HLB ${target.toFixed(1)}, at their total of before.`);
  if (held?.failed) notes.push(`The HLB is not held: ${held.failed}.`);
  const after = held?.content ?? content;
  return { content: after, materials, notes: [...notes, ...totalNotes(after)] };
}

/** Whether a formula holds a material. */
export function holds(content: FormulaContent, materialId: string): boolean {
  return formulaLines(content).some((line) => line.materialId === materialId);
}
