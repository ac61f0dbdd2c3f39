import { badInput, nonNegative, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';

/**
 * Viscosity of a suspension or emulsion (Krieger–Dougherty): η·(1 − φ/φm)^(−[η]·φm).
 *
 * @param phi volume fraction of the disperse phase, 0 to below `phiMax`
 * @param phiMax closest packing, above 0 to 1 (0.64 for random spheres, 0.74 close-packed)
 * @param intrinsicViscosity [η], 2.5 for spheres
 * @param mediumViscosity any unit; the answer comes in the same
 * @throws Problem `invalid-input`, also at or beyond packing, where nothing flows
 * Source: Krieger–Dougherty, form read at PMC8391775, Table 6.
 */
export function suspensionViscosity(
  phi: number,
  phiMax: number,
  intrinsicViscosity: number,
  mediumViscosity: number,
): Worked {
  nonNegative(phi, 'Volume fraction');
  positive(phiMax, 'Packing limit');
  positive(intrinsicViscosity, 'Intrinsic viscosity');
  nonNegative(mediumViscosity, 'Viscosity of the medium');
  if (phiMax > 1)
    throw badInput(
      `The packing limit is ${phiMax}; a volume fraction cannot pass 1.`,
      'Enter fractions, not per cent (64 % is 0.64).',
      'phiMax',
    );
  if (phi >= phiMax)
    throw badInput(
      `At a volume fraction of ${phi} the droplets are packed (limit ${phiMax}): the law has no value there.`,
      'Lower the volume fraction, or state a packing limit above it.',
      'phi',
    );
  const step = {
    says: 'viscosity (Krieger–Dougherty): medium × (1 − φ/φm)^(−[η] × φm)',
    shows: `${show(mediumViscosity)} × (1 − ${show(phi)} / ${show(phiMax)})^(−${show(intrinsicViscosity)} × ${show(phiMax)})`,
    result: mediumViscosity * (1 - phi / phiMax) ** (-intrinsicViscosity * phiMax),
    unit: '',
  };
  return oneStep(
    step,
    [
      {
        text: 'Krieger I.M., Dougherty T.J., A mechanism for non-Newtonian flow in suspensions of rigid spheres, Trans. Soc. Rheol. 3, 137-152 (1959)',
        basis: 'memory',
      },
    ],
    [
      'Written for hard spheres; emulsions with mobile interfaces lie below it, and gel networks in the water phase far above it.',
    ],
  );
}
