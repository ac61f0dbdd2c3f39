import { z } from 'zod';
import { sharePpm, WHOLE_PPM } from '../quantities/share';
import { nameText } from '../quantities/text';

/** One INCI name of a composition with its share of the material; `lowPpm` = `highPpm` when exact. */
export const inciPart = z
  .object({ inci: nameText('the INCI name', 300), lowPpm: sharePpm, highPpm: sharePpm })
  .refine((part) => part.lowPpm <= part.highPpm, 'The lower end of the range is above the upper end.');
export type InciPart = z.infer<typeof inciPart>;

/**
 * What a composition is made of. Suppliers' ranges overlap by nature (60–90 % with 40–90 %), so only lower ends beyond
 * a whole are impossible and refused. Computing takes every midpoint as it is, also where the midpoints do not make
 * 100 %: spreading the difference would invent figures that nobody gave. The total is shown beside the composition,
 * and the ingredient list names such a material as approximate.
 */
export const composition = z
  .array(inciPart)
  .min(1, 'A raw material needs at least one INCI name.')
  .max(60, 'A raw material can hold 60 INCI names at most.')
  .refine(
    (parts) => parts.reduce((sum, part) => sum + part.lowPpm, 0) <= WHOLE_PPM,
    'The shares, each at its lowest, add up to more than 100 %. Lower one of them.',
  )
  .refine(
    (parts) => new Set(parts.map((part) => part.inci.toLowerCase())).size === parts.length,
    'The same INCI name is listed twice. Keep it once, with the summed share.',
  );

/** The share of one INCI name used in computing: the exact one, or the midpoint of the supplier's range. */
export function partPpm(part: InciPart): number {
  return (part.lowPpm + part.highPpm) / 2;
}
