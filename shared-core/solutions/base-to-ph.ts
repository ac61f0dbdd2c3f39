import { badInput, between } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { stateAt } from './charge-balance';
import type { State } from './charge-balance';
import { concentration, risingPKas } from './solution';
import type { Solution } from './solution';
import { solutionPh } from './solution-ph';
import { WATER_SOURCES } from './water';

export interface AcidInWater {
  /** Rising, one for each acid group. */
  pKas: readonly number[];
  /** mol/L of acid molecules. */
  concentration: number;
}

/** Base that takes an acid to a pH. */
export interface BaseToPh {
  /** Charge of base for each acid group; above 1 where the pH asks for free alkali. */
  perGroup: Worked;
  /** Share of the base that takes up acid there; null for an alkali, which all does. */
  uptake: Worked | null;
  /** pH of the acid before any base. */
  alone: Worked;
  ionicStrength: Worked;
}

/** The acid in water, before any base, at 25 °C without activities. */
export function acidAlone({ pKas, concentration: amount }: AcidInWater): Solution {
  return {
    protolytes: [{ name: 'the acid', pKas, charge: 0, concentration: amount }],
    strongCation: 0,
    strongAnion: 0,
    temperature: 25,
    activities: 'none',
  };
}

/**
 * Base for an acid to a pH by the charge balance at 25 °C, without activities: what the acid has given up there, and
 * free hydroxide, less the hydrogen that the acid sets free by itself.
 *
 * @param basePKa of an amine's conjugate acid; null for an alkali
 * @throws Problem `invalid-input`, also where the acid alone stands above that pH
 * Source: Perrin and Dempsey 1974.
 */
export function baseToPh(acid: AcidInWater, pH: number, basePKa: number | null): BaseToPh {
  risingPKas(acid.pKas);
  concentration(acid.concentration, 'Concentration of the acid');
  between(pH, 0, 14, 'pH to reach');
  const alone = solutionPh(acidAlone(acid)).pH;
  if (pH < alone.value - 1e-9)
    throw badInput(
      `The acid alone is at pH ${alone.value.toFixed(2)} in this water: no base takes it down to ${show(pH)}.`,
      'Choose a pH above it, or take more of the acid or a stronger one.',
      'pH to reach',
    );
  const state = stateAt(acidAlone(acid), pH, 0);
  const perGroup = perGroupOf(acid, state);
  return {
    perGroup,
    alone,
    uptake: basePKa === null ? null : amineUptake(basePKa, pH),
    ionicStrength: solutionPh({
      ...acidAlone(acid),
      strongCation: Math.max(0, perGroup.value * acid.pKas.length * acid.concentration),
    }).ionicStrength,
  };
}

function perGroupOf(acid: AcidInWater, state: State): Worked {
  const groups = acid.concentration * acid.pKas.length;
  const given = -(state.forms[0] ?? []).reduce((sum, form) => sum + form.concentration * form.charge, 0);
  const needed = given + state.hydroxide - state.hydrogen;
  const forms = (state.forms[0] ?? []).map((form, index) => `${index} × ${show(form.concentration)}`);
  const steps: WorkingStep[] = [
    {
      says: `acid groups that have given up their hydrogen at pH ${show(state.pH)}: Σ groups given up × form, with pKa ${acid.pKas.map(show).join(', ')}`,
      shows: forms.join(' + '),
      result: given,
      unit: 'mol/L',
    },
    {
      says: 'base needed: those groups + free hydroxide − free hydrogen, which needs none',
      shows: `${show(given)} + ${show(state.hydroxide)} − ${show(state.hydrogen)}`,
      result: needed,
      unit: 'mol/L',
    },
    {
      says: 'base for each acid group: base needed / (acid × its groups)',
      shows: `${show(needed)} / (${show(acid.concentration)} × ${acid.pKas.length})`,
      result: groups > 0 ? Math.max(0, needed) / groups : 0,
      unit: '',
    },
  ];
  return worked(steps, WATER_SOURCES, [DILUTE]);
}

const DILUTE =
  'Holds in dilute water at 25 °C, without activities. Fatty acids at an interface and polyacids such as carbomer titrate at a higher pH than their pKa says.';

/**
 * Share of an amine that has taken up acid at a pH: 1 / (1 + 10^(pH − pKa of its conjugate acid)). The rest stays
 * free and neutralises nothing.
 *
 * @returns 0 to 1
 * @throws Problem `invalid-input`
 */
export function amineUptake(pKaConjugateAcid: number, pH: number): Worked {
  between(pKaConjugateAcid, -10, 20, 'pKa of the base');
  between(pH, 0, 14, 'pH to reach');
  const step = {
    says: 'share of the amine that takes up acid at this pH: 1 / (1 + 10^(pH − pKa of its conjugate acid))',
    shows: `1 / (1 + 10^(${show(pH)} − ${show(pKaConjugateAcid)}))`,
    result: 1 / (1 + 10 ** (pH - pKaConjugateAcid)),
    unit: '',
  };
  const idle =
    step.result < 0.5
      ? ['At this pH more than half of the amine neutralises nothing: a stronger base serves better.']
      : [];
  return worked([step], WATER_SOURCES, idle);
}
