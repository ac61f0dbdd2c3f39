import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { balanced } from './charge-balance';
import type { State } from './charge-balance';
import { checkSolution } from './solution';
import type { Protolyte, Solution } from './solution';
import { DAVIES, WATER_SOURCES } from './water';

/** What is known of a solution's equilibrium. */
export interface SolutionPh {
  /** pH by activity, as an electrode reads it. */
  pH: Worked;
  ionicStrength: Worked;
}

const DILUTE =
  'For clear, dilute water. Emulsions, fatty acids at an interface and polyacids such as carbomer have another pH: measure.';
const AT_25 = 'The pKas are taken as they are; tables mostly give them at 25 °C.';
/** Davies’ equation holds to about here (mol/L). */
const DAVIES_HOLDS = 0.5;

/**
 * pH and ionic strength of a solution of acids, their salts and bases: of an acid alone, of a neutralised mixture, or
 * of a buffer, all by the same balance of charges.
 *
 * @throws Problem `invalid-input`
 * Source: Perrin and Dempsey 1974 (mass and charge balances); Davies 1962 for activities.
 */
export function solutionPh(solution: Solution): SolutionPh {
  const state = balanced(checkSolution(solution));
  const withDavies = solution.activities === 'Davies';
  const sources = withDavies ? [...WATER_SOURCES, DAVIES] : [...WATER_SOURCES];
  const cautions = [DILUTE, ...cautionsOf(solution, state)];
  return {
    pH: worked(
      [...(withDavies ? [gammaStep(state)] : []), ...chargeSteps(solution, state), phStep(solution, state)],
      sources,
      cautions,
    ),
    ionicStrength: worked([ionicStep(solution, state)], sources, cautions),
  };
}

function cautionsOf(solution: Solution, state: State): string[] {
  const cautions: string[] = [];
  if (solution.temperature !== 25) cautions.push(AT_25);
  if (solution.activities === 'Davies' && state.ionicStrength > DAVIES_HOLDS)
    cautions.push(`Davies’ equation holds to about ${DAVIES_HOLDS} mol/L of ionic strength; this is more.`);
  if (solution.activities === 'none' && state.ionicStrength > 0.01)
    cautions.push(
      'Without activities the pH of salts and buffers comes out up to half a unit off; choose Davies to see.',
    );
  return cautions;
}

function gammaStep(state: State): WorkingStep {
  return {
    says: 'activity coefficient of a single charge (Davies), at the ionic strength found; to the power z² for z charges',
    shows: `10^(${show(state.logGamma)}), at ${show(state.ionicStrength)} mol/L`,
    result: 10 ** state.logGamma,
    unit: '',
  };
}

/** Charge of all forms of a protolyte together, mol/L. */
function chargeOf(state: State, index: number): number {
  return (state.forms[index] ?? []).reduce((sum, form) => sum + form.concentration * form.charge, 0);
}

function chargeSteps(solution: Solution, state: State): WorkingStep[] {
  return [
    ...solution.protolytes.map((one, index) => protolyteStep(one, state, index)),
    {
      says: 'free hydrogen less free hydroxide at this pH',
      shows: `${show(state.hydrogen)} − ${show(state.hydroxide)}`,
      result: state.hydrogen - state.hydroxide,
      unit: 'mol/L',
    },
  ];
}

function protolyteStep(one: Protolyte, state: State, index: number): WorkingStep {
  const forms = state.forms[index] ?? [];
  return {
    says: `charge that ${one.name} carries at this pH: Σ form × its charge, with pKa ${one.pKas.map(show).join(', ')}`,
    shows: forms.map((form) => `${show(form.concentration)} × ${showTerm(form.charge)}`).join(' + '),
    result: chargeOf(state, index),
    unit: 'mol/L',
  };
}

function phStep(solution: Solution, state: State): WorkingStep {
  const { strongCation, strongAnion } = solution;
  const terms = [
    state.hydrogen - state.hydroxide,
    ...(strongCation > 0 ? [strongCation] : []),
    ...(strongAnion > 0 ? [-strongAnion] : []),
    ...solution.protolytes.map((_, index) => chargeOf(state, index)),
  ];
  return {
    says: 'pH at which the charges cancel, found by halving: hydrogen less hydroxide + strong base − strong acid + the charges above = 0',
    shows: `${terms.map(showTerm).join(' + ')} = 0 at pH`,
    result: state.pH,
    unit: '',
  };
}

function ionicStep(solution: Solution, state: State): WorkingStep {
  const ions = [
    { concentration: state.hydrogen + state.hydroxide, charge: 1 },
    { concentration: solution.strongCation + solution.strongAnion, charge: 1 },
    ...state.forms.flat().filter((form) => form.charge !== 0),
  ].filter((ion) => ion.concentration > 0);
  return {
    says: 'ionic strength: ½ × Σ concentration × charge²',
    shows: `½ × (${ions.map((ion) => `${show(ion.concentration)} × ${Math.abs(ion.charge)}²`).join(' + ')})`,
    result: state.ionicStrength,
    unit: 'mol/L',
  };
}
