import type { FormulaContent } from '../formulas/formula';
import { recordKey } from './choice';

/** The records without which another cannot stand, by kind, from its content. */
const NEEDS: Readonly<Record<string, (content: object) => string[]>> = {
  formula: (content) =>
    (content as FormulaContent).phases.flatMap(({ lines }) =>
      lines.map(({ materialId }) => recordKey('material', materialId)),
    ),
};

/** The keys of the records that a record needs, each once. */
export function needsOf(kind: string, content: object): string[] {
  return [...new Set(NEEDS[kind]?.(content) ?? [])];
}
