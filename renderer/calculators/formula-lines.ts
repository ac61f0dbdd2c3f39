import type { FormLines, FormRow } from '@core/calculators/form';
import type { FormulaContent } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import { figureValue } from '@core/materials/figure';
import type { Material } from '@core/materials/material';
import { percentFromPpm } from '@core/quantities/share';

/** A library material as a line: its name, and the figures that are recorded of it. */
export function rowOfMaterial(lines: FormLines, material: Material): FormRow {
  const { library } = lines;
  if (!library) return {};
  const figures = Object.entries(library.figures).map(([column, kind]) => [
    column,
    figureValue(material.figures[kind]),
  ]);
  return { [library.name]: material.tradeName, ...Object.fromEntries(figures) };
}

/** The lines of a formula, each with its per cent; what is not recorded of a material stays to be entered. */
export function rowsOfFormula(
  lines: FormLines,
  content: Pick<FormulaContent, 'phases'>,
  materials: Readonly<Record<string, Material | undefined>>,
): FormRow[] {
  const { byLine } = formulaShares(content);
  return formulaLines(content).flatMap((line) => {
    const material = materials[line.materialId];
    const ppm = byLine.get(line.id) ?? 0;
    if (!material || ppm <= 0) return [];
    const share = lines.share ? { [lines.share]: percentFromPpm(ppm) } : {};
    return [{ ...rowOfMaterial(lines, material), ...share }];
  });
}
