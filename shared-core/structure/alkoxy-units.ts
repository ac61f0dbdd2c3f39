import type { Atom } from './atom';
import type { Graph } from './graph';

/** A run of carbons between two oxygens, or a nitrogen and an oxygen, that can be a unit of a polyether. */
export interface AlkoxyUnit {
  kind: 'oxyethylene' | 'oxypropylene';
  carbons: number[];
  /** The oxygens at its ends; one, where it hangs on nitrogen. */
  oxygens: number[];
  /** The ether oxygen counted with it; null when its oxygens belong to other groups. */
  etherOxygen: number | null;
}

/**
 * Finds -CH2CH2- runs between an oxygen and an oxygen or nitrogen, and propylene runs between two oxygens, and pairs each with an ether oxygen of its own.
 *
 * @param etherOxygens oxygens between two carbons that no head claims
 */
export function findAlkoxyUnits(graph: Graph, etherOxygens: ReadonlySet<number>): AlkoxyUnit[] {
  const units = [...ethylenes(graph), ...propylenes(graph)];
  pairOff(units, etherOxygens);
  return units;
}

function ethylenes(graph: Graph): AlkoxyUnit[] {
  const units: AlkoxyUnit[] = [];
  for (const first of graph.atoms) {
    if (!isChainCh2(graph, first)) continue;
    const [second] = graph.bonded(first, 'C', 1);
    if (!second) continue;
    const twice = second.index < first.index && isChainCh2(graph, second);
    if (!twice && (isChainCh2(graph, second) || isOnNitrogen(graph, second)))
      units.push(unit(graph, 'oxyethylene', [first, second]));
  }
  return units;
}

/** O-CH(CH3)-CH2-O and O-CH2CH2CH2-O. */
function propylenes(graph: Graph): AlkoxyUnit[] {
  const units: AlkoxyUnit[] = [];
  for (const middle of graph.atoms) {
    if (middle.element !== 'C' || middle.inRing) continue;
    const carbons = graph.bonded(middle, 'C', 1);
    const ends = carbons.filter((carbon) => isChainCh2(graph, carbon));
    const methyl = carbons.filter((carbon) => carbon.hydrogens === 3);
    const branched = middle.hydrogens === 1 && graph.bonded(middle, 'O', 1).length === 1;
    if (branched && ends.length === 1 && methyl.length === 1 && middle.bonds.length === 3)
      units.push(unit(graph, 'oxypropylene', [middle, ...ends, ...methyl]));
    else if (middle.hydrogens === 2 && ends.length === 2)
      units.push(unit(graph, 'oxypropylene', [middle, ...ends]));
  }
  return units;
}

/** The CH2 by which the first unit of an ethoxylated amine or amide hangs on its nitrogen. */
function isOnNitrogen(graph: Graph, atom: Atom): boolean {
  return (
    atom.element === 'C' &&
    !atom.inRing &&
    atom.hydrogens === 2 &&
    atom.bonds.length === 2 &&
    graph.bonded(atom, 'N', 1).length === 1
  );
}

/** A CH2 in a chain with an oxygen on one side and a carbon on the other. */
function isChainCh2(graph: Graph, atom: Atom): boolean {
  return (
    atom.element === 'C' &&
    !atom.inRing &&
    atom.hydrogens === 2 &&
    graph.bonded(atom, 'O', 1).length === 1 &&
    graph.bonded(atom, 'C', 1).length === 1
  );
}

function unit(graph: Graph, kind: AlkoxyUnit['kind'], carbons: Atom[]): AlkoxyUnit {
  const oxygens = carbons.flatMap((carbon) => graph.bonded(carbon, 'O').map((oxygen) => oxygen.index));
  return { kind, carbons: carbons.map((carbon) => carbon.index), oxygens, etherOxygen: null };
}

/** A largest pairing of units with ether oxygens, by augmenting paths (Kuhn's algorithm). */
function pairOff(units: AlkoxyUnit[], etherOxygens: ReadonlySet<number>): void {
  const holder = new Map<number, AlkoxyUnit>();
  const seat = (one: AlkoxyUnit, tried: Set<number>): boolean => {
    for (const oxygen of one.oxygens) {
      if (!etherOxygens.has(oxygen) || tried.has(oxygen)) continue;
      tried.add(oxygen);
      const held = holder.get(oxygen);
      if (held && !seat(held, tried)) continue;
      holder.set(oxygen, one);
      one.etherOxygen = oxygen;
      return true;
    }
    return false;
  };
  for (const one of units) seat(one, new Set());
}
