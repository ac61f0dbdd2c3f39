import { badInput, nonNegative } from '../working/inputs';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';
import { weightedMean } from './blend-hlb';
import { hlbValue } from './hlb-scale';
import { GRIFFIN_1949, LIN_1970 } from './sources';

/** An oil of the oil phase with its required HLB for the emulsion type asked for; null where not known. */
export interface OilLine {
  name: string;
  /** Any one unit, the same for all oils. */
  mass: number;
  value: number | null;
  /** The spread of the sources, where known. */
  low: number | null;
  high: number | null;
  source: Source | null;
}

export interface RequiredHlb {
  /** The mean over the oils that have a value. */
  worked: Worked;
  /** The range that the sources' spread gives; equal ends when they agree. */
  low: number;
  high: number;
  /** Mass % of the oil phase that has a value. */
  coveredPercent: number;
  /** The oils without a value, which the mean leaves out. */
  uncovered: { name: string; mass: number }[];
}

/**
 * Required HLB of an oil phase: the mass-weighted mean over its oils, for o/w or w/o as the values given are.
 * The spread of the sources is carried through: the mean of the lower ends and of the upper ends.
 *
 * @throws Problem `invalid-input` for no oils, no oil with a value, a negative mass, no mass at all
 * Source: Griffin 1949; trials around it after Lin 1970.
 */
export function requiredHlb(oils: readonly OilLine[], emulsionType: 'o/w' | 'w/o'): RequiredHlb {
  if (oils.length === 0)
    throw badInput('There are no oils.', 'Choose the oils of the oil phase first.', 'oils');
  for (const oil of oils) nonNegative(oil.mass, `Mass of ${oil.name}`);
  const total = oils.reduce((sum, oil) => sum + oil.mass, 0);
  if (total <= 0)
    throw badInput('All oils weigh nothing.', 'Give at least one oil a mass above zero.', 'oils');
  const known = oils.map(knownOil).filter((oil) => oil !== null);
  const uncovered = oils.filter((oil) => bestValue(oil) === null && oil.mass > 0);
  const covered = known.reduce((sum, oil) => sum + oil.mass, 0);
  if (covered <= 0)
    throw badInput(
      `None of the oils has a required HLB for ${emulsionType}: ${oils.map((oil) => oil.name).join(', ')}.`,
      'Enter a required HLB at the material, or use your own value for the oil phase.',
      'oils',
    );
  const coveredPercent = (100 * covered) / total;
  const mean = (pick: (oil: KnownOil) => number, words = 'required HLB') =>
    weightedMean(
      known.map((oil) => ({ mass: oil.mass, value: pick(oil) })),
      {
        says: `${words} of the oil phase for ${emulsionType}: mass-weighted mean of the oils’ required HLBs`,
        part: 'oil',
        unit: '',
        sources: sourcesOf(known),
      },
    );
  const worked = mean((oil) => oil.value);
  const low = mean((oil) => oil.low).value;
  const high = mean((oil) => oil.high).value;
  worked.cautions = cautionsOf(known, uncovered, coveredPercent, low, high);
  return {
    worked,
    low,
    high,
    coveredPercent,
    uncovered: uncovered.map(({ name, mass }) => ({ name, mass })),
  };
}

interface KnownOil {
  name: string;
  mass: number;
  value: number;
  low: number;
  high: number;
  midpoint: boolean;
  source: Source | null;
}

function bestValue(oil: OilLine): number | null {
  if (oil.value !== null) return oil.value;
  if (oil.low !== null && oil.high !== null) return (oil.low + oil.high) / 2;
  return oil.low ?? oil.high;
}

function knownOil(oil: OilLine): KnownOil | null {
  const best = bestValue(oil);
  if (best === null) return null;
  const value = hlbValue(best, `Required HLB of ${oil.name}`);
  const low = Math.min(hlbValue(oil.low ?? value, `Lowest required HLB of ${oil.name}`), value);
  const high = Math.max(hlbValue(oil.high ?? value, `Highest required HLB of ${oil.name}`), value);
  return {
    name: oil.name,
    mass: oil.mass,
    value,
    low,
    high,
    midpoint: oil.value === null,
    source: oil.source,
  };
}

function sourcesOf(oils: readonly KnownOil[]): Source[] {
  const all = [GRIFFIN_1949, LIN_1970, ...oils.map((oil) => oil.source).filter((source) => source !== null)];
  return all.filter((source, index) => all.findIndex((other) => other.text === source.text) === index);
}

function cautionsOf(
  known: readonly KnownOil[],
  uncovered: readonly OilLine[],
  coveredPercent: number,
  low: number,
  high: number,
): string[] {
  const cautions: string[] = [];
  if (uncovered.length > 0)
    cautions.push(
      `Not counted, having no required HLB: ${uncovered.map((oil) => oil.name).join(', ')}. ` +
        `The mean covers ${show(coveredPercent)} % of the oil phase.`,
    );
  for (const oil of known)
    if (oil.midpoint)
      cautions.push(
        `${oil.name}: no single value is stated; ${show(oil.value)} from its range is an estimate.`,
      );
  if (high > low)
    cautions.push(
      `Sources disagree: with their lowest and highest figures the answer runs from ${show(low)} to ${show(high)}.`,
    );
  cautions.push(
    'Published required HLBs differ by 1 to 2 units, and where the emulsifier is dissolved shifts them: make a trial series around the result.',
  );
  return cautions;
}
