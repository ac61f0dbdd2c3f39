import { ccMix, moleFractions } from '../emulsions/cc';
import { eacnMix } from '../emulsions/eacn';
import { figureValue } from '../materials/figure';
import type { Material } from '../materials/material';
import { badInput } from '../working/inputs';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';
import { entered } from './calculated';
import type { MixLine } from './hld-request';

export type Library = ReadonlyMap<string, Material>;

/** A line with what is known of it; `value` is null where nobody has measured it. */
export interface KnownLine {
  name: string;
  parts: number;
  value: number | null;
  molarMass: number | null;
  /** Where the value comes from; null for a line without one. */
  source: Source | null;
  low: number | null;
  high: number | null;
}

/** A mean with the lines it leaves out. */
export interface Mix {
  worked: Worked;
  without: string[];
  coveredPercent: number;
}

/**
 * Reads a line's value: typed, or the library's figure. Nothing is estimated.
 *
 * @param index its place among the lines, by which one without a name is called: "oil 2"
 */
export function knownLine(line: MixLine, kind: 'eacn' | 'cc', library: Library, index = 0): KnownLine {
  const named = line.name || `${kind === 'eacn' ? 'oil' : 'surfactant'} ${index + 1}`;
  const parts = entered(line.parts, `How much there is of ${named}`, 'parts');
  if (!(parts >= 0 && Number.isFinite(parts)))
    throw badInput(`The parts of ${named} are negative or no number.`, 'Enter zero or more.', 'parts');
  if (line.materialId === null)
    return {
      name: named,
      parts,
      value: line.value,
      molarMass: line.molarMass,
      source: line.value === null ? null : { text: `${named}: entered by hand`, basis: 'user' },
      low: null,
      high: null,
    };
  const material = library.get(line.materialId);
  if (!material)
    throw badInput(
      `${line.name} is no longer in the library.`,
      'Remove the line, or choose another material.',
      'parts',
    );
  const figure = material.figures[kind];
  const value = figureValue(figure);
  return {
    name: material.tradeName,
    parts,
    value,
    molarMass: figureValue(material.figures.molarMass) ?? line.molarMass,
    source:
      figure && value !== null
        ? { text: `${material.tradeName}: ${figure.source || figure.provenance}`, basis: 'library' }
        : null,
    low: figure?.low ?? null,
    high: figure?.high ?? null,
  };
}

/**
 * EACN of the oils that have one, by mass. Oils without one are named and left out.
 *
 * @throws Problem `invalid-input` when no oil has one
 */
export function oilMix(lines: readonly KnownLine[]): Mix {
  const known = valued(lines, 'oil', 'EACN');
  const total = sumOf(known);
  const worked = eacnMix(known.map((one) => ({ fraction: one.parts / total, eacn: one.value })));
  return mixOf(withFractions(worked, massSteps(known)), lines, known);
}

/**
 * Cc of the surfactants that have one, by moles.
 *
 * @throws Problem `invalid-input` when none has one, or when several are mixed and a molar mass is not known
 */
export function surfactantMix(lines: readonly KnownLine[]): Mix {
  const known = valued(lines, 'surfactant', 'Cc');
  const [first] = known;
  if (known.length === 1 && first) return mixOf(ccMix([{ moleFraction: 1, cc: first.value }]), lines, known);
  const weighed = known.map((one) => {
    if (one.molarMass === null)
      throw badInput(
        `The molar mass of ${one.name} is not known, and Cc mixes by moles.`,
        'Enter its molar mass, in the library or on the line.',
        'molarMass',
      );
    return { name: one.name, mass: one.parts, molarMass: one.molarMass };
  });
  const fractions = moleFractions(weighed);
  const worked = ccMix(known.map((one, index) => ({ moleFraction: fractions[index] ?? 0, cc: one.value })));
  return mixOf(withFractions(worked, moleSteps(weighed)), lines, known);
}

/** The steps by which the fractions of a mix came about stand before the mean over them. */
function withFractions(worked: Worked, steps: readonly WorkingStep[]): Worked {
  return { ...worked, steps: [...steps, ...worked.steps] };
}

/** A lone part is the whole: there is nothing to work out. */
function massSteps(known: readonly Valued[]): WorkingStep[] {
  if (known.length < 2) return [];
  const total = sumOf(known);
  return [
    {
      says: 'parts by mass in all, of those with an EACN',
      shows: known.map((one) => show(one.parts)).join(' + '),
      result: total,
      unit: '',
    },
    ...known.map((one) => ({
      says: `mass fraction of ${one.name}: its parts / parts in all`,
      shows: `${show(one.parts)} / ${show(total)}`,
      result: one.parts / total,
      unit: '',
    })),
  ];
}

/** In mmol, so that what is shown keeps its figures. */
function moleSteps(weighed: readonly { name: string; mass: number; molarMass: number }[]): WorkingStep[] {
  const total = weighed.reduce((sum, one) => sum + (1000 * one.mass) / one.molarMass, 0);
  return [
    {
      says: 'amount in all, of those with a Cc: 1000 × Σ parts by mass / molar mass',
      shows: `1000 × (${weighed.map((one) => `${show(one.mass)} / ${show(one.molarMass)}`).join(' + ')})`,
      result: total,
      unit: 'mmol, with the parts in g',
    },
    ...weighed.map(({ name, mass, molarMass }) => ({
      says: `mole fraction of ${name}: 1000 × its parts / its molar mass / amount in all`,
      shows: `1000 × ${show(mass)} / ${show(molarMass)} / ${show(total)}`,
      result: (1000 * mass) / molarMass / total,
      unit: '',
    })),
  ];
}

type Valued = KnownLine & { value: number };

function valued(lines: readonly KnownLine[], what: string, figure: string): Valued[] {
  if (lines.length === 0)
    throw badInput(`There is no ${what} yet.`, `Add one, from the library or by its ${figure}.`, what, {
      missing: true,
    });
  if (!(sumOf(lines) > 0))
    throw badInput(`There are no parts of any ${what} yet.`, 'Enter how much there is of each.', 'parts');
  const known = lines.filter((one): one is Valued => one.value !== null && one.parts > 0);
  if (known.length === 0)
    throw badInput(
      `No ${what} here has ${figure === 'EACN' ? 'an EACN' : 'a Cc'}: ${lines.map((one) => one.name).join(', ')}.`,
      'HLD is computed only from known values. Enter a measured or published one, or use required HLB instead.',
      what,
    );
  return known;
}

const sumOf = (lines: readonly KnownLine[]): number => lines.reduce((sum, one) => sum + one.parts, 0);

function mixOf(worked: Worked, lines: readonly KnownLine[], known: readonly Valued[]): Mix {
  const without = lines.filter((one) => one.value === null && one.parts > 0).map((one) => one.name);
  const sources = known.flatMap((one) => (one.source ? [one.source] : []));
  const spread = known
    .filter((one) => one.low !== null && one.high !== null && one.low < one.high)
    .map((one) => `${one.name}: sources give ${show(one.low ?? 0)} to ${show(one.high ?? 0)}.`);
  return {
    worked: {
      ...worked,
      sources: [...worked.sources, ...sources],
      cautions: [...worked.cautions, ...spread],
    },
    without,
    coveredPercent: (100 * sumOf(known)) / sumOf(lines),
  };
}
