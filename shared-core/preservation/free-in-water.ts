import { nonNegative, positive, between } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

export const FREE_IN_WATER: Source = {
  text: 'Preservatives for pharmaceuticals, J. Soc. Cosmet. Chem. 23, 714–717 (1972): free = total × (φ + 1) / (K φ + R), R = 1 + binding × surfactant',
  basis: 'read',
};

/** How a preservative divides itself between oil, micelles and water. */
export interface Division {
  /** % of the whole formula. */
  total: number;
  /** Oil to water. */
  oilToWater: number;
  /** Partition coefficient, oil to water. */
  partition: number;
  /** Per % of ethoxylate in the water. */
  binding: number;
  /** Ethoxylates, % of the water phase. */
  ethoxylates: number;
  /** The part that is undissociated, 0 to 1: ions go into neither. */
  undissociated: number;
}

/**
 * What of a preservative is left free, and undissociated, in the water phase, % of it.
 *
 * An acid divides itself as far as it is undissociated: free = f × C (φ + 1) / (K f φ + 1 + k f S).
 *
 * @throws Problem `invalid-input`
 */
export function freeInWater(of: Division): Worked {
  const { total, oilToWater, partition, binding, ethoxylates, undissociated } = of;
  nonNegative(total, 'The dose');
  nonNegative(oilToWater, 'Oil to water');
  nonNegative(partition, 'The partition coefficient');
  nonNegative(binding, 'The binding');
  nonNegative(ethoxylates, 'The ethoxylates');
  positive(between(undissociated, 0, 1, 'The undissociated part'), 'The undissociated part');
  const bound = 1 + binding * ethoxylates * undissociated;
  const inOil = partition * undissociated * oilToWater;
  const inWater = (total * (oilToWater + 1)) / (inOil + bound);
  const acid = undissociated < 1;
  return worked(
    [
      {
        says: `total to free beside the ethoxylates (R): 1 + binding × ethoxylates in the water${acid ? ' × undissociated part' : ''}`,
        shows: `1 + ${show(binding)} × ${show(ethoxylates)}${acid ? ` × ${show(undissociated)}` : ''}`,
        result: bound,
        unit: '',
      },
      {
        says: `free in the water: dose × (oil to water + 1) / (partition × oil to water${acid ? ' × undissociated part' : ''} + R)`,
        shows: `${show(total)} × (${show(oilToWater)} + 1) / (${show(partition)} × ${show(oilToWater)}${acid ? ` × ${show(undissociated)}` : ''} + ${show(bound)})`,
        result: inWater,
        unit: '% of the water phase',
      },
      ...(acid
        ? [
            {
              says: 'of it undissociated',
              shows: `${show(inWater)} × ${show(undissociated)}`,
              result: inWater * undissociated,
              unit: '% of the water phase',
            },
          ]
        : []),
    ],
    [FREE_IN_WATER],
    [
      'An estimate: partition coefficients differ with the oil and the temperature by a factor of two and more.',
    ],
  );
}

/** Free beside 5 % polysorbate 80: 22 % of methylparaben, 4.5 % of propylparaben; Patel and Kostenbauder 1958, from memory. */
const MEASURED = [
  { logP: 1.96, binding: (1 / 0.22 - 1) / 5 },
  { logP: 3.04, binding: (1 / 0.045 - 1) / 5 },
] as const;

/**
 * How strongly ethoxylates bind a substance, per % of them: it rises with its solubility in lipids (J. Soc. Cosmet. Chem.
 * 23, 714), here along the line through two measured parabens.
 *
 * @param logP octanol and water
 */
export function bindingByEthoxylates(logP: number): number {
  const [low, high] = MEASURED;
  const slope = Math.log(high.binding / low.binding) / (high.logP - low.logP);
  return low.binding * Math.exp(slope * (logP - low.logP));
}
