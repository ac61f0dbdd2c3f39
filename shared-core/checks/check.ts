import type { Source, Worked } from '../working/working';
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
  /** The computation that it rests on, where it is one. */
  working?: Worked;
}

/** From which share on a check speaks, in ppm of the formula, where its maker may say otherwise. */
export interface Threshold {
  /** What the share is of: "Speaks above this share of powders". */
  label: string;
  usual: number;
  max: number;
}

/** One check. `name` is shown in lists; `judge` is pure and answers with nothing when all is well. */
export interface CheckRule {
  id: string;
  name: string;
  /** What it says when it speaks: completes "says when …", and is missed when it is switched off. */
  tells: string;
  threshold?: Threshold;
  /** @param threshold ppm; the usual one where the maker has set none */
  judge(facts: FormulaFacts, threshold: number): Finding[];
}

/** A maker's choices for the checks, as the settings hold them. */
export interface CheckChoices {
  /** Ids of checks that are switched off. */
  checksOff: readonly string[];
  /** ppm, by the check's id. */
  checkThresholds: Readonly<Record<string, number>>;
}

export const USUAL_CHECKS: CheckChoices = { checksOff: [], checkThresholds: {} };

/** Shown with every finding about preservation. */
export const NOT_PROOF =
  'This is not proof of preservation: a challenge test, a qualified safety assessment and local law decide.';
