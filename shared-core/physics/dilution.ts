import { badInput, nonNegative, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';

/**
 * Volume to fill up to when diluting: v2 = c1·v1 / c2.
 *
 * @param c1 concentration now, > 0, in any unit
 * @param v1 volume now, in any unit
 * @param c2 concentration wanted, in c1's unit, above 0 and not above c1
 * @returns the whole volume after diluting, in v1's unit
 * @throws Problem `invalid-input`
 */
export function dilution(c1: number, v1: number, c2: number): Worked {
  positive(c1, 'Concentration now');
  nonNegative(v1, 'Volume now');
  positive(c2, 'Concentration wanted');
  if (c2 > c1)
    throw badInput(
      `The concentration wanted (${show(c2)}) is above the one at hand (${show(c1)}).`,
      'Diluting only lowers a concentration: start from a stronger solution.',
      'c2',
    );
  const step = {
    says: 'volume after diluting: c1 × v1 / c2',
    shows: `${show(c1)} × ${show(v1)} / ${show(c2)}`,
    result: (c1 * v1) / c2,
    unit: '',
  };
  return oneStep(
    step,
    [{ text: 'conservation of the solute', basis: 'common-practice' }],
    ['Fill up to this volume; volumes do not always add. For strong acid or alkali, add it to the water.'],
  );
}
