import type { FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';

/** What a formula held, with the materials that its lines name. */
export interface Before {
  content: FormulaContent;
  materials: Readonly<Record<string, Material>>;
}

const before = new Map<string, Before>();

/** Another screen changed a formula and sends the reader there: what stood before is then one Undo away. */
export function rememberBefore(formulaId: string, held: Before): void {
  before.set(formulaId, held);
}

/** What stood before the change of another screen, once. */
export function takeBefore(formulaId: string): Before | undefined {
  const held = before.get(formulaId);
  before.delete(formulaId);
  return held;
}
