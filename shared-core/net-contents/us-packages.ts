import { sample } from '../statistics/sample';
import { badInput, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';
import { meanFactor } from './mean-criterion';
import { CHECK_THE_LAW } from './tolerable-error';

const HANDBOOK_MAV: Source = {
  text: 'NIST Handbook 133, Appendix A, Table 2-5, packages labelled by weight, Gaithersburg',
  basis: 'memory',
};
const HANDBOOK_FACTOR: Source = {
  text: 'NIST Handbook 133, Appendix A, Table 2-1: t(0.975; n − 1) / √n; it prints 0.291 for 48',
  basis: 'memory',
};

/** From which label weight, g, which maximum allowable variation, g. Below the first it is 10 %. */
const VARIATIONS: readonly (readonly [from: number, grams: number])[] = [
  [36, 3.6],
  [54, 5.4],
  [81, 7.2],
  [117, 9],
  [154, 10.8],
  [208, 12.7],
  [263, 14.5],
  [317, 16.3],
  [381, 18.1],
  [426, 19.9],
  [489, 21.7],
  [571, 23.5],
  [635, 25.4],
  [698, 27.2],
  [771, 29],
  [852, 31.7],
  [970, 35.3],
];
const TABLE_ENDS = 1120;

/**
 * Maximum allowable variation of a package labelled by weight.
 *
 * @param labelGrams g, up to where the table at hand ends
 * @returns g
 * @throws Problem `invalid-input`
 */
export function allowableVariation(labelGrams: number): Worked {
  positive(labelGrams, 'Label weight');
  if (labelGrams >= TABLE_ENDS)
    throw badInput(
      `The table at hand ends at ${show(TABLE_ENDS)} g.`,
      'Look up heavier packages in the Handbook.',
      'Label weight',
    );
  const row = VARIATIONS.findLast(([from]) => labelGrams >= from);
  const step = {
    says: row
      ? 'maximum allowable variation (MAV) in this band'
      : 'maximum allowable variation (MAV): 10 % of the label',
    shows: row ? show(row[1]) : `10 % × ${show(labelGrams)}`,
    result: row ? row[1] : labelGrams / 10,
    unit: 'g',
  };
  return worked([step], [HANDBOOK_MAV], [CHECK_THE_LAW]);
}

/** Sample correction factor: t(0.975) / √n. */
export function sampleCorrectionFactor(sampleSize: number): Worked {
  return meanFactor(sampleSize, 0.975, HANDBOOK_FACTOR);
}

/** How many packages of a sample may lie below the label by more than the MAV. */
const ALLOWED: Readonly<Record<number, number>> = { 12: 0, 24: 0, 48: 1 };

export interface UsCheck {
  passes: boolean;
  why: string[];
  error: Worked;
  limit: Worked;
}

/**
 * The two tests of a sample: its average error, and packages short by more than the MAV.
 *
 * @param weights net, g, of 12, 24 or 48 packages
 * @throws Problem `invalid-input`
 */
export function checkUsPackages(labelGrams: number, weights: readonly number[]): UsCheck {
  const allowed = ALLOWED[weights.length];
  if (allowed === undefined)
    throw badInput(
      `A sample has 12, 24 or 48 packages; ${weights.length} are entered.`,
      'Enter the net weight of each: 12 for a lot up to 250, 24 up to 3,200, 48 above.',
      'rows',
      { missing: weights.length < 12 },
    );
  weights.forEach((one, index) => nonNegative(one, `Package ${index + 1}`));
  const mav = allowableVariation(labelGrams);
  const { mean, standardDeviation } = sample(weights, 'Package', 'g');
  const factor = sampleCorrectionFactor(weights.length);
  const error = worked(
    [
      ...mean.steps,
      {
        says: 'average error: mean − label',
        shows: `${show(mean.value)} − ${show(labelGrams)}`,
        result: mean.value - labelGrams,
        unit: 'g',
      },
    ],
    factor.sources,
  );
  const limit = worked(
    [
      ...factor.steps,
      {
        says: 'sample error limit: factor × standard deviation',
        shows: `${show(factor.value)} × ${show(standardDeviation.value)}`,
        result: factor.value * standardDeviation.value,
        unit: 'g',
      },
    ],
    factor.sources,
    [CHECK_THE_LAW],
  );
  const short = weights.filter((one) => labelGrams - one > mav.value + 1e-9).length;
  const meanHolds = error.value + limit.value >= -1e-9;
  return {
    passes: meanHolds && short <= allowed,
    why: [
      meanHolds
        ? 'The average is not below the label by more than the sample error limit.'
        : 'The average is too far below the label.',
      `${short} short by more than the MAV of ${show(mav.value)} g; ${allowed} may be.`,
    ],
    error,
    limit,
  };
}
