import { Molecule } from 'openchemlib';
import { badInput } from '../working/inputs';
import { ATOMIC_WEIGHTS } from './atomic-weights';
import type { AtomCounts } from './chemical-formula';
import type { Atom, CounterIon } from './atom';
import { checkAromatic } from './aromatic-check';
import { shortened, unreadable } from './smiles-fault';
import { writtenGraph } from './smiles-graph';
import { checkSmilesText } from './smiles-text';
import { mustBeOneCompound, partSubstance } from './substance';

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
  const { text, molecule, atoms } = readAtoms(smiles);
  if (atoms.some((atom) => atom.massNumber !== 0))
    throw badInput(
      `The SMILES “${shortened(text)}” holds an isotope; an emulsifier is a natural mixture of them.`,
      'Write the atom without its mass number.',
      'smiles',
    );
  const heavy = atoms.filter(isHeavy);
  if (heavy.length === 0)
    throw badInput('The structure is hydrogen alone.', 'Enter the SMILES of a substance.', 'smiles');
  return { smiles: text, rings: ringsOf(molecule), counts: countsOf(atoms), ...partSubstance(heavy, text) };
}

/**
 * The atoms of a compound by element, for its molar mass: also of double salts, hydrochlorides and labelled ones, a
 * labelled atom under its own name, as in "[2H]".
 *
 * @throws Problem `invalid-input` as `parseSmiles`, but not for isotopes or for several kinds of ion
 */
export function countSmiles(smiles: string): AtomCounts {
  const { text, atoms } = readAtoms(smiles);
  mustBeOneCompound(
    atoms.filter((atom) => isHeavy(atom) || !bearer(atom, atoms)),
    text,
  );
  return countsOf(atoms);
}

interface ReadAtoms {
  text: string;
  molecule: Molecule;
  /** Written hydrogens included. */
  atoms: Atom[];
}

function readAtoms(smiles: string): ReadAtoms {
  const text = checkSmilesText(smiles);
  checkAromatic(writtenGraph(text), text);
  const molecule = read(text);
  molecule.ensureHelperArrays(Molecule.cHelperRings);
  const atoms = atomsOf(molecule, text);
  const heavy = atoms.filter(isHeavy).length;
  if (heavy > MOST_HEAVY_ATOMS)
    throw badInput(
      `The structure has ${heavy} heavy atoms; ${MOST_HEAVY_ATOMS} are the most that is read.`,
      'For a polymer enter its figures (molar mass, % oxyethylene) instead of a structure.',
      'smiles',
    );
  return { text, molecule, atoms };
}

function isHeavy(atom: Atom): boolean {
  return atom.element !== 'H';
}

/** The heavy atom that a written hydrogen sits on, among whose hydrogens it counts. */
function bearer(hydrogen: Atom, atoms: readonly Atom[]): Atom | undefined {
  return atoms.find((atom) => isHeavy(atom) && hydrogen.bonds.some((bond) => bond.to === atom.index));
}

function read(text: string): Molecule {
  try {
    return Molecule.fromSmiles(text, { noCoordinates: true, noStereo: true });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    if (/aromatic double bonds/.test(why))
      throw unreadable(
        text,
        'its aromatic rings are of a kind that is not read',
        'Write their bonds out, as in C1=CC=CC=C1.',
      );
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
    massNumber: molecule.getAtomMass(index),
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

/** Hydrogens are counted at the atom that bears them, drawn or not; labelled ones by themselves. */
function countsOf(atoms: readonly Atom[]): AtomCounts {
  const counts: AtomCounts = new Map();
  const add = (name: string, count: number): void => {
    counts.set(name, (counts.get(name) ?? 0) + count);
  };
  for (const atom of atoms) {
    const name = atom.massNumber === 0 ? atom.element : `[${atom.massNumber}${atom.element}]`;
    const onOther = !isHeavy(atom) && bearer(atom, atoms) !== undefined;
    if (onOther && atom.massNumber !== 0) add('H', -1);
    if (!onOther || atom.massNumber !== 0) add(name, 1);
    if (isHeavy(atom)) add('H', atom.hydrogens);
  }
  return new Map([...counts].filter(([, count]) => count > 0));
}
