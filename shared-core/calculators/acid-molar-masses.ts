import { ATOMIC_WEIGHTS } from '../structure/atomic-weights';
import { countAtoms } from '../structure/chemical-formula';

const FORMULAS: Record<string, string> = {
  'Benzoic Acid': 'C7H6O2',
  'Sorbic Acid': 'C6H8O2',
  'Dehydroacetic Acid': 'C8H8O4',
  'Salicylic Acid': 'C7H6O3',
  'Formic Acid': 'CH2O2',
  'Propionic Acid': 'C3H6O2',
  'p-Anisic Acid': 'C8H8O3',
  'Levulinic Acid': 'C5H8O3',
  'Undecylenic Acid': 'C11H20O2',
};

function weight(element: string): number {
  const known = ATOMIC_WEIGHTS[element];
  if (known === undefined) throw new Error(`No atomic weight for ${element}.`);
  return known;
}

function massOf(formula: string): number {
  let sum = 0;
  for (const [element, count] of countAtoms(formula)) sum += count * weight(element);
  return sum;
}

/** Molar masses of the listed acids by IUPAC weights, g/mol, by INCI name. */
export const ACID_MOLAR_MASSES: Readonly<Record<string, number | undefined>> = Object.fromEntries(
  Object.entries(FORMULAS).map(([name, formula]) => [name, massOf(formula)]),
);

/** The anhydrous salt of a monobasic acid: its hydrogen replaced by the metal. g/mol. */
export function saltMolarMass(acid: number, salt: 'sodium salt' | 'potassium salt'): number {
  return acid - weight('H') + weight(salt === 'sodium salt' ? 'Na' : 'K');
}
