import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { ATOMIC_WEIGHTS, IUPAC_WEIGHTS } from './atomic-weights';
import { countAtoms, type AtomCounts } from './chemical-formula';

/**
 * Molar mass of a written formula. Apart from structures, whose reading takes a library of 1.4 MB.
 *
 * @returns g/mol
 * @throws Problem `invalid-input` when the formula cannot be read
 * Source: IUPAC abridged standard atomic weights.
 */
export function molarMassOfFormula(formula: string): Worked {
  const counts = countAtoms(formula);
  return oneStep(molarMassStep(counts, elementWeight), [IUPAC_WEIGHTS]);
}

/** The standard atomic weight of an element, g/mol. */
export function elementWeight(element: string): number {
  const weight = ATOMIC_WEIGHTS[element];
  if (weight === undefined) throw new Error(`No atomic weight for ${element}.`);
  return weight;
}

/** The sum of counted atoms by their weights, as a step of a working. */
export function molarMassStep(counts: AtomCounts, weightOf: (element: string) => number) {
  const terms = [...counts].map(([element, count]) => `${show(count)} ${element} × ${weightOf(element)}`);
  return {
    says: 'molar mass: Σ atoms × standard atomic weight',
    shows: terms.join(' + '),
    result: sumOfWeights(counts, weightOf),
    unit: 'g/mol',
  };
}

/** g/mol of counted atoms. */
export function sumOfWeights(counts: AtomCounts, weightOf: (element: string) => number): number {
  let sum = 0;
  for (const [element, count] of counts) sum += count * weightOf(element);
  return sum;
}
