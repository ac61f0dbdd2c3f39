import { badInput, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

const OIML_R76: Source = {
  text: 'OIML R 76-1, Non-automatic weighing instruments, Paris 2006, Table 6, initial verification',
  basis: 'memory',
};

/** How many verification steps e a load may have for an error of 0.5, 1 and 1.5 e. */
const BANDS = {
  I: [50_000, 200_000, Infinity],
  II: [5_000, 20_000, 100_000],
  III: [500, 2_000, 10_000],
  IIII: [50, 200, 1_000],
} as const;
export type AccuracyClass = keyof typeof BANDS;
export const ACCURACY_CLASSES = Object.keys(BANDS) as AccuracyClass[];

/**
 * Maximum permissible error of a verified scale at a load.
 *
 * @param e verification scale interval, g
 * @param load g
 * @returns g, to either side
 * @throws Problem `invalid-input` beyond what the class may weigh
 */
export function permissibleError(accuracyClass: AccuracyClass, e: number, load: number): Worked {
  positive(e, 'Verification interval e');
  nonNegative(load, 'Load');
  const steps = load / e;
  // Binary noise must not lift a load over the edge of its band.
  const band = BANDS[accuracyClass].findIndex((most) => steps <= most * (1 + 1e-12));
  if (band < 0)
    throw badInput(
      `A load of ${show(steps)} e is more than class ${accuracyClass} weighs.`,
      'Check the load, e and the class on the scale’s plate.',
      'Load',
    );
  const factor = [0.5, 1, 1.5][band] ?? 1.5;
  return worked(
    [
      {
        says: 'load in verification intervals: load / e',
        shows: `${show(load)} / ${show(e)}`,
        result: steps,
        unit: 'e',
      },
      {
        says: `maximum permissible error in this band: ${factor} × e`,
        shows: `${factor} × ${show(e)}`,
        result: factor * e,
        unit: 'g',
      },
    ],
    [OIML_R76],
    ['In use the error may be twice this. Only a verified scale may weigh for trade; local law decides.'],
  );
}
