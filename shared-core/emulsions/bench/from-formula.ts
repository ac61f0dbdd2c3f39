import type { FormulaContent } from '../../formulas/formula';
import { formulaLines, formulaShares } from '../../formulas/shares';
import type { Material } from '../../materials/material';
import { percentFromPpm } from '../../quantities/share';
import { isEmulsifier } from '../conflicts/recognise';
import type { BenchLine } from './bench-state';
import { isOil } from '../systems/oil-phase';

/** The lines of a formula as the bench sorts them; a material on two lines stands once, with the sum. */
export interface TakenLines {
  oils: BenchLine[];
  emulsifiers: BenchLine[];
  rest: BenchLine[];
}

function add(lines: BenchLine[], materialId: string, percent: number): void {
  const known = lines.find((line) => line.materialId === materialId);
  if (known) known.percent += percent;
  else lines.push({ materialId, percent });
}

/** Sorts a formula's lines into its oil phase, its emulsifiers and the rest. A line below 0 % (q.s. overfull) is left out. */
export function takeLines(
  content: Pick<FormulaContent, 'phases'>,
  materials: Readonly<Record<string, Material | undefined>>,
): TakenLines {
  const taken: TakenLines = { oils: [], emulsifiers: [], rest: [] };
  const { byLine } = formulaShares(content);
  for (const line of formulaLines(content)) {
    const material = materials[line.materialId];
    const ppm = byLine.get(line.id) ?? 0;
    if (!material || ppm <= 0) continue;
    const list = isEmulsifier(material) ? taken.emulsifiers : isOil(material) ? taken.oils : taken.rest;
    add(list, material.id, percentFromPpm(ppm));
  }
  return taken;
}
