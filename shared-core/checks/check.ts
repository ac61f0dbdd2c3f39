import type { Source } from '../working/working';
import type { FormulaFacts } from './facts';

export type { CheckInput } from './check-input';

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

/** One check. `name` is shown in lists; `judge` is pure and answers with nothing when all is well. */
export interface CheckRule {
  id: string;
  name: string;
  judge(facts: FormulaFacts): Finding[];
}

/** Shown with every finding about preservation. */
export const NOT_PROOF =
  'This is not proof of preservation: a challenge test, a qualified safety assessment and local law decide.';
