import { z } from 'zod';
import { id } from '../record/id';
import { LARGEST_BATCH_MG } from '../quantities/mass';
import { sharePpm } from '../quantities/share';
import { lineText, longText } from '../quantities/text';

const mg = z.int('A mass must be a number of milligrams.');
const batchMass = mg
  .positive('A batch must weigh something. Enter a mass above zero.')
  .max(LARGEST_BATCH_MG, 'Stillroom plans batches up to 10 tonnes. Enter a smaller mass.');

/** How large a batch is: a mass, or a number of units filled. */
export const batchSize = z.discriminatedUnion('by', [
  z.object({ by: z.literal('mass'), massMg: batchMass }),
  z.object({
    by: z.literal('units'),
    units: z
      .int('Fill a whole number of units.')
      .positive('Fill at least one unit.')
      .max(1_000_000, 'A million units at most.'),
    fillMg: mg
      .positive('A unit must hold something.')
      .max(LARGEST_BATCH_MG, 'A unit holds 10 tonnes at most.'),
  }),
]);

/** What a maker enters to plan a batch of a recorded version. */
export const batchPlan = z.object({
  versionId: id,
  size: batchSize,
  /** Extra made for what stays in vessel and filler, in ppm of the batch. */
  overagePpm: sharePpm.max(500_000, 'An overage above 50 % makes a different batch size.'),
  /** What the balance can read, in mg (100 = 0.1 g). */
  readabilityMg: mg
    .positive('A readability is above zero.')
    .max(100_000_000, 'That is coarser than any balance: 100 kg at most.'),
  note: longText(2000),
});
export type BatchPlan = z.infer<typeof batchPlan>;

/** A planned batch. Its lines are fixed when it is made; lots and weights are written by hand on its sheet. */
export const batch = batchPlan.extend({
  id,
  number: lineText(40),
  createdAt: z.iso.datetime(),
  totalMg: mg,
  lines: z.array(z.object({ lineId: id, materialId: id, targetMg: mg.min(0) })),
});
export type Batch = z.infer<typeof batch>;
