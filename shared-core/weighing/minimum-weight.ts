import { between, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

/** The least standard deviation that a rule lets a balance claim, as a share of its readability. */
export const LEAST_SD = 0.41;

const USP_41: Source = {
  text: 'USP General Chapter 41, Balances, Rockville 2019; Ph. Eur. 2.1.7 has the same rule',
  basis: 'memory',
};
const USP_1251: Source = {
  text: 'USP General Chapter 1251, Weighing on an Analytical Balance: the rounding of two readings',
  basis: 'memory',
};
const CAUTIONS = [
  'Take the standard deviation from at least ten weighings of one weight, where and as the balance is used.',
  'The balance’s own certificate takes precedence.',
];

/**
 * Standard deviation of a net weight from the rounding of two readings alone: √2 × d / √12.
 *
 * @param readability d, any unit of mass
 * @returns the same unit
 */
export function roundingSd(readability: number, unit: string): Worked {
  positive(readability, 'Readability');
  const step = {
    says: 'standard deviation of a net weight by rounding alone: √2 × readability / √12',
    shows: `√2 × ${show(readability)} / √12`,
    result: (Math.SQRT2 * readability) / Math.sqrt(12),
    unit,
  };
  return worked([step], [USP_1251]);
}

/**
 * The least net weight that a balance weighs within a limit: 2 s / limit, s not below 0.41 d.
 *
 * @param standardDeviation of repeated weighings, in the readability's unit; null counts 0.41 of the readability
 * @param limitPercent such as 0.1
 * @returns the same unit
 * @throws Problem `invalid-input`
 */
export function minimumWeight(
  standardDeviation: number | null,
  readability: number,
  limitPercent: number,
  unit: string,
): Worked {
  if (standardDeviation !== null) nonNegative(standardDeviation, 'Standard deviation');
  positive(readability, 'Readability');
  between(limitPercent, 0.0001, 100, 'Limit', '%');
  const floor = LEAST_SD * readability;
  const taken = Math.max(standardDeviation ?? 0, floor);
  const steps = [
    {
      says: `standard deviation taken: that of the weighings, but not below ${LEAST_SD} × readability`,
      shows: `max(${show(standardDeviation ?? 0)}, ${LEAST_SD} × ${show(readability)})`,
      result: taken,
      unit,
    },
    {
      says: 'minimum weight: 2 × standard deviation / limit',
      shows: `2 × ${show(taken)} / ${show(limitPercent / 100)}`,
      result: (2 * taken * 100) / limitPercent,
      unit,
    },
  ];
  return worked(steps, [USP_41], CAUTIONS);
}
