import { nonNegative, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';

/**
 * Mass that fills a volume: volume × density.
 *
 * @param volume mL
 * @param density g/mL at filling temperature
 * @returns g
 * @throws Problem `invalid-input`
 */
export function densityFill(volume: number, density: number): Worked {
  nonNegative(volume, 'Volume');
  positive(density, 'Density');
  const step = {
    says: 'mass of a fill: volume × density',
    shows: `${show(volume)} × ${show(density)}`,
    result: volume * density,
    unit: 'g',
  };
  return oneStep(
    step,
    [{ text: 'definition of density', basis: 'common-practice' }],
    ['Density of a cream falls with entrapped air and with temperature: measure it on the filled product.'],
  );
}
