import type { FormulaContent } from '../formulas/formula';
import type { Material } from '../materials/material';
import type { Source } from '../working/working';
import type { FormulaFacts } from './facts';

/** `stop`: must be put right before a version is recorded. `warn`: likely to fail. `note`: worth knowing. */
export const FINDING_SEVERITIES = ['stop', 'warn', 'note'] as const;
export type FindingSeverity = (typeof FINDING_SEVERITIES)[number];

/** What a check found: how serious, on which lines (ids; empty when the whole formula is meant), what to do, why. */
export interface Finding {
  ruleId: string;
  severity: FindingSeverity;
  title: string;
  lines: string[];
  advice: string;
  source: Source;
}

export interface CheckInput {
  content: FormulaContent;
  /** The materials of the formula's lines by id; a line whose material is absent here is reported. */
  materials: ReadonlyMap<string, Material>;
}

/** One check. `name` is shown in lists; `judge` is pure and answers with nothing when all is well. */
export interface CheckRule {
  id: string;
  name: string;
  judge(facts: FormulaFacts): Finding[];
}

/** Shown with every finding about preservation. */
export const NOT_PROOF =
  'This is not proof of preservation: a challenge test, a qualified safety assessment and local law decide.';
