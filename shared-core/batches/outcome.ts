import { z } from 'zod';
import { formatDate } from '../locale/dates';
import { formatMass } from '../locale/mass';
import { count } from '../locale/words';
import { formatNumber, type Region } from '../locale/numbers';
import { LARGEST_BATCH_MG } from '../quantities/mass';
import { longText, nameText } from '../quantities/text';
import type { Batch } from './batch';
import type { BatchDocument } from './document';

/** What came of a batch, as a maker enters it from the record that was filled in by hand. */
export const enteredOutcome = z.object({
  /** ISO 8601 day on which it was finished. */
  finishedOn: z.iso.date('Enter the day as a date.'),
  obtainedMg: z
    .int('A mass must be a number of milligrams.')
    .positive('Enter the bulk that was obtained.')
    .max(LARGEST_BATCH_MG, 'Stillroom keeps batches up to 10 tonnes.'),
  unitsFilled: z
    .int('A whole number of units was filled.')
    .min(0, 'The units filled cannot be fewer than none.')
    .max(1_000_000, 'A million units at most.')
    .nullable(),
  by: nameText('who recorded it', 120),
  remarks: longText(2000),
});
export type EnteredOutcome = z.infer<typeof enteredOutcome>;

/** What came of a batch. It is never changed: a correction is another one, and the last holds. */
export interface BatchOutcome extends EnteredOutcome {
  /** ISO 8601, when it was written down. */
  at: string;
}

/** A batch with what came of it, null where that is not recorded yet, and what is on file of it. */
export type MadeBatch = Batch & { outcome: BatchOutcome | null; documents: readonly BatchDocument[] };

/** The bulk obtained in per cent of what was weighed in. */
export function yieldPercent({ obtainedMg }: Pick<BatchOutcome, 'obtainedMg'>, totalMg: number): number {
  return (100 * obtainedMg) / totalMg;
}

/** "3 Sept 2026, 594 g, 97.1 % of what was weighed, 58 units". @param totalMg what was weighed in */
export function outcomeWords(outcome: BatchOutcome, totalMg: number, region: Region): string {
  const { finishedOn, obtainedMg, unitsFilled } = outcome;
  return [
    formatDate(finishedOn, region),
    formatMass(obtainedMg, region),
    `${formatNumber(yieldPercent(outcome, totalMg), region, 1)}\u00a0% of what was weighed`,
    unitsFilled === null ? '' : count(unitsFilled, 'unit', region),
  ]
    .filter(Boolean)
    .join(', ');
}
