import { between, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';

const WATER_MOLAR_MASS = 18.015;
const NORRISH: Source = {
  text: 'Norrish equation, aw = xw exp(−K xs²) by mole fractions; Baeza R. and co-workers, Food Bioprocess Technol. 3, 87-92 (2010)',
  basis: 'read',
};
const RAOULT: Source = { text: 'Raoult’s law', basis: 'memory' };

/** Water activity of one solute in water. */
export interface SoluteInWater {
  /** mol of solute in 1 kg of water. */
  molality: number;
  /** Norrish constant of the solute; 0 for an ideal solution (Raoult). */
  k: number;
}

/**
 * Water activity of water with one solute that is no salt: xw · exp(−K · xs²).
 *
 * @returns 0 to 1
 * @throws Problem `invalid-input`
 * Source: Norrish 1966; Raoult for K = 0.
 */
export function waterActivity({ molality, k }: SoluteInWater): Worked {
  return worked(activitySteps(molality, k), [k === 0 ? RAOULT : NORRISH], cautionsOf(molality, k));
}

/**
 * The same from what is weighed.
 *
 * @param solutePercent mass % of solute in solute and water together, 0 to below 100
 * @param soluteMolarMass g/mol
 * @throws Problem `invalid-input`
 */
export function waterActivityOfPercent(solutePercent: number, soluteMolarMass: number, k: number): Worked {
  between(solutePercent, 0, 99.99, 'Solute', '% of solute and water');
  positive(soluteMolarMass, 'Molar mass of the solute');
  const molality = (1000 * solutePercent) / soluteMolarMass / (100 - solutePercent);
  const step: WorkingStep = {
    says: 'solute in 1 kg of water: 1000 × % / molar mass / (100 − %)',
    shows: `1000 × ${show(solutePercent)} / ${show(soluteMolarMass)} / (100 − ${show(solutePercent)})`,
    result: molality,
    unit: 'mol/kg',
  };
  const steps = [step, ...activitySteps(molality, k)];
  return worked(steps, [k === 0 ? RAOULT : NORRISH], cautionsOf(molality, k));
}

function activitySteps(molality: number, k: number): WorkingStep[] {
  nonNegative(molality, 'Molality');
  between(molality, 0, 1e5, 'Molality', 'mol/kg');
  between(k, -10, 200, 'Norrish constant');
  const water = 1000 / WATER_MOLAR_MASS;
  const solute = molality / (molality + water);
  return [
    {
      says: 'mole fraction of the solute: molality / (molality + 1000 / 18.015)',
      shows: `${show(molality)} / (${show(molality)} + ${show(water)})`,
      result: solute,
      unit: '',
    },
    {
      says:
        k === 0
          ? 'water activity of an ideal solution (Raoult): mole fraction of the water'
          : 'water activity (Norrish): mole fraction of the water × exp(−K × mole fraction of the solute²)',
      shows: k === 0 ? `1 − ${show(solute)}` : `(1 − ${show(solute)}) × exp(−${show(k)} × ${show(solute)}²)`,
      result: (1 - solute) * Math.exp(-k * solute ** 2),
      unit: '',
    },
  ];
}

/** Beyond this the fitted constants of the literature were not measured (Scott's table ends at 22 mol/kg of glycerol). */
const FITTED_TO = 22;

function cautionsOf(molality: number, k: number): string[] {
  return [
    'Of one solute in water at 25 °C: salts, polymers and oil phases bind water otherwise. Measure before relying on it.',
    'A low water activity slows microbes, but is not preservation: a challenge test decides.',
    ...(k === 0
      ? ['An ideal solution: real polyols and sugars bind more water; a Norrish constant says how much.']
      : []),
    ...(molality > FITTED_TO
      ? ['More concentrated than the measurements that the constants come from.']
      : []),
  ];
}
