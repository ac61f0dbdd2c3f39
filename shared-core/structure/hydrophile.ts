import { ATOMIC_WEIGHTS } from './atomic-weights';
import type { AlkoxyUnit } from './alkoxy-units';
import type { Atom } from './atom';
import type { FoundGroups } from './find-groups';
import type { Graph } from './graph';
import { massOfAtoms } from './molar-mass';

/** The water-loving part of a non-ionic, as Griffin weighs it. Masses in g/mol. */
export interface Hydrophile {
  oxyethyleneUnits: number;
  oxyethyleneMass: number;
  /** Polyhydric alcohol (glycerol, sorbitan, a sugar, a glycol), as the free alcohol. */
  polyolMass: number;
  /** The fatty acids of its esters, as free acids, or why they do not make a polyol ester of fatty acids. */
  acids: { count: number; mass: number } | { notFatty: string };
}

const OXYETHYLENE = 2 * weight('C') + 4 * weight('H') + weight('O');

/** Weighs oxyethylene and polyol in a molecule whose groups are known. */
export function weighHydrophile(graph: Graph, found: FoundGroups): Hydrophile {
  const units = found.units.filter((unit) => unit.kind === 'oxyethylene').length;
  const polyol = polyolCarbons(graph, found);
  return {
    oxyethyleneUnits: units,
    oxyethyleneMass: units * OXYETHYLENE,
    polyolMass: massOfPolyol(graph, polyol),
    acids: esterAcids(graph, found, polyol),
  };
}

/** Carbons of runs in which at least two, and at least every other, carbon bears an oxygen. */
function polyolCarbons(graph: Graph, found: FoundGroups): Set<number> {
  const inUnits = found.units.filter(
    (unit) => unit.kind === 'oxyethylene' || unit.etherOxygen !== null || inChain(unit, found),
  );
  const taken = new Set([
    ...inUnits.flatMap((unit) => unit.carbons),
    ...found.heads.flatMap((head) => head.atoms),
  ]);
  const free = (atom: Atom): boolean => atom.element === 'C' && !atom.aromatic && !taken.has(atom.index);
  const polyol = new Set<number>();
  const seen = new Set<number>();
  for (const start of graph.atoms) {
    if (!free(start) || seen.has(start.index)) continue;
    const run = graph.reach(start, (atom) => !free(atom));
    for (const atom of run) seen.add(atom.index);
    const bearing = run.filter((atom) => graph.bonded(atom, 'O', 1).length > 0).length;
    if (bearing >= 2 && bearing * 2 >= run.length) for (const atom of run) polyol.add(atom.index);
  }
  return polyol;
}

/**
 * Oxypropylene beside another alkoxy unit is a link of a polyether, which Griffin counts to neither part; the last of
 * a chain has no ether oxygen left to itself. One alone is propylene glycol, a polyol.
 */
function inChain(unit: AlkoxyUnit, { units }: FoundGroups): boolean {
  return units.some((other) => other !== unit && other.oxygens.some((one) => unit.oxygens.includes(one)));
}

/** Each oxygen on it counts as hydroxyl, but for those that join two of its own carbons. */
function massOfPolyol(graph: Graph, polyol: ReadonlySet<number>): number {
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

function esterAcids(graph: Graph, found: FoundGroups, polyol: ReadonlySet<number>): Hydrophile['acids'] {
  const esters = found.heads.filter((head) => head.kind === 'ester');
  const alcoholOxygens = new Set(esters.map((head) => head.alcoholOxygen));
  let mass = 0;
  for (const { carbonyl, alcoholOxygen } of esters) {
    const start = carbonyl === undefined ? undefined : graph.atom(carbonyl);
    if (!start) continue;
    const acid = graph.reach(start, (atom) => atom.index === alcoholOxygen);
    if (acid.some((atom) => polyol.has(atom.index) || alcoholOxygens.has(atom.index)))
      return { notFatty: 'is part of the hydrophile, or is esterified itself' };
    const notFatty = whyNotFatty(acid, found);
    if (notFatty) return { notFatty };
    mass += massOf(acid) + weight('O') + weight('H');
  }
  return { count: esters.length, mass };
}

/** Fatty acids are aliphatic with one carboxyl group, from butyric acid on (IUPAC Gold Book, from memory). */
const FEWEST_CARBONS = 4;

/** What an acid has that no fatty acid has; null for a fatty acid, hydroxylated ones included. */
function whyNotFatty(acid: readonly Atom[], { heads }: FoundGroups): string | null {
  const carbons = acid.filter((atom) => atom.element === 'C').length;
  const own = new Set(acid.map((atom) => atom.index));
  const carboxyls = heads.filter(
    ({ kind, atoms }) =>
      ['carboxylic-acid', 'carboxylate', 'ester'].includes(kind) && atoms.some((index) => own.has(index)),
  ).length;
  if (carboxyls > 1) return `has ${carboxyls} carboxyl groups`;
  if (carbons < FEWEST_CARBONS) return `has ${carbons} carbons only`;
  if (acid.some((atom) => atom.inRing)) return 'holds a ring';
  const foreign = acid.find(({ element }) => element !== 'C' && element !== 'O');
  return foreign ? `holds ${foreign.element}` : null;
}

function massOf(atoms: readonly Atom[]): number {
  const counts = new Map<string, number>();
  for (const atom of atoms) {
    counts.set(atom.element, (counts.get(atom.element) ?? 0) + 1);
    counts.set('H', (counts.get('H') ?? 0) + atom.hydrogens);
  }
  return massOfAtoms(counts);
}

function weight(element: 'C' | 'H' | 'O'): number {
  return ATOMIC_WEIGHTS[element] ?? Number.NaN;
}
