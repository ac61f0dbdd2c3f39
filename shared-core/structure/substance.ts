import { badInput } from '../working/inputs';
import type { Atom, CounterIon } from './atom';
import { shortened } from './smiles-fault';

/** A counter-ion is smaller than this (triethanolammonium has 10); else two surfactants stand side by side. */
const LARGEST_COUNTER_ION = 12;
const ALKALI = ['Li', 'Na', 'K', 'Rb', 'Cs'];

export interface Substance {
  /** The heavy atoms of the main part. */
  atoms: Atom[];
  counterIons: CounterIon[];
  /** Molecules of crystal water. */
  waters: number;
}

/**
 * Parts a substance into its main part, counter-ions and crystal water.
 *
 * @throws Problem `invalid-input` for a mixture: neutral parts side by side, ions that do not balance, or more
 *   than two kinds of ion
 */
export function partSubstance(heavy: readonly Atom[], text: string): Substance {
  const parts = fragments(looseMetals(heavy));
  const wet = parts.length > 1 ? parts.filter(isWater) : [];
  const dry = wet.length < parts.length ? parts.filter((part) => !wet.includes(part)) : parts;
  const main = dry.reduce((best, part) => (rank(part) > rank(best) ? part : best), dry[0] ?? []);
  const others = dry.filter((part) => part !== main);
  if (wet.length === parts.length || (others.length > 0 && !isOneSalt(main, others)))
    throw badInput(
      `The SMILES “${shortened(text)}” is a mixture of ${parts.length} parts, not one substance.`,
      'Enter one substance, alone or with the small counter-ions that balance its charge.',
      'smiles',
    );
  return { atoms: main, counterIons: others.map(ionOf), waters: wet.length };
}

function isOneSalt(main: Atom[], others: Atom[][]): boolean {
  const kinds = new Set([main, ...others].map(kindKey));
  const charged = [main, ...others].every((part) => netCharge(part) !== 0);
  const net = [main, ...others].reduce((sum, part) => sum + netCharge(part), 0);
  const small = others.every((part) => part.length <= LARGEST_COUNTER_ION || kindKey(part) === kindKey(main));
  return charged && net === 0 && kinds.size <= 2 && small;
}

/** "O[Na]" is drawn as a bond and meant as a pair of ions. */
function looseMetals(heavy: readonly Atom[]): Atom[] {
  const metals = new Set(heavy.filter((atom) => ALKALI.includes(atom.element)).map((atom) => atom.index));
  return heavy.map((atom) => {
    const lost = atom.bonds.filter((bond) => metals.has(bond.to) || metals.has(atom.index)).length;
    if (lost === 0) return atom;
    const isMetal = metals.has(atom.index);
    const bonds = isMetal ? [] : atom.bonds.filter((bond) => !metals.has(bond.to));
    return { ...atom, bonds, charge: atom.charge + (isMetal ? lost : -lost) };
  });
}

function fragments(atoms: readonly Atom[]): Atom[][] {
  const byIndex = new Map(atoms.map((atom) => [atom.index, atom]));
  const seen = new Set<number>();
  const parts: Atom[][] = [];
  for (const start of atoms) {
    if (seen.has(start.index)) continue;
    seen.add(start.index);
    const part: Atom[] = [start];
    for (const atom of part)
      for (const { to } of atom.bonds) {
        const next = byIndex.get(to);
        if (!next || seen.has(to)) continue;
        seen.add(to);
        part.push(next);
      }
    parts.push(part);
  }
  return parts;
}

/** Carbon counts before size, so that an organic ion stands before its counter-ion. */
function rank(part: readonly Atom[]): number {
  return part.length + 1000 * part.filter((atom) => atom.element === 'C').length;
}

function isWater(part: readonly Atom[]): boolean {
  const [only] = part;
  return part.length === 1 && only?.element === 'O' && only.charge === 0 && only.hydrogens === 2;
}

function netCharge(part: readonly Atom[]): number {
  return part.reduce((sum, atom) => sum + atom.charge, 0);
}

function kindKey(part: readonly Atom[]): string {
  return part
    .map((atom) => `${atom.element}${atom.hydrogens}${atom.charge}`)
    .sort()
    .join();
}

function ionOf(part: Atom[]): CounterIon {
  const [only] = part;
  if (!only || part.length > 1) return { kind: 'organic', charge: netCharge(part) };
  return { kind: only.element === 'N' ? 'NH4' : only.element, charge: only.charge };
}
