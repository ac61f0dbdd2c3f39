import type { Atom } from './atom';
import type { Graph } from './graph';

export type HeadKind =
  | 'sulfate'
  | 'ether-sulfate'
  | 'sulfonate'
  | 'phosphate'
  | 'carboxylate'
  | 'carboxylic-acid'
  | 'ester'
  | 'tertiary-amine'
  | 'quaternary-ammonium'
  | 'other';

/** A polar group with the atoms it claims. */
export interface Head {
  kind: HeadKind;
  atoms: number[];
  /** For an ester: its carbonyl carbon and the oxygen that joins the alcohol. */
  carbonyl?: number;
  alcoholOxygen?: number;
  /** What it is, in words, for a head that no table of group numbers knows. */
  says: string;
}

/** Finds the heads around sulfur, phosphorus, carbonyl carbon, nitrogen and foreign elements. */
export function findHeads(graph: Graph): Head[] {
  const heads: Head[] = [];
  for (const atom of graph.atoms) {
    const head = headAt(graph, atom);
    if (head) heads.push(head);
  }
  return heads;
}

function headAt(graph: Graph, atom: Atom): Head | null {
  switch (atom.element) {
    case 'S':
      return sulfurHead(graph, atom);
    case 'P':
      return { kind: 'phosphate', atoms: withOxygens(graph, atom), says: 'a phosphorus head' };
    case 'C':
      return carbonylHead(graph, atom);
    case 'N':
      return nitrogenHead(graph, atom);
    case 'O':
    case 'F':
      return null;
    default:
      return other([atom.index], `${atom.element} in the molecule`);
  }
}

function sulfurHead(graph: Graph, sulfur: Atom): Head {
  const oxygens = graph.bonded(sulfur, 'O');
  const atoms = withOxygens(graph, sulfur);
  const bridges = oxygens.filter((oxygen) => graph.bonded(oxygen, 'C').length === 1);
  const salt = oxygens.some((oxygen) => oxygen.charge === -1);
  if (oxygens.length === 4 && bridges.length === 1 && salt) {
    const carbon = graph.bonded(bridges[0] as Atom, 'C')[0];
    const ethoxy = carbon && graph.bonded(carbon, 'C').some((next) => graph.bonded(next, 'O').length > 0);
    return { kind: ethoxy ? 'ether-sulfate' : 'sulfate', atoms, says: 'a sulfate head' };
  }
  if (oxygens.length === 3 && graph.bonded(sulfur, 'C').length === 1 && bridges.length === 0 && salt)
    return { kind: 'sulfonate', atoms, says: 'a sulfonate head' };
  return other(atoms, salt ? 'an unusual sulfur head' : 'a sulfur group that is not a salt');
}

function carbonylHead(graph: Graph, carbon: Atom): Head | null {
  const doubled = graph.bonded(carbon, 'O', 2);
  const [carbonylOxygen] = doubled;
  if (!carbonylOxygen) return null;
  const singles = graph.bonded(carbon, 'O', 1);
  const [single] = singles;
  const claimed = [carbon.index, carbonylOxygen.index];
  if (doubled.length > 1 || singles.length > 1) return other(claimed, 'a carbonate or other carbonyl');
  if (graph.bonded(carbon, 'N').length > 0) return other(claimed, 'an amide');
  if (!single) return other(claimed, 'an aldehyde or ketone');
  const atoms = [...claimed, single.index];
  if (single.charge === -1) return { kind: 'carboxylate', atoms, says: 'a carboxylate head' };
  if (single.hydrogens > 0) return { kind: 'carboxylic-acid', atoms, says: 'a carboxylic acid' };
  const beyond = graph.neighbours(single).find((next) => next.index !== carbon.index);
  if (beyond?.element !== 'C' || graph.bonded(beyond, 'O', 2).length > 0)
    return other(atoms, 'an anhydride or mixed ester');
  return { kind: 'ester', atoms, carbonyl: carbon.index, alcoholOxygen: single.index, says: 'an ester' };
}

function nitrogenHead(graph: Graph, nitrogen: Atom): Head {
  const carbons = graph.bonded(nitrogen, 'C', 1).length;
  const atoms = [nitrogen.index];
  if (nitrogen.charge > 0) {
    const oxides = graph.bonded(nitrogen, 'O');
    if (oxides.length > 0)
      return other([...atoms, ...oxides.map((one) => one.index)], 'an amine oxide or nitro');
    if (nitrogen.hydrogens > 0) return other(atoms, 'a protonated amine');
    return { kind: 'quaternary-ammonium', atoms, says: 'a quaternary ammonium head' };
  }
  const amide = graph.bonded(nitrogen, 'C').some((carbon) => graph.bonded(carbon, 'O', 2).length > 0);
  if (carbons === 3 && nitrogen.bonds.length === 3 && !nitrogen.aromatic && !amide)
    return { kind: 'tertiary-amine', atoms, says: 'a tertiary amine' };
  return other(atoms, amide ? 'an amide' : 'a nitrogen group other than a tertiary amine');
}

function other(atoms: number[], says: string): Head {
  return { kind: 'other', atoms, says };
}

function withOxygens(graph: Graph, centre: Atom): number[] {
  return [centre.index, ...graph.bonded(centre, 'O').map((oxygen) => oxygen.index)];
}
