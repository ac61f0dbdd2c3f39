import { Molecule } from 'openchemlib';
import { badInput } from '../working/inputs';
import { ATOMIC_WEIGHTS } from './atomic-weights';
import type { AtomCounts } from './chemical-formula';
import type { Atom, CounterIon } from './atom';
import { checkAromatic } from './aromatic-check';
import { shortened } from './smiles-fault';
import { writtenGraph } from './smiles-graph';
import { checkSmilesText } from './smiles-text';
import { partSubstance } from './substance';

/** Heavy atoms at most: PEG-100 stearate has 322, and beyond it a structure is a polymer, not a molecule. */
export const MOST_HEAVY_ATOMS = 400;

export interface Structure {
  smiles: string;
  /** All heavy atoms but those of counter-ions and crystal water. */
  atoms: Atom[];
  /** Atom indices of the aromatic or other small rings of `atoms`. */
  rings: number[][];
  /** Ions written beside the main part, one entry each. */
  counterIons: CounterIon[];
  waters: number;
  /** Everything, counter-ions and water included. */
  counts: AtomCounts;
}

/**
 * Reads a SMILES as one substance: a molecule, or an ion with its counter-ions, with crystal water if any.
 *
 * @throws Problem `invalid-input` when it does not parse, has wildcards or isotopes, breaks a valence, is a
 *   mixture, or has more than MOST_HEAVY_ATOMS heavy atoms
 */
export function parseSmiles(smiles: string): Structure {
  const text = checkSmilesText(smiles);
  const graph = writtenGraph(text);
  const molecule = read(text);
  molecule.ensureHelperArrays(Molecule.cHelperRings);
  const all = atomsOf(molecule, text);
  const heavy = all.filter((atom) => atom.element !== 'H');
  if (heavy.length === 0)
    throw badInput('The structure is hydrogen alone.', 'Enter the SMILES of a substance.', 'smiles');
  if (heavy.length > MOST_HEAVY_ATOMS)
    throw badInput(
      `The structure has ${heavy.length} heavy atoms; ${MOST_HEAVY_ATOMS} are the most that is read.`,
      'For a polymer enter its figures (molar mass, % oxyethylene) instead of a structure.',
      'smiles',
    );
  checkAromatic(graph, text);
  const counts = countsOf(heavy);
  return {
    smiles: text,
    rings: ringsOf(molecule),
    counts,
    ...partSubstance(heavy, text),
  };
}

function read(text: string): Molecule {
  try {
    return Molecule.fromSmiles(text, { noCoordinates: true, noStereo: true });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw badInput(
      `The SMILES “${shortened(text)}” cannot be read (${why.replace(/^.*SmilesParser: /, '')}).`,
      'Check it for a missing bracket or ring number, or draw the substance anew and copy its SMILES.',
      'smiles',
    );
  }
}

function atomsOf(molecule: Molecule, text: string): Atom[] {
  const atoms: Atom[] = [];
  for (let index = 0; index < molecule.getAllAtoms(); index += 1) {
    const element = molecule.getAtomLabel(index);
    if (!Object.hasOwn(ATOMIC_WEIGHTS, element))
      throw badInput(
        `The SMILES “${shortened(text)}” names no real element at atom ${index + 1}.`,
        'Replace wildcards by the atoms they stand for.',
        'smiles',
      );
    if (molecule.getAtomMass(index) !== 0)
      throw badInput(
        `The SMILES “${shortened(text)}” holds an isotope; only natural mixtures are computed.`,
        'Write the atom without its mass number.',
        'smiles',
      );
    if (molecule.getOccupiedValence(index) > Math.max(molecule.getMaxValence(index), 0))
      throw badInput(
        `In the SMILES “${shortened(text)}” atom ${index + 1} (${element}) has more bonds than it can hold.`,
        'Check the bonds and charges at that atom.',
        'smiles',
      );
    atoms.push(atomOf(molecule, index, element));
  }
  return atoms;
}

function atomOf(molecule: Molecule, index: number, element: string): Atom {
  const bonds = Array.from({ length: molecule.getConnAtoms(index) }, (_, neighbour) => ({
    to: molecule.getConnAtom(index, neighbour),
    order: molecule.getConnBondOrder(index, neighbour),
  }));
  return {
    index,
    element,
    charge: molecule.getAtomCharge(index),
    // The parser hydrogenates a lone aluminium atom; in brackets it bears none.
    hydrogens: element === 'Al' && bonds.length === 0 ? 0 : molecule.getAllHydrogens(index),
    aromatic: molecule.isAromaticAtom(index),
    inRing: molecule.isRingAtom(index),
    bonds,
  };
}

function ringsOf(molecule: Molecule): number[][] {
  const set = molecule.getRingSet();
  return Array.from({ length: set.getSize() }, (_, ring) => [...set.getRingAtoms(ring)]);
}

/** Hydrogens are counted at the atom that bears them, drawn or not. */
function countsOf(heavy: readonly Atom[]): AtomCounts {
  const counts: AtomCounts = new Map();
  const add = (element: string, count: number): void => {
    if (count > 0) counts.set(element, (counts.get(element) ?? 0) + count);
  };
  for (const atom of heavy) {
    add(atom.element, 1);
    add('H', atom.hydrogens);
  }
  return counts;
}
