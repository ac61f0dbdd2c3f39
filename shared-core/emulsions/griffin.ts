import { badInput, between, nonNegative, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { GRIFFIN_1949, GRIFFIN_1954 } from './sources';

const NON_IONIC_ONLY = 'Griffin’s scale (0 to 20) describes non-ionic emulsifiers only.';
const POLYOLS_ONLY =
  'S and A describe esters of polyols (glycerol, sorbitan) with fatty acids; for an ester of a simple alcohol, such as isopropyl myristate, the figure means nothing.';

/**
 * HLB of an emulsifier whose hydrophile is polyoxyethylene alone: E/5.
 *
 * @param oxyethylenePercent E, mass % of oxyethylene in the molecule, 0 to 100
 * @throws Problem `invalid-input` when E is no number or out of bounds
 * Source: Griffin 1954.
 */
export function griffinEthoxylate(oxyethylenePercent: number): Worked {
  between(oxyethylenePercent, 0, 100, 'Oxyethylene', '%');
  const step = {
    says: 'HLB of an ethoxylate: a fifth of its mass per cent of oxyethylene (E / 5)',
    shows: `${show(oxyethylenePercent)} / 5`,
    result: oxyethylenePercent / 5,
    unit: '',
  };
  return oneStep(step, [GRIFFIN_1954], [NON_IONIC_ONLY]);
}

/**
 * HLB of a fatty acid ester of a polyol: 20·(1 − S/A).
 *
 * @param saponificationNumber S of the ester, mg KOH/g, 0 to A
 * @param acidNumber A of the fatty acid it was made from, mg KOH/g, > 0
 * @throws Problem `invalid-input` also when S is above A, where the formula describes no ester
 * Source: Griffin 1954.
 */
export function griffinEster(saponificationNumber: number, acidNumber: number): Worked {
  nonNegative(saponificationNumber, 'Saponification value');
  positive(acidNumber, 'Acid value of the fatty acid');
  if (saponificationNumber > acidNumber)
    throw badInput(
      `The ester’s saponification value (${show(saponificationNumber)}) is above the acid value of its fatty acid (${show(acidNumber)}).`,
      'Check that S is the ester’s and A the fatty acid’s: an ester is heavier than its acid, so S is the smaller.',
      'Saponification value',
    );
  const step = {
    says: 'HLB of a polyol ester from its saponification value S and the acid value A of its acid: 20 × (1 − S/A)',
    shows: `20 × (1 − ${show(saponificationNumber)} / ${show(acidNumber)})`,
    result: 20 * (1 - saponificationNumber / acidNumber),
    unit: '',
  };
  return oneStep(step, [GRIFFIN_1954], [NON_IONIC_ONLY, POLYOLS_ONLY]);
}

/**
 * HLB where both oxyethylene and a polyol make the hydrophile: (E + P)/5.
 *
 * @param oxyethylenePercent E, mass %
 * @param polyolPercent P, mass % of polyhydric alcohol; E + P ≤ 100
 * Source: Griffin 1954.
 */
export function griffinPolyol(oxyethylenePercent: number, polyolPercent: number): Worked {
  between(oxyethylenePercent, 0, 100, 'Oxyethylene', '%');
  between(polyolPercent, 0, 100, 'Polyol', '%');
  between(oxyethylenePercent + polyolPercent, 0, 100, 'Oxyethylene and polyol together', '%');
  const step = {
    says: 'HLB from oxyethylene E and polyol P: (E + P) / 5',
    shows: `(${show(oxyethylenePercent)} + ${show(polyolPercent)}) / 5`,
    result: (oxyethylenePercent + polyolPercent) / 5,
    unit: '',
  };
  return oneStep(step, [GRIFFIN_1954], [NON_IONIC_ONLY]);
}

/**
 * HLB from the mass fraction of the hydrophilic part: 20·Mh/M.
 *
 * @param hydrophilicMolarMass Mh, g/mol, 0 to M
 * @param molarMass M, g/mol, > 0
 * @throws Problem `invalid-input` also when the part is heavier than the whole
 * Source: Griffin 1949 and 1954.
 */
export function griffinMass(hydrophilicMolarMass: number, molarMass: number): Worked {
  nonNegative(hydrophilicMolarMass, 'Molar mass of the hydrophilic part');
  positive(molarMass, 'Molar mass');
  if (hydrophilicMolarMass > molarMass)
    throw badInput(
      `The hydrophilic part (${show(hydrophilicMolarMass)} g/mol) is heavier than the whole molecule (${show(molarMass)} g/mol).`,
      'Check both molar masses; the part cannot outweigh the whole.',
      'Molar mass of the hydrophilic part',
    );
  const step = {
    says: 'HLB from the mass fraction of the hydrophilic part: 20 × Mh / M',
    shows: `20 × ${show(hydrophilicMolarMass)} / ${show(molarMass)}`,
    result: (20 * hydrophilicMolarMass) / molarMass,
    unit: '',
  };
  return oneStep(step, [GRIFFIN_1949, GRIFFIN_1954], [NON_IONIC_ONLY]);
}
