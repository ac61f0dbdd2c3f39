import { FIGURE_KINDS } from '../materials/figure';
import { between, nonNegative } from '../working/inputs';
import type { Worked } from '../working/working';
import { fractionMean } from './fraction-mean';
import { ACOSTA_2008 } from './sources';

/**
 * Characteristic curvature of a surfactant mix: the mean by mole fraction.
 *
 * @param surfactants mole fractions (0 to 1) that sum to 1, and Cc
 * @throws Problem `invalid-input`
 * Source: Acosta, Yuan and Bhakta 2008.
 */
export function ccMix(surfactants: readonly { moleFraction: number; cc: number }[]): Worked {
  const { min, max } = FIGURE_KINDS.cc;
  return fractionMean(
    surfactants.map(({ moleFraction, cc }) => ({
      fraction: moleFraction,
      value: between(cc, min, max, 'Cc of a surfactant'),
    })),
    {
      says: 'Cc of the surfactant mix: Σ mole fraction × Cc',
      part: 'surfactant',
      sources: [ACOSTA_2008],
      cautions: [
        'The linear rule holds for alike surfactants; anionic with non-ionic or cationic partners departs from it.',
      ],
    },
  );
}

/**
 * Mole fractions from masses and molar masses, for surfactants known by mass.
 *
 * @param parts masses in one unit, molar masses in g/mol
 */
export function moleFractions(parts: readonly { mass: number; molarMass: number }[]): number[] {
  const moles = parts.map(({ mass, molarMass }) => {
    nonNegative(mass, 'Mass of a surfactant');
    return mass / between(molarMass, 1, 10_000_000, 'Molar mass of a surfactant', 'g/mol');
  });
  const total = moles.reduce((sum, amount) => sum + amount, 0);
  return moles.map((amount) => (total > 0 ? amount / total : 0));
}
