import { badInput, between, finite, positive } from '../working/inputs';
import { oneStep, worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';

const ARRHENIUS: Source = {
  text: 'Grunberg L., Nissan A.H., Nature 164, 799 (1949); without interaction, Arrhenius’ rule',
  basis: 'memory',
};
const KENDALL: Source = {
  text: 'Kendall J., Monroe K., J. Am. Chem. Soc. 39, 1787-1802 (1917)',
  basis: 'read',
};
const MAPLES: Source = {
  text: 'Maples R.E., Petroleum Refinery Process Economics, 2nd ed., PennWell, Tulsa 2000',
  basis: 'read',
};
const RULES_DIFFER =
  'Mixing rules differ from one another and from a measured blend: take their spread as the answer, and measure.';

/** A part of a mix of liquids with its viscosity. */
export interface ViscousPart {
  /** 0 to 1 of the mix; all sum to 1. */
  fraction: number;
  /** mPa·s, or mm²/s for the Refutas index; above zero. */
  viscosity: number;
}

/** How far printed, rounded fractions may miss 1. */
const SUM_TOLERANCE = 0.005;

function checked(parts: readonly ViscousPart[]): number {
  if (parts.length === 0)
    throw badInput('There is no liquid yet.', 'Enter at least one.', 'rows', { missing: true });
  for (const part of parts) {
    between(part.fraction, 0, 1, 'Fraction of a liquid');
    positive(part.viscosity, 'Viscosity of a liquid');
  }
  const sum = parts.reduce((total, part) => total + part.fraction, 0);
  if (Math.abs(sum - 1) > SUM_TOLERANCE)
    throw badInput(
      `The fractions sum to ${show(sum)}, not to 1.`,
      'Enter fractions of the whole mix (30 % is 0.3).',
    );
  return sum;
}

/**
 * Viscosity of a mix by logarithms: exp(Σ x ln η + Σ x₁x₂G over pairs).
 *
 * @param interaction G for every pair, 0 where the liquids are alike
 * @returns in the parts' unit
 * @throws Problem `invalid-input`
 */
export function logMixViscosity(parts: readonly ViscousPart[], interaction = 0): Worked {
  const sum = checked(parts);
  between(finite(interaction, 'Interaction'), -20, 20, 'Interaction');
  const share = parts.map((part) => ({ ...part, fraction: part.fraction / sum }));
  const mean = share.reduce((total, part) => total + part.fraction * Math.log(part.viscosity), 0);
  const pairs = (1 - share.reduce((total, part) => total + part.fraction ** 2, 0)) / 2;
  const terms = share.map((part) => `${show(part.fraction)} × ln ${show(part.viscosity)}`).join(' + ');
  const meanStep: WorkingStep = {
    says: 'mean of the logarithms: Σ fraction × ln viscosity',
    shows: terms,
    result: mean,
    unit: '',
  };
  const added = interaction === 0 ? '' : ` + ${show(pairs)} × ${show(interaction)}`;
  const step: WorkingStep = {
    says:
      interaction === 0
        ? 'viscosity by logarithms (Arrhenius): exp of that mean'
        : 'viscosity (Grunberg–Nissan): exp of that mean + interaction × Σ fraction₁ × fraction₂ over pairs',
    shows: `exp(${show(mean)}${added})`,
    result: Math.exp(mean + pairs * interaction),
    unit: 'mPa·s',
  };
  return worked([meanStep, step], [ARRHENIUS], [RULES_DIFFER]);
}

/**
 * Viscosity of a mix by cube roots: (Σ x η^⅓)³.
 *
 * @returns in the parts' unit
 * @throws Problem `invalid-input`
 */
export function cubeRootViscosity(parts: readonly ViscousPart[]): Worked {
  const sum = checked(parts);
  const mean = parts.reduce((total, part) => total + (part.fraction / sum) * Math.cbrt(part.viscosity), 0);
  const terms = parts.map((part) => `${show(part.fraction / sum)} × ∛${show(part.viscosity)}`).join(' + ');
  const step = {
    says: 'viscosity by cube roots (Kendall and Monroe): (Σ fraction × ∛viscosity)³',
    shows: `(${terms})³`,
    result: mean ** 3,
    unit: 'mPa·s',
  };
  return oneStep(step, [KENDALL], [RULES_DIFFER]);
}

/** ln ln (v + 0.8) needs v + 0.8 above 1. */
const LEAST_KINEMATIC = 0.2;

function index(viscosity: number): number {
  positive(viscosity, 'Kinematic viscosity');
  if (viscosity <= LEAST_KINEMATIC)
    throw badInput(
      `A kinematic viscosity of ${show(viscosity)} mm²/s has no Refutas index.`,
      'It must be above 0.2 mm²/s: check the unit (1 mPa·s over 1 g/mL is 1 mm²/s).',
      'Kinematic viscosity',
    );
  return 14.534 * Math.log(Math.log(viscosity + 0.8)) + 10.975;
}

/**
 * Refutas index of a kinematic viscosity: 14.534 ln ln(v + 0.8) + 10.975.
 *
 * @param viscosity mm²/s, above 0.2
 * @throws Problem `invalid-input`
 */
export function refutasIndex(viscosity: number): Worked {
  const step = {
    says: 'Refutas index: 14.534 × ln ln(v + 0.8) + 10.975',
    shows: `14.534 × ln ln(${show(viscosity)} + 0.8) + 10.975`,
    result: index(viscosity),
    unit: '',
  };
  return oneStep(step, [MAPLES]);
}

/**
 * Kinematic viscosity of a mix by Refutas' index, over mass fractions.
 *
 * @returns mm²/s
 * @throws Problem `invalid-input`
 */
export function refutasViscosity(parts: readonly ViscousPart[]): Worked {
  const sum = checked(parts);
  const mean = parts.reduce((total, part) => total + (part.fraction / sum) * index(part.viscosity), 0);
  const terms = parts
    .map((part) => `${show(part.fraction / sum)} × ${show(index(part.viscosity))}`)
    .join(' + ');
  return worked(
    [
      {
        says: 'index of the mix: Σ mass fraction × (14.534 × ln ln(v + 0.8) + 10.975)',
        shows: terms,
        result: mean,
        unit: '',
      },
      {
        says: 'kinematic viscosity of that index: exp(exp((index − 10.975) / 14.534)) − 0.8',
        shows: `exp(exp((${show(mean)} − 10.975) / 14.534)) − 0.8`,
        result: Math.exp(Math.exp((mean - 10.975) / 14.534)) - 0.8,
        unit: 'mm²/s',
      },
    ],
    [MAPLES],
    [RULES_DIFFER],
  );
}
