import { Molecule } from 'openchemlib';
import { badInput } from '../working/inputs';
import type { Source } from '../working/working';

export const NUCLIDES: Source = { text: 'nuclide masses of OpenChemLib’s table', basis: 'memory' };

/**
 * Mass of one nuclide, g/mol.
 *
 * @param label as a SMILES writes it: "[2H]", "[13C]"
 * @throws Problem `invalid-input` for a nuclide that the table lacks
 */
export function nuclideMass(label: string): number {
  const mass = Molecule.fromSmiles(label).getMolecularFormula().relativeWeight;
  // No nuclide's mass is further from its mass number than its mass defect.
  if (!(Math.abs(mass - Number.parseInt(label.slice(1), 10)) < 0.5))
    throw badInput(
      `No mass is known for ${label}.`,
      'Check the mass number, or write the atom without it.',
      'smiles',
    );
  return mass;
}
