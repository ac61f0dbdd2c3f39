import type { Noun } from '../record/noun';
import { FORMULA_FIELDS } from './fields';
import { formulaContent, type FormulaContent } from './formula';
import { formulaShares } from './shares';

/** What a formula's history holds: its content, and whether it was archived. */
export type FormulaRecord = FormulaContent & { archived: boolean };

/** The q.s. line with the share that it comes to, so that a draft and a version of the same formula are one state. */
export function withComputedShare<F extends FormulaContent>(content: F): F {
  const { byLine } = formulaShares(content);
  const shareOf = (id: string, entered: number): number => Math.max(0, byLine.get(id) ?? entered);
  return {
    ...content,
    phases: content.phases.map((phase) => ({
      ...phase,
      lines: phase.lines.map((line) =>
        line.toHundred ? { ...line, ppm: shareOf(line.id, line.ppm) } : line,
      ),
    })),
  };
}

export const FORMULA: Noun<FormulaRecord> = {
  kind: 'formula',
  name: 'formula',
  fields: FORMULA_FIELDS,
  read: (content) => ({
    ...withComputedShare(formulaContent.parse(content)),
    archived: (content as { archived?: unknown }).archived === true,
  }),
  titleOf: ({ name }) => name,
  upgraders: [],
};
