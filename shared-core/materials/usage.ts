import { z } from 'zod';
import { sharePpm } from '../quantities/share';
import { lineText } from '../quantities/text';
import { PROVENANCES } from './vocabulary';

/** How much of a formula a material is meant to make up, in ppm of the formula. */
export const usage = z
  .object({
    minPpm: sharePpm.nullable(),
    typicalPpm: sharePpm.nullable(),
    maxPpm: sharePpm.nullable(),
    provenance: z.enum(PROVENANCES),
    source: lineText(500),
  })
  .refine((range) => {
    const ends = [range.minPpm, range.typicalPpm, range.maxPpm].filter((end) => end !== null);
    return ends.every((end, index) => index === 0 || (ends[index - 1] ?? 0) <= end);
  }, 'Usage must rise from lowest to typical to highest.');
export type Usage = z.infer<typeof usage>;
