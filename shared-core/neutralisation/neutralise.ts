import { badInput, between, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';

/** mg of KOH per mole, as the acid value is defined. */
const KOH_MG_PER_MOL = 56_106;

const ACID_VALUE: Source = { text: 'definition of the acid value (USP <401>)', basis: 'memory' };

/** How the acid is known: by its certificate's acid value, or by molar mass and acid groups. */
export type AcidStrength = { acidValue: number } | { molarMass: number; equivalents: number };

export interface BaseSolution {
  /** g/mol of the base. */
  molarMass: number;
  /** Equivalents of base per molecule. */
  equivalents: number;
  /** Mass % of base in what is weighed: 10 for a 10 % solution, 100 for the pure base. */
  concentrationPercent: number;
  /** How the substance is handled, said beside the result. */
  handling: readonly string[];
}

export interface Neutralisation {
  /** Mass of the base solution to weigh, in the unit of the acid's mass; carries the working. */
  worked: Worked;
  solutionMass: number;
  pureBaseMass: number;
  /** Solution as mass % of the formula; null when no formula mass was given. */
  percentOfFormula: number | null;
}

export interface NeutralisationWish {
  /** Any unit; the answer comes in the same. */
  acidMass: number;
  acid: AcidStrength;
  base: BaseSolution;
  /** Share of the acid groups to neutralise, 0 to 1; for `baseToWeigh`, base for each acid group. */
  fraction: number;
  /** Share of the base that takes up acid, above 0 to 1; less than 1 for an amine near its pKa. 1 when left out. */
  uptake?: number;
  /** Mass of the whole formula, in the unit of the acid's mass (100 when that is in %). */
  formulaMass?: number;
}

/**
 * Base needed to neutralise a fraction of an acid: m·AV / 56106 · M(base) / n(base) · fraction / uptake / concentration.
 *
 * @throws Problem `invalid-input` for a missing or impossible number
 * Source: definition of the acid value.
 */
export function neutralise(wish: NeutralisationWish): Neutralisation {
  between(wish.fraction, 0, 1, 'Share to neutralise');
  return baseToWeigh(wish);
}

/**
 * The same for any amount of base for each acid group: more than 1 where a pH asks for free alkali.
 *
 * @throws Problem `invalid-input`
 */
export function baseToWeigh(wish: NeutralisationWish): Neutralisation {
  nonNegative(wish.acidMass, 'Mass of the acid');
  nonNegative(wish.fraction, 'Base for each acid group');
  positive(wish.base.molarMass, 'Molar mass of the base');
  positive(wish.base.equivalents, 'Equivalents of the base');
  positive(wish.base.concentrationPercent, 'Strength of the base');
  between(wish.base.concentrationPercent, 0, 100, 'Strength of the base', '%');
  const takesUp = 'Share of the base that takes up acid';
  const uptake = between(positive(wish.uptake ?? 1, takesUp), 0, 1, takesUp);
  const groups = acidGroups(wish.acidMass, wish.acid);
  const pureBaseMass = (groups.result * wish.fraction * wish.base.molarMass) / wish.base.equivalents / uptake;
  const partly = uptake === 1 ? { says: '', shows: '' } : { says: ' / uptake', shows: ` / ${show(uptake)}` };
  const solutionMass = (100 * pureBaseMass) / wish.base.concentrationPercent;
  const steps: WorkingStep[] = [
    groups,
    {
      says:
        'pure base: acid groups × base for each of them × molar mass of the base / its equivalents' +
        partly.says,
      shows: `${show(groups.result)} × ${show(wish.fraction)} × ${show(wish.base.molarMass)} / ${show(wish.base.equivalents)}${partly.shows}`,
      result: pureBaseMass,
      unit: '',
    },
    {
      says: 'base solution to weigh: pure base / concentration',
      shows: `${show(pureBaseMass)} / (${show(wish.base.concentrationPercent)} / 100)`,
      result: solutionMass,
      unit: '',
    },
  ];
  const formulaMass = wish.formulaMass === undefined ? null : positive(wish.formulaMass, 'Formula mass');
  return {
    worked: worked(steps, [ACID_VALUE], cautionsOf(wish, solutionMass)),
    solutionMass,
    pureBaseMass,
    percentOfFormula: formulaMass === null ? null : (100 * solutionMass) / formulaMass,
  };
}

/** Acid groups in a mass of acid, mol where the mass is in g. @throws Problem `invalid-input` */
export function acidGroups(acidMass: number, acid: AcidStrength): WorkingStep {
  if ('acidValue' in acid) {
    const value = between(acid.acidValue, 0, 2000, 'Acid value', 'mg KOH/g');
    return {
      says: 'acid groups: mass × acid value / 56106 mg KOH per mole',
      shows: `${show(acidMass)} × ${show(value)} / ${KOH_MG_PER_MOL}`,
      result: (acidMass * value) / KOH_MG_PER_MOL,
      unit: 'mol, with the mass in g',
    };
  }
  const molarMass = positive(acid.molarMass, 'Molar mass of the acid');
  const equivalents = positive(acid.equivalents, 'Acid groups per molecule');
  return {
    says: 'acid groups: mass × groups per molecule / molar mass',
    shows: `${show(acidMass)} × ${show(equivalents)} / ${show(molarMass)}`,
    result: (acidMass * equivalents) / molarMass,
    unit: 'mol, with the mass in g',
  };
}

function cautionsOf({ base, acidMass, formulaMass }: NeutralisationWish, solutionMass: number): string[] {
  const overfull = formulaMass !== undefined && acidMass + solutionMass > formulaMass;
  return [
    ...base.handling,
    ...(overfull
      ? ['Acid and base together come to more than the whole formula: take a stronger base, or less acid.']
      : []),
    'Add the last tenth by pH: acid values vary by lot, and other acids and bases in the formula take part.',
  ];
}

/** The acid value that a pure acid would have, mg KOH/g: 56106 × groups / M. */
export function theoreticalAcidValue(molarMass: number, equivalents: number): Worked {
  positive(molarMass, 'Molar mass of the acid');
  positive(equivalents, 'Acid groups per molecule');
  const result = (KOH_MG_PER_MOL * equivalents) / molarMass;
  if (result > 10_000)
    throw badInput('No acid is this light.', 'Check the molar mass and its unit (g/mol).', 'molarMass');
  const step = {
    says: 'acid value of the pure acid: 56106 × groups per molecule / molar mass',
    shows: `${KOH_MG_PER_MOL} × ${show(equivalents)} / ${show(molarMass)}`,
    result,
    unit: 'mg KOH/g',
  };
  return worked(
    [step],
    [ACID_VALUE],
    ['A commercial grade is a mixture: the certificate’s acid value goes before this one.'],
  );
}
