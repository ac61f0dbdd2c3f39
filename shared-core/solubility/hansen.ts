import { badInput, between, finite, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

/** Hansen solubility parameters: dispersion, polar and hydrogen-bonding part, MPa½. */
export interface Hansen {
  d: number;
  p: number;
  h: number;
}

export const HANSEN: Source = {
  text: 'Hansen C.M., Hansen Solubility Parameters: A User’s Handbook, 2nd ed., CRC Press, Boca Raton 2007',
  basis: 'memory',
};
const UNIT = 'MPa½';
/** Said with every distance. */
export const LIKENESS =
  'A distance says how alike two substances are, not how much dissolves: crystals, salts and polymers dissolve less than it says. Try it, warm and cold, and look at it after some days.';

function checked({ d, p, h }: Hansen, what: string): Hansen {
  return {
    d: nonNegative(d, `The dispersion part${what}`),
    p: nonNegative(p, `The polar part${what}`),
    h: nonNegative(h, `The hydrogen-bonding part${what}`),
  };
}

/**
 * The total parameter, √(d² + p² + h²), MPa½.
 *
 * @throws Problem `invalid-input`
 * Source: Hansen.
 */
export function hansenTotal(of: Hansen): Worked {
  const { d, p, h } = checked(of, '');
  const step = {
    says: 'total parameter: √(dispersion² + polar² + hydrogen bonding²)',
    shows: `√(${show(d)}² + ${show(p)}² + ${show(h)}²)`,
    result: Math.hypot(d, p, h),
    unit: UNIT,
  };
  return worked([step], [HANSEN]);
}

/**
 * The distance of two substances, Ra = √(4 Δd² + Δp² + Δh²), MPa½: the smaller, the more alike.
 *
 * @throws Problem `invalid-input`
 * Source: Hansen.
 */
export function hansenDistance(first: Hansen, second: Hansen): Worked {
  const [a, b] = [checked(first, ' of the first'), checked(second, ' of the second')];
  const step = {
    says: 'distance: √(4 × difference of dispersion² + of polar² + of hydrogen bonding²)',
    shows: `√(4 × (${show(a.d)} − ${show(b.d)})² + (${show(a.p)} − ${show(b.p)})² + (${show(a.h)} − ${show(b.h)})²)`,
    result: Math.hypot(2 * (a.d - b.d), a.p - b.p, a.h - b.h),
    unit: UNIT,
  };
  return worked([step], [HANSEN], [LIKENESS]);
}

/**
 * Relative energy difference: distance over the radius of what dissolves; below 1 it is likely to dissolve.
 *
 * @param radius of the sphere of the solute, MPa½
 * @throws Problem `invalid-input`
 */
export function relativeEnergyDifference(solute: Hansen, radius: number, solvent: Hansen): Worked {
  positive(radius, 'The radius');
  const distance = hansenDistance(solute, solvent);
  const step = {
    says: 'relative energy difference (RED): distance / radius',
    shows: `${show(distance.value)} / ${show(radius)}`,
    result: distance.value / radius,
    unit: '',
  };
  return worked([...distance.steps, step], distance.sources, distance.cautions);
}

/** A liquid with its part of a mixture, in any one unit of volume. */
export type BlendPart = Hansen & { volume: number };

/**
 * The parameters of a mixture: each part's by its fraction of the volume.
 *
 * @throws Problem `invalid-input` where there is no volume
 */
export function hansenOfBlend(parts: readonly BlendPart[]): Record<keyof Hansen, Worked> {
  const whole = parts.reduce((sum, part) => sum + nonNegative(part.volume, 'A part'), 0);
  if (!(whole > 0))
    throw badInput('There are no parts by volume yet.', 'Enter how much there is of each liquid.', 'rows');
  parts.forEach((part) => checked(part, ' of a liquid'));
  const mean = (key: keyof Hansen, says: string): Worked => {
    const step = {
      says: `${says} of the mixture: mean by volume`,
      shows: `(${parts.map((part) => `${show(part.volume)} × ${show(part[key])}`).join(' + ')}) / ${show(whole)}`,
      result: parts.reduce((sum, part) => sum + part.volume * part[key], 0) / whole,
      unit: UNIT,
    };
    return worked([step], [HANSEN]);
  };
  return { d: mean('d', 'dispersion'), p: mean('p', 'polar part'), h: mean('h', 'hydrogen bonding') };
}

const VAUGHAN: Source = {
  text: 'Vaughan C.D., Using solubility parameters in cosmetics formulation, J. Soc. Cosmet. Chem. 36, 319-333 (1985), Beerbower’s relation',
  basis: 'read',
};

/**
 * The solubility parameter of a surfactant from its HLB: 118 / (54 − HLB) + 6.0, (cal/cm³)½.
 *
 * @param hlb 0 to 40
 * @throws Problem `invalid-input`
 */
export function parameterOfHlb(hlb: number): Worked {
  between(finite(hlb, 'HLB'), 0, 40, 'HLB');
  const step = {
    says: 'solubility parameter: 118 / (54 − HLB) + 6.0',
    shows: `118 / (54 − ${show(hlb)}) + 6`,
    result: 118 / (54 - hlb) + 6,
    unit: '(cal/cm³)½',
  };
  return worked([step], [VAUGHAN], ['For non-ionic surfactants. 1 (cal/cm³)½ is 2.0455 MPa½.']);
}
