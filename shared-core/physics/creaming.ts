import { finite, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';

/** Standard acceleration of gravity, m/s² (exact by definition). */
export const STANDARD_GRAVITY = 9.80665;

/**
 * Speed at which a lone droplet creams or sinks (Stokes): 2·r²·|Δρ|·g / (9·η).
 *
 * @param radius m
 * @param densityDifference kg/m³ between droplet and medium; only its size counts
 * @param viscosity Pa·s of the medium
 * @returns m/s, ≥ 0
 * @throws Problem `invalid-input`
 * Source: Stokes' law, as in Sinko (ed.), Martin's Physical Pharmacy, 5th ed. 2006.
 */
export function stokesVelocity(radius: number, densityDifference: number, viscosity: number): Worked {
  positive(radius, 'Droplet radius');
  finite(densityDifference, 'Density difference');
  positive(viscosity, 'Viscosity');
  const difference = Math.abs(densityDifference);
  const step = {
    says: 'creaming speed of a lone droplet (Stokes): 2 × r² × Δρ × g / (9 × η)',
    shows: `2 × (${show(radius)})² × ${show(difference)} × ${STANDARD_GRAVITY} / (9 × ${show(viscosity)})`,
    result: (2 * radius ** 2 * difference * STANDARD_GRAVITY) / (9 * viscosity),
    unit: 'm/s',
  };
  return oneStep(
    step,
    [
      {
        text: 'Stokes’ law; Sinko P.J. (ed.), Martin’s Physical Pharmacy and Pharmaceutical Sciences, 5th ed., 2006',
        basis: 'memory',
      },
    ],
    [
      'Holds for a dilute emulsion in a medium without yield stress: creams and gels move far slower. It screens, it does not prove.',
    ],
  );
}
