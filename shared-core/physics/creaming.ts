import { finite, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';

/** Standard acceleration of gravity, m/s² (exact by definition). */
export const STANDARD_GRAVITY = 9.80665;

const WATER = 1000;
/** Stokes' law is for creeping flow: Reynolds' number far below one (Martin's Physical Pharmacy: 0.2; from memory). */
const MOST_REYNOLDS = 1;

function tooFast(reynolds: number): string {
  return `Reynolds’ number is ${show(reynolds)}, above 1: the flow is no longer creeping and Stokes’ law fails; it really moves more slowly.`;
}

/**
 * Speed at which a lone droplet creams or sinks (Stokes): 2·r²·|Δρ|·g / (9·η).
 *
 * @param radius m
 * @param densityDifference kg/m³ between droplet and medium; only its size counts
 * @param viscosity Pa·s of the medium
 * @returns m/s, ≥ 0
 * @param mediumDensity kg/m³, for Reynolds' number, above which the law fails; left out, it is that of water
 * @throws Problem `invalid-input`
 * Source: Stokes' law, as in Sinko (ed.), Martin's Physical Pharmacy, 5th ed. 2006.
 */
export function stokesVelocity(
  radius: number,
  densityDifference: number,
  viscosity: number,
  mediumDensity = WATER,
): Worked {
  positive(radius, 'Droplet radius');
  finite(densityDifference, 'Density difference');
  positive(viscosity, 'Viscosity');
  positive(mediumDensity, 'Density of the medium');
  const difference = Math.abs(densityDifference);
  const step = {
    says: 'creaming speed of a lone droplet (Stokes): 2 × r² × Δρ × g / (9 × η)',
    shows: `2 × (${show(radius)})² × ${show(difference)} × ${STANDARD_GRAVITY} / (9 × ${show(viscosity)})`,
    result: (2 * radius ** 2 * difference * STANDARD_GRAVITY) / (9 * viscosity),
    unit: 'm/s',
  };
  const reynolds = (2 * radius * step.result * mediumDensity) / viscosity;
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
      ...(reynolds > MOST_REYNOLDS ? [tooFast(reynolds)] : []),
    ],
  );
}
