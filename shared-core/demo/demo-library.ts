import type { Batch } from '../batches/batch';
import type { BatchOutcome } from '../batches/outcome';
import type { Formula, FormulaVersion } from '../formulas/formula';
import type { Material } from '../materials/material';
import { settings, type Settings } from '../settings/settings';
import { buildFormula } from './build-formula';
import { buildMaterial } from './build-material';
import { buildRecords } from './build-records';
import { demoId, type MakeId } from './demo-id';
import { DEMO_MOMENT } from './demo-moment';
import { FORMULA_ENTRIES } from './formula-entries';
import { MATERIAL_ENTRIES } from './material-entries';

export interface DemoLibrary {
  settings: Settings;
  materials: Material[];
  formulas: Formula[];
  versions: FormulaVersion[];
  batches: Batch[];
  /** What came of batches, by their id. */
  outcomes: Map<string, BatchOutcome>;
}

/**
 * The demonstration library: an invented small maker, its raw materials and formulas. Trade names,
 * suppliers, prices and allergen figures are invented; INCI names and figures marked "published" are not.
 *
 * @param makeId called once for every identifier with its own key; by default identifiers are derived from it
 * @param at when everything was made, ISO 8601 in UTC
 */
export function demoLibrary(makeId: MakeId = demoId, at: string = DEMO_MOMENT): DemoLibrary {
  const materials = MATERIAL_ENTRIES.map((entry) => buildMaterial(entry, makeId, at));
  const idByCode = new Map(materials.map(({ code, id }) => [code, id]));
  const materialId = (code: string): string => {
    const known = idByCode.get(code);
    if (known === undefined) throw new Error(`No demonstration material has the code ${code}.`);
    return known;
  };
  const formulas = FORMULA_ENTRIES.map((entry) => buildFormula(entry, materialId, makeId, at));
  return {
    settings: settings.parse({
      makerName: 'Larkspindle & Moth (demonstration)',
      makerAddress: '7 Nowhere Lane\nMuchfable-on-Ink\nAn invented county ZZ9 9ZZ',
      recordedBy: 'A. Demonstrator',
    }),
    materials,
    formulas,
    ...buildRecords(formulas, materials, makeId, at),
  };
}
