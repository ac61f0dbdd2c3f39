import type { FormulaContent } from '@core/formulas/formula';

const before = new Map<string, FormulaContent>();

/** Another screen changed a formula and sends the reader there: what stood before is then one Undo away. */
export function rememberBefore(formulaId: string, content: FormulaContent): void {
  before.set(formulaId, content);
}

/** What stood before the change of another screen, once. */
export function takeBefore(formulaId: string): FormulaContent | undefined {
  const content = before.get(formulaId);
  before.delete(formulaId);
  return content;
}
