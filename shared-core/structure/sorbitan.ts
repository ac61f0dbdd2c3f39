import type { Graph } from './graph';

/**
 * The four oxygens of each sorbitan (1,4-anhydrosorbitol) in a molecule: two on the five-membered ring, two on
 * its side chain. Davies gives them numbers of their own.
 */
export function sorbitanOxygens(graph: Graph): Set<number> {
  const found = new Set<number>();
  for (const ring of graph.rings) {
    const oxygens = ofSorbitanRing(graph, ring);
    if (oxygens.length === 4) for (const oxygen of oxygens) found.add(oxygen);
  }
  return found;
}

function ofSorbitanRing(graph: Graph, ring: readonly number[]): number[] {
  const atoms = ring.map((index) => graph.atom(index)).filter((atom) => atom !== undefined);
  const carbons = atoms.filter((atom) => atom.element === 'C' && !atom.aromatic);
  if (ring.length !== 5 || carbons.length !== 4 || atoms.some((atom) => !['C', 'O'].includes(atom.element)))
    return [];
  const members = new Set(ring);
  const outside = carbons.flatMap((carbon) =>
    graph.neighbours(carbon).filter((next) => !members.has(next.index)),
  );
  const ringOxygens = outside.filter((atom) => atom.element === 'O');
  const [side, ...moreSides] = outside.filter((atom) => atom.element === 'C');
  // A side chain that closes a ring of its own makes an isosorbide, for which Davies has no numbers.
  if (ringOxygens.length !== 2 || !side || side.inRing || moreSides.length > 0) return [];
  const end = graph.bonded(side, 'C', 1).find((carbon) => !members.has(carbon.index));
  if (!end || end.hydrogens !== 2) return [];
  const sideOxygens = [...graph.bonded(side, 'O', 1), ...graph.bonded(end, 'O', 1)];
  return sideOxygens.length === 2 ? [...ringOxygens, ...sideOxygens].map((atom) => atom.index) : [];
}
