import { z } from 'zod';
import { lineText, nameText } from '../quantities/text';

/** What may be decided on a recorded version. A withdrawal is final: what is put right is recorded as another version. */
export const DECISIONS = ['approved', 'withdrawn'] as const;
export type Decision = (typeof DECISIONS)[number];

/** Where a version stands. */
export type Standing = 'recorded' | Decision;

/** A decision on a version: who, on which day, why. It is never changed; another may follow it. */
export interface VersionDecision {
  decision: Decision;
  by: string;
  /** ISO 8601 day, as whoever decided gave it. */
  on: string;
  reason: string;
  /** ISO 8601, when it was written down. */
  at: string;
}

/** A decision as a maker enters it. */
export const enteredDecision = z
  .object({
    decision: z.enum(DECISIONS),
    by: nameText('who decides', 120),
    on: z.iso.date('Enter the day as a date.'),
    reason: lineText(500),
  })
  .refine(({ decision, reason }) => decision === 'approved' || reason !== '', {
    message: 'Say why it is withdrawn: whoever finds it later has to know.',
    path: ['reason'],
  });
export type EnteredDecision = z.infer<typeof enteredDecision>;

/** Where a version stands by what was decided on it, oldest first. */
export function standingOf(decisions: readonly Pick<VersionDecision, 'decision'>[]): Standing {
  return decisions.at(-1)?.decision ?? 'recorded';
}
