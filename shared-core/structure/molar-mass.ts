import { oneStep } from '../working/one-step';
import type { Worked } from '../working/working';
import { IUPAC_WEIGHTS } from './atomic-weights';
import type { AtomCounts } from './chemical-formula';
import { elementWeight, molarMassStep, sumOfWeights } from './formula-mass';
import { NUCLIDES, nuclideMass } from './nuclide-mass';
import { countSmiles } from './parse-smiles';

/**
 * Molar mass of a structure: one substance, a salt or double salt, a hydrate, labelled atoms by their nuclide.
 *
 * @returns g/mol
 * @throws Problem `invalid-input` when the SMILES does not parse, is a mixture, or is too large
 * Source: IUPAC abridged standard atomic weights; atoms found by OpenChemLib.
 */
export function molarMassOfSmiles(smiles: string): Worked {
  return molarMassOfCounts(countSmiles(smiles));
}

const isNuclide = (element: string): boolean => element.startsWith('[');
const weightOf = (element: string): number =>
  isNuclide(element) ? nuclideMass(element) : elementWeight(element);

/** g/mol of the atoms of a structure, labelled ones by their nuclide. */
export const massOfAtoms = (counts: AtomCounts): number => sumOfWeights(counts, weightOf);

/** Molar mass of the atoms of a structure, g/mol, with its working. */
export function molarMassOfCounts(counts: AtomCounts): Worked {
  const labelled = [...counts.keys()].some(isNuclide);
  return oneStep(molarMassStep(counts, weightOf), [IUPAC_WEIGHTS, ...(labelled ? [NUCLIDES] : [])]);
}
