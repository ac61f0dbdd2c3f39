import { badInput, between } from '../working/inputs';
import { show } from '../working/show';
import { waterTemperature } from './water';

/** An acid, or the conjugate acid of a base, that gives up its protons one after the other. */
export interface Protolyte {
  name: string;
  /** Rising, one for each proton; by activities at the solution's temperature. */
  pKas: readonly number[];
  /** Charge with all its protons on: 0 for an acid such as acetic, 1 for an amine's conjugate acid. */
  charge: number;
  /** mol/L, all its forms together. */
  concentration: number;
}

export interface Solution {
  protolytes: readonly Protolyte[];
  /** Charge of the cations that take up no proton (Na⁺, K⁺), mol/L. */
  strongCation: number;
  /** Charge of the anions that take up none (Cl⁻), mol/L. */
  strongAnion: number;
  /** °C, 0 to 100. */
  temperature: number;
  activities: 'none' | 'Davies';
}

/** Most that an aqueous computation means anything for, mol/L. */
const MOST_CONCENTRATED = 20;

export function concentration(value: number, what: string): number {
  return between(value, 0, MOST_CONCENTRATED, what, 'mol/L');
}

/** pKas between −10 and 20 that rise. @throws Problem `invalid-input` */
export function risingPKas(pKas: readonly number[], what = 'pKa of the acid'): readonly number[] {
  for (const pKa of pKas) between(pKa, -10, 20, what);
  if (pKas.length === 0)
    throw badInput(`${what.replace(/^pKa of /, 'There is no pKa for ')}.`, 'Enter its pKa.', what);
  if (pKas.some((pKa, index) => pKa < (pKas[index - 1] ?? pKa)))
    throw badInput(
      `The pKas ${pKas.map(show).join(', ')} do not rise.`,
      'Enter them in rising order: the first group given up has the lowest.',
      what,
    );
  return pKas;
}

/** @throws Problem `invalid-input` for what no solution can be */
export function checkSolution(solution: Solution): Solution {
  for (const one of solution.protolytes) {
    risingPKas(one.pKas, one.charge > 0 ? 'pKa of the base' : 'pKa of the acid');
    concentration(one.concentration, `Concentration of ${one.name}`);
  }
  concentration(solution.strongCation, 'Strong base');
  concentration(solution.strongAnion, 'Strong acid');
  waterTemperature(solution.temperature);
  return solution;
}
