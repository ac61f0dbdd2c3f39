import { nonNegative, positive } from '../working/inputs';
import { oneStep, worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

/** Per cm and rpm²: (2π/60)² / 100 / g is 1.1182e-5; the trade's formula rounds it to 1.118e-5 (0.02 % less). */
const RCF_CONSTANT = 1.118e-5;

const RCF_SOURCE: Source = {
  text: 'definition of relative centrifugal force: ω² × r / g, with g 9.80665 m/s²',
  basis: 'read',
};
const SCREENS = 'A centrifuge screens for creaming; it does not prove shelf life.';

/**
 * Relative centrifugal force: 1.118·10⁻⁵ × r × rpm².
 *
 * @param radiusCm rotor radius at the sample, cm, > 0
 * @param rpm ≥ 0
 * @returns multiples of standard gravity
 * @throws Problem `invalid-input`
 */
export function rcf(radiusCm: number, rpm: number): Worked {
  positive(radiusCm, 'Rotor radius');
  nonNegative(rpm, 'Speed of rotation');
  const step = {
    says: 'relative centrifugal force: 1.118e-5 × radius in cm × rpm²',
    shows: `1.118e-5 × ${show(radiusCm)} × ${show(rpm)}²`,
    result: RCF_CONSTANT * radiusCm * rpm ** 2,
    unit: '× g',
  };
  return oneStep(step, [RCF_SOURCE], [SCREENS]);
}

/**
 * Time of standing that a spin stands for, by creaming distance alone: RCF × spin time.
 *
 * @param spinMinutes min
 * @returns min
 */
export function standingEquivalent(radiusCm: number, rpm: number, spinMinutes: number): Worked {
  nonNegative(spinMinutes, 'Spin time');
  const force = rcf(radiusCm, rpm);
  const step = {
    says: 'time of standing with the same Stokes creaming: RCF × spin time',
    shows: `${show(force.value)} × ${show(spinMinutes)}`,
    result: force.value * spinMinutes,
    unit: 'min',
  };
  return worked(
    [...force.steps, step],
    [
      ...force.sources,
      { text: 'Stokes’ law: creaming speed is proportional to acceleration', basis: 'memory' },
    ],
    [SCREENS, 'Spinning also crushes droplets and breaks gel networks, which standing does not.'],
  );
}
