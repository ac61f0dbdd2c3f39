import { between, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';
import { concentration } from './solution';

const MARTIN: Source = {
  text: 'Sinko P.J. (ed.), Martin’s Physical Pharmacy and Pharmaceutical Sciences, buffered and isotonic solutions',
  basis: 'memory',
};
const APPROXIMATE =
  'The buffer equation takes acid and salt as weighed; below about 0.01 mol/L, or beyond pH 3 to 11, trust the charge balance.';

/**
 * pH of an acid with its salt by the buffer equation: pKa + log(salt / acid).
 *
 * @param acid mol/L, above 0
 * @param salt mol/L, above 0
 * @throws Problem `invalid-input`
 * Source: Henderson–Hasselbalch.
 */
export function bufferPh(pKa: number, acid: number, salt: number): Worked {
  between(pKa, -10, 20, 'pKa');
  concentration(positive(acid, 'Acid'), 'Acid');
  concentration(positive(salt, 'Salt'), 'Salt');
  return oneStep(
    {
      says: 'pH by the buffer equation: pKa + log(salt / acid)',
      shows: `${show(pKa)} + log(${show(salt)} / ${show(acid)})`,
      result: pKa + Math.log10(salt / acid),
      unit: '',
    },
    [MARTIN],
    [APPROXIMATE],
  );
}

/**
 * Salt for each part of acid, by moles, at a pH: 10^(pH − pKa).
 *
 * @throws Problem `invalid-input`
 */
export function bufferRatio(pKa: number, pH: number): Worked {
  between(pKa, -10, 20, 'pKa');
  between(pH, 0, 14, 'pH');
  return oneStep(
    {
      says: 'salt for each part of acid, by moles: 10^(pH − pKa)',
      shows: `10^(${show(pH)} − ${show(pKa)})`,
      result: 10 ** (pH - pKa),
      unit: 'mol salt per mol acid',
    },
    [MARTIN],
    Math.abs(pH - pKa) > 1
      ? ['More than one unit from its pKa a buffer holds little: choose another acid.']
      : [],
  );
}

/**
 * Buffer capacity (Van Slyke): 2.303 · C · Ka · [H] / (Ka + [H])². The share of water itself is left out.
 *
 * @param total acid and salt together, mol/L
 * @returns mol/L of strong base for one unit of pH
 * @throws Problem `invalid-input`
 */
export function bufferCapacity(total: number, pKa: number, pH: number): Worked {
  concentration(positive(total, 'Acid and salt together'), 'Acid and salt together');
  between(pKa, -10, 20, 'pKa');
  between(pH, 0, 14, 'pH');
  const ratio = 10 ** (pH - pKa);
  return oneStep(
    {
      says: 'buffer capacity: 2.303 × C × r / (1 + r)², with r = 10^(pH − pKa), salt for each part of acid',
      shows: `2.303 × ${show(total)} × ${show(ratio)} / (1 + ${show(ratio)})²`,
      result: (Math.LN10 * total * ratio) / (1 + ratio) ** 2,
      unit: 'mol/L per pH',
    },
    [{ text: 'Van Slyke D.D., J. Biol. Chem. 52, 525-570 (1922)', basis: 'memory' }, MARTIN],
  );
}
