import { nonNegative } from '../working/inputs';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { blendForTarget } from './blend-two';

export interface EmulsifierMasses {
  lowMass: number;
  highMass: number;
  /** The steps to both; its value is the low mass, reached last. */
  worked: Worked;
}

/**
 * Masses of two emulsifiers that together meet a target HLB at a total.
 *
 * @param total of both, in any unit of mass or % of the formula
 * @throws Problem `invalid-input`, as `blendForTarget`
 */
export function emulsifierMasses(
  targetHlb: number,
  lowHlb: number,
  highHlb: number,
  total: number,
): EmulsifierMasses {
  nonNegative(total, 'Total of both emulsifiers');
  const { worked, highPercent } = blendForTarget({ targetHlb, lowHlb, highHlb });
  const highMass = (total * highPercent) / 100;
  const lowMass = total - highMass;
  const steps = [
    ...worked.steps,
    {
      says: 'mass of the high-HLB emulsifier: its share of the total',
      shows: `${show(total)} × ${show(highPercent)} / 100`,
      result: highMass,
      unit: '',
    },
    {
      says: 'mass of the low-HLB emulsifier: the rest',
      shows: `${show(total)} − ${show(highMass)}`,
      result: lowMass,
      unit: '',
    },
  ];
  return { lowMass, highMass, worked: { ...worked, steps, value: lowMass, unit: '' } };
}
