import { badInput } from '../working/inputs';
import { show } from '../working/show';
import type { Protolyte, Solution } from './solution';
import { logGamma, pKw } from './water';

/** The forms of a protolyte at a pH: mol/L with its charge, from all protons on to all off. */
export interface Form {
  concentration: number;
  charge: number;
}

/** What a solution holds at a pH. Concentrations in mol/L. */
export interface State {
  pH: number;
  hydrogen: number;
  hydroxide: number;
  forms: Form[][];
  /** Charge in excess, mol/L: zero at the solution's own pH. */
  excess: number;
  ionicStrength: number;
  /** log₁₀ of the activity coefficient of one charge; 0 without activities. */
  logGamma: number;
}

/** Beyond this no formula for activity coefficients by ionic strength alone is worth its name. */
const HIGHEST_IONIC_STRENGTH = 1;
const LOWEST_PH = -2;
const HIGHEST_PH = 16;

/**
 * Where a solution stands at a pH, by the laws of mass action.
 *
 * @param gamma log₁₀ of the activity coefficient of a single charge, taken as known
 */
export function stateAt(solution: Solution, pH: number, gamma: number): State {
  const hydrogen = 10 ** (-pH - gamma);
  const hydroxide = 10 ** (pH - pKw(solution.temperature) - gamma);
  const forms = solution.protolytes.map((one) => formsAt(one, pH, gamma));
  const ions = forms.flat();
  const { strongCation, strongAnion } = solution;
  const strong = strongCation + strongAnion;
  const sum = (of: (form: Form) => number): number => ions.reduce((total, form) => total + of(form), 0);
  return {
    pH,
    hydrogen,
    hydroxide,
    forms,
    excess: hydrogen - hydroxide + strongCation - strongAnion + sum((f) => f.concentration * f.charge),
    ionicStrength: (hydrogen + hydroxide + strong + sum((f) => f.concentration * f.charge ** 2)) / 2,
    logGamma: gamma,
  };
}

/** Each proton given up: [next] / [before] = Ka / a(H) × γ(before) / γ(next), with log γ = z² × that of one charge. */
function formsAt({ pKas, charge, concentration }: Protolyte, pH: number, gamma: number): Form[] {
  const logs = [0];
  for (const [index, pKa] of pKas.entries()) {
    const [before, next] = [charge - index, charge - index - 1];
    logs.push((logs[index] ?? 0) + pH - pKa + gamma * (before ** 2 - next ** 2));
  }
  const most = Math.max(...logs);
  const ratios = logs.map((log) => 10 ** (log - most));
  const all = ratios.reduce((sum, ratio) => sum + ratio, 0);
  return ratios.map((ratio, index) => ({
    concentration: (concentration * ratio) / all,
    charge: charge - index,
  }));
}

/**
 * The state in which the charges cancel. The excess falls with pH throughout, so halving an interval finds it; with
 * activities, ionic strength and pH are found in turn until neither moves.
 *
 * @throws Problem `invalid-input` for a solution outside pH −2 to 16, or too concentrated for activities
 */
export function balanced(solution: Solution): State {
  let state = neutralState(solution, 0);
  if (solution.activities === 'none') return state;
  for (let round = 0; round < 200; round += 1) {
    if (state.ionicStrength > HIGHEST_IONIC_STRENGTH) throw tooConcentrated(state.ionicStrength);
    const next = neutralState(solution, logGamma(state.ionicStrength, solution.temperature));
    const settled = Math.abs(next.ionicStrength - state.ionicStrength) < 1e-12;
    state = next;
    if (settled) return state;
  }
  throw tooConcentrated(state.ionicStrength);
}

function neutralState(solution: Solution, gamma: number): State {
  let [low, high] = [LOWEST_PH, HIGHEST_PH];
  if (stateAt(solution, low, gamma).excess < 0 || stateAt(solution, high, gamma).excess > 0)
    throw badInput(
      'This is more acidic or alkaline than any water can be.',
      'Check the concentrations and their unit (mol/L).',
    );
  for (let half = 0; half < 100; half += 1) {
    const middle = (low + high) / 2;
    if (stateAt(solution, middle, gamma).excess > 0) low = middle;
    else high = middle;
  }
  return stateAt(solution, (low + high) / 2, gamma);
}

function tooConcentrated(ionicStrength: number) {
  return badInput(
    `At an ionic strength of ${show(ionicStrength)} mol/L activities cannot be computed.`,
    'Compute without activities, and measure: this is too concentrated for either to be close.',
    'activities',
  );
}
