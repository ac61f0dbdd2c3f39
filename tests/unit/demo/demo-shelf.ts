import { demoLibrary } from '@core/demo/demo-library';
import { MUDDLE_CODE } from '@core/demo/formulas/muddle';
import type { Formula } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';

export const library = demoLibrary();
/** The formulas that are meant to be right: one is wrong on purpose. */
export const soundFormulas = library.formulas.filter(({ code }) => code !== MUDDLE_CODE);
const byId = new Map(library.materials.map((material) => [material.id, material]));

export interface UsedMaterial {
  material: Material;
  ppm: number;
  phaseC: number | null;
}

/** The materials of a formula with their resolved shares and their phase's temperature. */
export function usedIn(formula: Formula): UsedMaterial[] {
  const { byLine } = formulaShares(formula);
  return formula.phases.flatMap((phase) =>
    phase.lines.map((line) => {
      const material = byId.get(line.materialId);
      if (!material) throw new Error(`${formula.name}: a line names a material that is not on the shelf.`);
      return { material, ppm: byLine.get(line.id) ?? Number.NaN, phaseC: phase.temperatureC };
    }),
  );
}

export function lineCount(formula: Formula): number {
  return formulaLines(formula).length;
}

export function formulaByCode(code: string): Formula {
  const found = library.formulas.find((formula) => formula.code === code);
  if (!found) throw new Error(`No demonstration formula has the code ${code}.`);
  return found;
}

/** Whether the material emulsifies, alone or beside another. */
export function emulsifies({ functions }: Material): boolean {
  return functions.includes('emulsifier') || functions.includes('co-emulsifier');
}
