import { between } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';

const HENDERSON: Source = {
  text: 'Hasselbalch K.A., Biochem. Z. 78, 112-144 (1917), rearranged',
  basis: 'read',
};
const STEINBERG_2005: Source = {
  text: 'Steinberg D.C., The chemistry of preservatives, J. Cosmet. Sci. 56, 361-362 (2005): acids act as the undissociated form',
  basis: 'read',
};
const CAUTIONS = [
  'pH is that of the finished product’s water phase; part of the acid also leaves into the oil phase and micelles.',
  'Not proof of preservation: a challenge test and a qualified assessment decide.',
];

/**
 * Share of an organic acid that is undissociated: 100 / (1 + 10^(pH − pKa)).
 *
 * @returns mass % of the acid
 * @throws Problem `invalid-input` for pKa or pH out of bounds
 * Source: Henderson–Hasselbalch; which form acts, Steinberg 2005.
 */
export function undissociatedPercent(pKa: number, pH: number): Worked {
  return worked([shareStep(pKa, pH)], [HENDERSON, STEINBERG_2005], CAUTIONS);
}

/**
 * How much of a dose is undissociated at the product's pH.
 *
 * @param totalPercent dose of the acid, mass % of the formula (convert a salt to its acid first)
 * @returns mass % of the formula
 * @throws Problem `invalid-input`
 */
export function undissociatedAmount(totalPercent: number, pKa: number, pH: number): Worked {
  between(totalPercent, 0, 100, 'Dose of the acid', '%');
  const share = shareStep(pKa, pH);
  const amount: WorkingStep = {
    says: 'undissociated acid in the formula: dose × undissociated share',
    shows: `${show(totalPercent)} × ${show(share.result)} / 100`,
    result: (totalPercent * share.result) / 100,
    unit: '%',
  };
  return worked([share, amount], [HENDERSON, STEINBERG_2005], CAUTIONS);
}

/**
 * A salt's dose as its acid, for limits and activity that are stated "as acid".
 *
 * @param saltPercent mass % of the formula
 * @param saltMolarMass g/mol, per one acid group, as is `acidMolarMass`
 */
export function asAcid(saltPercent: number, saltMolarMass: number, acidMolarMass: number): Worked {
  between(saltPercent, 0, 100, 'Dose of the salt', '%');
  between(saltMolarMass, 1, 1e6, 'Molar mass of the salt', 'g/mol');
  between(acidMolarMass, 1, 1e6, 'Molar mass of the acid', 'g/mol');
  const step = {
    says: 'dose as acid: salt × molar mass of the acid / molar mass of the salt',
    shows: `${show(saltPercent)} × ${show(acidMolarMass)} / ${show(saltMolarMass)}`,
    result: (saltPercent * acidMolarMass) / saltMolarMass,
    unit: '%',
  };
  return worked([step], [{ text: 'molar proportion', basis: 'common-practice' }]);
}

function shareStep(pKa: number, pH: number): WorkingStep {
  between(pKa, -10, 20, 'pKa');
  between(pH, 0, 14, 'pH');
  return {
    says: 'undissociated share of the acid: 100 / (1 + 10^(pH − pKa))',
    shows: `100 / (1 + 10^(${show(pH)} − ${show(pKa)}))`,
    result: 100 / (1 + 10 ** (pH - pKa)),
    unit: '%',
  };
}
