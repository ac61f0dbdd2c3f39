import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { ATOMIC_WEIGHTS, IUPAC_WEIGHTS } from './atomic-weights';
import { countAtoms } from './chemical-formula';
import type { AtomCounts } from './chemical-formula';
import { NUCLIDES, nuclideMass } from './nuclide-mass';
import { countSmiles } from './parse-smiles';

/**
 * Molar mass of a written formula.
 *
 * @returns g/mol
 * @throws Problem `invalid-input` when the formula cannot be read
 * Source: IUPAC abridged standard atomic weights.
 */
export function molarMassOfFormula(formula: string): Worked {
  return molarMassOfCounts(countAtoms(formula));
}

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

/** g/mol of counted atoms. */
export function massOfAtoms(counts: AtomCounts): number {
  let sum = 0;
  for (const [element, count] of counts) sum += count * weightOf(element);
  return sum;
}

function weightOf(element: string): number {
  const weight = element.startsWith('[') ? nuclideMass(element) : ATOMIC_WEIGHTS[element];
  if (weight === undefined) throw new Error(`No atomic weight for ${element}.`);
  return weight;
}

/** Molar mass of counted atoms, g/mol, with its working. */
export function molarMassOfCounts(counts: AtomCounts): Worked {
  const terms = [...counts].map(([element, count]) => `${show(count)} ${element} × ${weightOf(element)}`);
  const step = {
    says: 'molar mass: Σ atoms × standard atomic weight',
    shows: terms.join(' + '),
    result: massOfAtoms(counts),
    unit: 'g/mol',
  };
  const labelled = [...counts.keys()].some((element) => element.startsWith('['));
  return oneStep(step, [IUPAC_WEIGHTS, ...(labelled ? [NUCLIDES] : [])]);
}
