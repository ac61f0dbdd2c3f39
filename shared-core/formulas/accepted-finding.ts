import { z } from 'zod';
import { id } from '../record/id';
import { lineText, nameText } from '../quantities/text';

/** What may be accepted: a finding that must be put right before a version is recorded never is. */
export const ACCEPTABLE = ['warn', 'note'] as const;

/** Characters that are kept of what a finding said. */
export const MOST_SAID = 500;

/** A finding of the checks that the maker has looked at and lets stand, with the reason. */
export const acceptedFinding = z.object({
  id,
  /** The check, and the materials that it found: another material, and it is asked anew. */
  ruleId: lineText(60),
  materialIds: z.array(id).max(200),
  /** How serious it was then: what becomes more serious is shown again. */
  severity: z.enum(ACCEPTABLE),
  /** What it said then. */
  says: lineText(MOST_SAID),
  reason: nameText('the reason', 500),
  by: lineText(120),
  /** ISO 8601 day. */
  on: z.iso.date(),
});
export type AcceptedFinding = z.infer<typeof acceptedFinding>;
