import { nonNegative, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';

/**
 * Volume that holds the same amount at another concentration: v2 = c1·v1 / c2. When c2 is the lower one, this is
 * what to fill up to.
 *
 * @param c1 concentration now, > 0, in any unit
 * @param v1 volume now, in any unit
 * @param c2 the other concentration, > 0, in c1's unit
 * @returns in v1's unit
 * @throws Problem `invalid-input`
 */
export function dilution(c1: number, v1: number, c2: number): Worked {
  positive(c1, 'Concentration now');
  nonNegative(v1, 'Volume now');
  positive(c2, 'Concentration wanted');
  const step = {
    says: 'volume with the same amount at the other concentration: c1 × v1 / c2',
    shows: `${show(c1)} × ${show(v1)} / ${show(c2)}`,
    result: (c1 * v1) / c2,
    unit: '',
  };
  return oneStep(
    step,
    [{ text: 'conservation of the solute', basis: 'common-practice' }],
    [
      c2 > c1
        ? 'This is the volume of a stronger solution; diluting cannot make it from the weaker one.'
        : 'Fill up to this volume; volumes do not always add.',
      'Strong acid or alkali goes into the water, never the reverse.',
    ],
  );
}
