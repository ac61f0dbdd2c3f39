import { badInput, between } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { concentration } from './solution';

/** How far the charges of listed ions may miss zero and still be a rounding, as a share of all charge. */
const NEUTRAL_WITHIN = 0.02;

/**
 * Ionic strength of listed ions: ½ Σ c z².
 *
 * @param ions mol/L, with their charge (−6 to 6, not 0)
 * @returns mol/L
 * @throws Problem `invalid-input`
 * Source: Lewis and Randall 1921, as in Sinko (ed.), Martin's Physical Pharmacy.
 */
export function ionicStrength(ions: readonly { concentration: number; charge: number }[]): Worked {
  if (ions.length === 0) throw badInput('There is no ion.', 'Enter at least one ion.', 'ions');
  for (const ion of ions) {
    concentration(ion.concentration, 'Concentration of an ion');
    between(ion.charge, -6, 6, 'Charge of an ion');
    if (ion.charge === 0 || !Number.isInteger(ion.charge))
      throw badInput(
        `An ion has a charge of ${show(ion.charge)}.`,
        'Enter a whole charge: 1 for Na⁺, −2 for sulfate.',
        'Charge of an ion',
      );
  }
  const charge = ions.reduce((sum, ion) => sum + ion.concentration * ion.charge, 0);
  const size = ions.reduce((sum, ion) => sum + ion.concentration * Math.abs(ion.charge), 0);
  const open = Math.abs(charge) > NEUTRAL_WITHIN * size;
  return oneStep(
    {
      says: 'ionic strength: ½ × Σ concentration × charge²',
      shows: `½ × (${ions.map((ion) => `${show(ion.concentration)} × ${show(Math.abs(ion.charge))}²`).join(' + ')})`,
      result: ions.reduce((sum, ion) => sum + ion.concentration * ion.charge ** 2, 0) / 2,
      unit: 'mol/L',
    },
    [{ text: 'Lewis G.N., Randall M. 1921; Sinko P.J. (ed.), Martin’s Physical Pharmacy', basis: 'memory' }],
    open ? ['The charges do not cancel: an ion is missing, or a concentration is wrong.'] : [],
  );
}
