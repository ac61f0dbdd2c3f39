import type { AlkoxyUnit } from './alkoxy-units';
import type { Atom } from './atom';
import { ATOMIC_WEIGHTS } from './atomic-weights';
import type { FoundGroups } from './find-groups';
import type { Graph } from './graph';

/**
 * How many carbons each oxygen of a polyol may carry: two where it is not esterified. An esterified alcohol is
 * polyhydric by its hydroxyls, up to decanediol; with more carbons to a hydroxyl it is a fatty chain (common
 * practice, no source).
 */
const CARBONS_PER_OXYGEN = { free: 2, esterified: 5 } as const;

/** The carbons of a polyhydric alcohol: glycerol, sorbitan, a sugar, a glycol. Oxyethylene is not among them. */
export function polyolCarbons(graph: Graph, found: FoundGroups): Set<number> {
  const taken = new Set([...unitsOfChains(found), ...found.heads.flatMap((head) => head.atoms)]);
  const esterOxygens = new Set(found.heads.flatMap((head) => head.alcoholOxygen ?? []));
  const free = (atom: Atom): boolean => atom.element === 'C' && !atom.aromatic && !taken.has(atom.index);
  const polyol = new Set<number>();
  const seen = new Set<number>();
  for (const start of graph.atoms) {
    if (!free(start) || seen.has(start.index)) continue;
    const run = graph.reach(start, (atom) => !free(atom));
    for (const atom of run) seen.add(atom.index);
    if (isPolyol(graph, run, esterOxygens)) for (const atom of run) polyol.add(atom.index);
  }
  for (const methyl of glycosideMethyls(graph, polyol)) polyol.add(methyl);
  return polyol;
}

function isPolyol(graph: Graph, run: readonly Atom[], esterOxygens: ReadonlySet<number>): boolean {
  const oxygens = run.map((atom) => graph.bonded(atom, 'O', 1));
  const bearing = oxygens.filter((own) => own.length > 0).length;
  const esterified = oxygens.flat().some((oxygen) => esterOxygens.has(oxygen.index));
  const most = esterified ? CARBONS_PER_OXYGEN.esterified : CARBONS_PER_OXYGEN.free;
  return bearing >= 2 && bearing * most >= run.length;
}

function unitsOfChains(found: FoundGroups): number[] {
  return found.units
    .filter((unit) => unit.kind === 'oxyethylene' || unit.etherOxygen !== null || inChain(unit, found))
    .flatMap((unit) => unit.carbons);
}

/**
 * Oxypropylene beside another alkoxy unit is a link of a polyether, which Griffin counts to neither part; the last of
 * a chain has no ether oxygen left to itself. One alone is propylene glycol, a polyol.
 */
function inChain(unit: AlkoxyUnit, { units }: FoundGroups): boolean {
  return units.some((other) => other !== unit && other.oxygens.some((one) => unit.oxygens.includes(one)));
}

/** Methyl glucoside is the alcohol of its esters, its methyl included: the methyls on an acetal's oxygen. */
function glycosideMethyls(graph: Graph, polyol: ReadonlySet<number>): number[] {
  return graph.atoms
    .filter((atom) => polyol.has(atom.index) && graph.bonded(atom, 'O', 1).length === 2)
    .flatMap((acetal) => graph.bonded(acetal, 'O', 1))
    .flatMap((oxygen) => graph.bonded(oxygen, 'C', 1))
    .filter((carbon) => carbon.hydrogens === 3)
    .map((carbon) => carbon.index);
}

/** g/mol as the free alcohol: each oxygen counts as hydroxyl, but for those that join two of its own carbons. */
export function massOfPolyol(graph: Graph, polyol: ReadonlySet<number>): number {
  const oxygens = new Map<number, boolean>();
  let mass = 0;
  for (const index of polyol) {
    const carbon = graph.atom(index);
    if (!carbon) continue;
    mass += weight('C') + carbon.hydrogens * weight('H');
    for (const oxygen of graph.bonded(carbon, 'O', 1)) {
      const inner = graph.neighbours(oxygen).filter((next) => polyol.has(next.index)).length === 2;
      oxygens.set(oxygen.index, inner);
    }
  }
  for (const inner of oxygens.values()) mass += weight('O') + (inner ? 0 : weight('H'));
  return mass;
}

function weight(element: 'C' | 'H' | 'O'): number {
  return ATOMIC_WEIGHTS[element] ?? Number.NaN;
}
