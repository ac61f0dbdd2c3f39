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
    throw mixture(text, parts.length);
  return { atoms: main, counterIons: others.map(ionOf), waters: wet.length };
}

/**
 * Whether the parts make one compound of fixed proportions, whose molar mass means something: a molecule, a salt or
 * double salt with one kind of cation or of anion (alum), a hydrate, or a base with its hydrogen halide.
 *
 * @throws Problem `invalid-input` for a mixture
 */
export function mustBeOneCompound(atoms: readonly Atom[], text: string): void {
  const parts = fragments(looseMetals(atoms));
  const dry = parts.filter((part) => !isWater(part));
  const wholes = dry.filter((part) => !isHydrogenHalide(part));
  const [whole] = wholes;
  const adduct = wholes.length === 1 && whole?.some((atom) => atom.element === 'N');
  const alone = parts.length === 1 || dry.length === 1;
  if (!alone && !adduct && !isAnySalt(dry)) throw mixture(text, parts.length);
}

function isAnySalt(parts: readonly Atom[][]): boolean {
  const kinds = (sign: number): number =>
    new Set(parts.filter((part) => Math.sign(netCharge(part)) === sign).map(kindKey)).size;
  const net = parts.reduce((sum, part) => sum + netCharge(part), 0);
  return parts.length > 0 && net === 0 && kinds(0) === 0 && Math.min(kinds(1), kinds(-1)) === 1;
}

const HALOGENS = ['F', 'Cl', 'Br', 'I'];

function isHydrogenHalide(part: readonly Atom[]): boolean {
  const [only] = part;
  return part.length === 1 && only?.hydrogens === 1 && only.charge === 0 && HALOGENS.includes(only.element);
}

function mixture(text: string, parts: number) {
  return badInput(
    `The SMILES “${shortened(text)}” is a mixture of ${parts} parts, not one substance.`,
    'Enter one substance, alone or with the small counter-ions that balance its charge.',
    'smiles',
  );
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
