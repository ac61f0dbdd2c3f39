import { pairsOff } from './perfect-matching';
import { unreadable } from './smiles-fault';
import type { WrittenAtom, WrittenBond, WrittenGraph } from './smiles-graph';

/**
 * Refuses aromatic atoms that make no aromatic system: outside a ring, or in rings for which no alternation of single
 * and double bonds exists. The structure library reads both as some other substance.
 *
 * @throws Problem `invalid-input`
 */
export function checkAromatic(graph: WrittenGraph, text: string): void {
  const { atoms, bonds } = graph;
  const isAromatic = (index: number): boolean => atoms[index]?.aromatic ?? false;
  const within = bonds.filter(({ from, to }) => isAromatic(from) && isAromatic(to));
  if (bonds.some((bond) => bond.symbol === ':' && !within.includes(bond)))
    throw unreadable(
      text,
      'an aromatic bond (:) joins atoms that are not aromatic',
      'Write aromatic atoms in small letters, or the bond as - or =.',
    );
  const inRing = within.filter((bond) => closesRing(bond, within));
  const ringAtoms = new Set(inRing.flatMap(({ from, to }) => [from, to]));
  const outside = atoms.find((atom, index) => atom.aromatic && !ringAtoms.has(index));
  if (outside)
    throw unreadable(
      text,
      `“${outside.symbol}” is aromatic, but is in no aromatic ring`,
      'Write atoms outside aromatic rings in capitals: CCO is ethanol, cco is nothing.',
    );
  if (!alternates(graph, inRing))
    throw unreadable(
      text,
      'no alternation of single and double bonds fits its aromatic rings',
      'Check the atoms of each ring; a nitrogen that bears hydrogen is written [nH], as in c1cc[nH]c1.',
    );
}

/** Whether the ends of a bond also meet by another way. */
function closesRing(bond: WrittenBond, bonds: readonly WrittenBond[]): boolean {
  const seen = new Set([bond.from]);
  const found = [bond.from];
  for (const at of found)
    for (const other of bonds) {
      if (other === bond || (other.from !== at && other.to !== at)) continue;
      const next = other.from === at ? other.to : other.from;
      if (seen.has(next)) continue;
      seen.add(next);
      found.push(next);
    }
  return seen.has(bond.to);
}

/** Each atom that takes part with one electron must share a double bond with another such atom. */
function alternates({ atoms, bonds }: WrittenGraph, inRing: readonly WrittenBond[]): boolean {
  const givers = atoms.flatMap((atom, index) => {
    const own = bonds.filter(({ from, to }) => from === index || to === index);
    return atom.aromatic && givesOne(atom, own) ? [index] : [];
  });
  const place = new Map(givers.map((index, at) => [index, at]));
  const neighbours = givers.map((): number[] => []);
  for (const { from, to, symbol } of inRing) {
    const [one, two] = [place.get(from), place.get(to)];
    if (one === undefined || two === undefined || symbol === '-') continue;
    neighbours[one]?.push(two);
    neighbours[two]?.push(one);
  }
  return pairsOff(neighbours);
}

/** Whether an aromatic atom needs a double bond within its rings, besides the bonds written at it. */
function givesOne({ symbol, charge, hydrogens }: WrittenAtom, own: readonly WrittenBond[]): boolean {
  const joined = own.length + hydrogens;
  const double = own.some((bond) => bond.symbol === '=' || bond.symbol === '#');
  switch (symbol) {
    case 'c':
    case 'si':
      return charge === 0 && joined <= 3 && !double;
    case 'n':
    case 'p':
    case 'as':
      // Three bonds fill it, unless it is a cation, or an oxide written as n(=O).
      if (charge > 0) return !double;
      return charge === 0 && (joined === 2 ? !double : double);
    case 'b':
      return charge === 0 && joined === 2 && !double;
    default:
      // Oxygen, sulfur and their like lend a pair; as two-bonded cations they give one electron.
      return charge > 0 && joined === 2 && !double;
  }
}
