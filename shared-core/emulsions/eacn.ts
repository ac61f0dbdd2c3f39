import { between } from '../working/inputs';
import { FIGURE_KINDS } from '../materials/figure';
import type { Worked } from '../working/working';
import { fractionMean } from './fraction-mean';
import { CAYIAS_1976 } from './sources';

/**
 * EACN of an oil mix: the mean by fraction.
 *
 * @param oils fractions (0 to 1) that sum to 1, and EACNs; published work takes mole fractions, and mass
 *   fractions serve where molar masses are alike or unknown
 * @throws Problem `invalid-input`
 * Source: Cayias, Schechter and Wade 1976.
 */
export function eacnMix(oils: readonly { fraction: number; eacn: number }[]): Worked {
  const { min, max } = FIGURE_KINDS.eacn;
  return fractionMean(
    oils.map(({ fraction, eacn }) => ({ fraction, value: between(eacn, min, max, 'EACN of an oil') })),
    {
      says: 'EACN of the oil mix: Σ fraction × EACN',
      part: 'oil',
      sources: [CAYIAS_1976],
      cautions: ['Polar oils and triglycerides follow the EACN scale poorly, and figures differ by method.'],
    },
  );
}
