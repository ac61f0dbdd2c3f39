import { molarMassOfFormula } from '../structure/formula-mass';
import { IUPAC_WEIGHTS } from '../structure/atomic-weights';
import { nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import type { Substance } from './substance';
import type { SubstanceIndex } from './substance-index';

/**
 * What a share of one substance is as another, such as a salt as its acid: share × count × M(reference) / M(substance).
 *
 * @param percent share of the product, %
 * @param perMole how many of the reference one molecule holds
 * @returns % of the product, as the reference
 * @throws Problem `invalid-input` for a formula that cannot be read or a count that is not above zero
 * Source: conversion by molar mass; IUPAC abridged standard atomic weights.
 */
export function expressedAs(
  percent: number,
  formula: string,
  referenceFormula: string,
  perMole: number,
): Worked {
  const own = molarMassOfFormula(formula).value;
  const reference = molarMassOfFormula(referenceFormula).value;
  return expressedByMass(nonNegative(percent, 'The share'), own, reference, perMole);
}

/** The same, from molar masses in g/mol. */
export function expressedByMass(percent: number, own: number, reference: number, perMole: number): Worked {
  const factor =
    (positive(perMole, 'The count per molecule') * positive(reference, 'The molar mass of the reference')) /
    positive(own, 'The molar mass of the substance');
  return worked(
    [
      {
        says: 'factor: count per molecule × molar mass of what it is counted as / molar mass of the substance',
        shows: `${show(perMole)} × ${show(reference)} / ${show(own)}`,
        result: factor,
        unit: '',
      },
      {
        says: 'share as it is counted',
        shows: `${show(percent)} × ${show(factor)}`,
        result: percent * factor,
        unit: '%',
      },
    ],
    [IUPAC_WEIGHTS],
  );
}

const MASSES = new Map<string, number | null>();

/** The molar mass of a written formula; null for one that cannot be read. Reckoned once. */
function massOf(formula: string): number | null {
  const known = MASSES.get(formula);
  if (known !== undefined) return known;
  const mass = readMass(formula);
  MASSES.set(formula, mass);
  return mass;
}

function readMass(formula: string): number | null {
  try {
    return molarMassOfFormula(formula).value;
  } catch {
    // What was kept before formulas were checked, or by another tool; its own page says what is wrong with it.
    return null;
  }
}

/** Molar mass of a substance in g/mol: of its formula, else as recorded; null where neither is known. */
export function molarMassOf(one: Pick<Substance, 'formula' | 'molarMass'>): number | null {
  if (one.formula.trim() === '') return one.molarMass;
  return massOf(one.formula) ?? one.molarMass;
}

/** By what a share of a substance is multiplied to be counted as another. */
export interface Factor {
  value: number;
  /** The numbers put in; empty where the substance counts as it is. */
  shows: string;
  /** Why it is not known, and the substance counts as it is; null when all is known. */
  unknown: string | null;
}

const AS_IT_IS: Factor = { value: 1, shows: '', unknown: null };

/** The factor by which a substance is counted as `reference`; null means as it is. */
export function factorOf(one: Substance, reference: Substance | null, index: SubstanceIndex): Factor {
  if (!reference || reference.id === one.id) return AS_IT_IS;
  const row = one.equivalents.find(({ countedAs }) => index.find(countedAs)?.id === reference.id);
  if (!row)
    return {
      ...AS_IT_IS,
      unknown: `how much ${reference.name} one molecule of ${one.name} holds is not recorded, so it counts as it is`,
    };
  const own = molarMassOf(one);
  const other = molarMassOf(reference);
  if (own === null || other === null)
    return {
      ...AS_IT_IS,
      unknown: `the molar mass of ${own === null ? one.name : reference.name} is not recorded, so ${one.name} counts as it is`,
    };
  return {
    value: (row.perMole * other) / own,
    shows: `${row.perMole === 1 ? '' : `${show(row.perMole)} × `}${show(other)} / ${show(own)}`,
    unknown: null,
  };
}
