import { z } from 'zod';
import { id } from '../record/id';
import { LARGEST_BATCH_MG } from '../quantities/mass';
import { sharePpm } from '../quantities/share';
import { longText, nameText } from '../quantities/text';

const trialHlb = z.number().min(0, 'HLB runs from 0 to 40.').max(40, 'HLB runs from 0 to 40.');

/** A line of a trial, ready to weigh: its share of the batch and its mass. */
export const trialLine = z.object({
  materialId: id,
  /** What it is for, so that a sheet can group lines. */
  part: z.enum(['emulsifier', 'other']),
  ppm: sharePpm,
  mg: z.int().min(0),
});
export type TrialLine = z.infer<typeof trialLine>;

export const trial = z.object({
  label: nameText('the trial’s label', 60),
  /** The mean HLB of its emulsifiers; null in a series of levels whose HLB no mean describes. */
  hlb: trialHlb.nullable(),
  /** Emulsifiers together, in ppm of the batch. */
  levelPpm: sharePpm,
  lines: z.array(trialLine).min(1).max(100),
  /** What was seen, written by hand or typed. */
  result: longText(4000),
});
export type Trial = z.infer<typeof trial>;

/** A series of small batches round a computed ratio or level, with what came of them. */
export const trialSeries = z
  .object({
    id,
    title: nameText('the series’ title'),
    createdAt: z.iso.datetime(),
    /** The formula it was made for; null for an oil phase put together at the bench. */
    formulaId: id.nullable(),
    targetHlb: trialHlb.nullable(),
    batchMg: z.int().positive().max(LARGEST_BATCH_MG),
    /** What the balance can read, in mg. */
    readabilityMg: z.int().positive(),
    trials: z.array(trial).min(1, 'A series needs at least one trial.').max(50),
    /** The index of the trial that was chosen; null until one is. */
    chosen: z.int().min(0).nullable(),
    notes: longText(),
  })
  .refine((series) => series.chosen === null || series.chosen < series.trials.length, {
    message: 'The chosen trial is not in the series.',
    path: ['chosen'],
  });
export type TrialSeries = z.infer<typeof trialSeries>;

/** The emulsifier lines of the chosen trial, as they go into a formula; empty until one is chosen. */
export function chosenEmulsifiers(series: TrialSeries): { materialId: string; ppm: number }[] {
  const chosen = series.chosen === null ? undefined : series.trials[series.chosen];
  return (chosen?.lines ?? [])
    .filter((line) => line.part === 'emulsifier')
    .map(({ materialId, ppm }) => ({ materialId, ppm }));
}
