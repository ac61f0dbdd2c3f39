import { DAVIES_REFUSED } from '../emulsions/davies-groups';
import type { DaviesGroupId } from '../emulsions/davies-groups';
import type { GroupCounts } from '../emulsions/davies';
import { findAlkoxyUnits } from './alkoxy-units';
import type { AlkoxyUnit } from './alkoxy-units';
import type { Atom, CounterIon } from './atom';
import type { Graph } from './graph';
import { findHeads } from './heads';
import type { Head } from './heads';
import { sorbitanOxygens } from './sorbitan';

/** What a molecule is made of, as Davies counts it. */
export interface FoundGroups {
  counts: GroupCounts;
  /** Parts for which Davies has no number, each with why; with any of these the count is not an HLB. */
  withoutNumber: string[];
  /** What was counted by an assumption. */
  cautions: string[];
  heads: Head[];
  units: AlkoxyUnit[];
}

/** Counts Davies' groups in a molecule or ion with its counter-ions. Every atom is counted once or named. */
export function findGroups(graph: Graph, counterIons: readonly CounterIon[]): FoundGroups {
  const tally = new Tally();
  const heads = findHeads(graph);
  const sorbitan = sorbitanOxygens(graph);
  // A betaine carries its counter-ion within itself.
  const inner = graph.atoms.filter((atom) => atom.element === 'N' && atom.charge > 0);
  const ions = [...counterIons, ...inner.map((atom) => ({ kind: 'inner', charge: atom.charge }))];
  for (const head of heads) {
    tally.claim(head.atoms);
    countHead(tally, head, ions, sorbitan);
  }
  countAromatic(tally, graph);
  countFluorinated(tally, graph);
  const ethers = new Set(graph.atoms.filter((atom) => isEther(graph, atom, tally)).map((atom) => atom.index));
  const units = findAlkoxyUnits(graph, ethers);
  for (const unit of units) countUnit(tally, unit);
  for (const atom of graph.atoms) if (!tally.has(atom.index)) countPlain(tally, graph, atom, sorbitan);
  return {
    counts: tally.counts,
    withoutNumber: [...tally.without],
    cautions: [...tally.cautions],
    heads,
    units,
  };
}

class Tally {
  readonly counts: GroupCounts = {};
  readonly without = new Set<string>();
  readonly cautions = new Set<string>();
  private readonly claimed = new Set<number>();

  add(id: DaviesGroupId, count = 1): void {
    this.counts[id] = (this.counts[id] ?? 0) + count;
  }

  claim(atoms: readonly number[]): void {
    for (const atom of atoms) this.claimed.add(atom);
  }

  has(atom: number): boolean {
    return this.claimed.has(atom);
  }
}

function countHead(
  tally: Tally,
  head: Head,
  counterIons: readonly CounterIon[],
  sorbitan: ReadonlySet<number>,
): void {
  switch (head.kind) {
    case 'sulfate':
      return countSalt(tally, 'a sulfate', { Na: 'sulfate-na' }, counterIons);
    case 'sulfonate':
      return countSalt(tally, 'a sulfonate', { Na: 'sulfonate-na' }, counterIons);
    case 'carboxylate':
      return countSalt(tally, 'a soap', { Na: 'carboxylate-na', K: 'carboxylate-k' }, counterIons);
    case 'ester':
      return tally.add(sorbitan.has(head.alcoholOxygen ?? -1) ? 'ester-sorbitan-ring' : 'ester');
    case 'carboxylic-acid':
    case 'tertiary-amine':
      return tally.add(head.kind);
    case 'quaternary-ammonium':
    case 'ether-sulfate':
    case 'phosphate':
      tally.without.add(DAVIES_REFUSED[head.kind] ?? head.says);
      return;
    case 'other':
      tally.without.add(`${head.says}: Davies gives no number for it`);
  }
}

function countSalt(
  tally: Tally,
  what: string,
  byIon: Record<string, DaviesGroupId>,
  counterIons: readonly CounterIon[],
): void {
  // A salt of two soaps and one magnesium holds the second soap beside its main part: that one balances nothing.
  const cations = counterIons.filter((ion) => ion.charge > 0);
  const kinds = [...new Set(cations.map((ion) => ion.kind))];
  const [kind = ''] = kinds;
  const id = kinds.length === 1 ? byIon[kind] : undefined;
  if (id) return tally.add(id);
  if (kinds.length === 0)
    tally.without.add(`${what} without its counter-ion: write it beside, as in [Na+].CCCC(=O)[O-]`);
  else if (kinds.includes('inner'))
    tally.without.add(`${what} balanced within the molecule (a betaine): Davies gives no number for it`);
  else if (kind === 'organic' || kind === 'NH4')
    tally.without.add(
      what === 'a soap'
        ? (DAVIES_REFUSED['amine-soap'] ?? '')
        : `${what} of an amine: Davies gives no number for it`,
    );
  else tally.without.add(`${what} of ${kinds.join(' and ')}: Davies gives no number for it`);
}

function countAromatic(tally: Tally, graph: Graph): void {
  const aromatic = graph.rings.filter((ring) => ring.every((index) => graph.atom(index)?.aromatic));
  for (const ring of aromatic) {
    const alone = aromatic.every((other) => other === ring || !other.some((index) => ring.includes(index)));
    const benzene = ring.length === 6 && ring.every((index) => graph.atom(index)?.element === 'C');
    if (alone && benzene) tally.add('benzene-ring');
    else tally.without.add('an aromatic ring other than benzene: Davies gives no number for it');
    tally.claim(ring);
  }
}

function countFluorinated(tally: Tally, graph: Graph): void {
  for (const atom of graph.atoms) {
    const fluorines = atom.element === 'C' ? graph.bonded(atom, 'F') : [];
    if (fluorines.length === 0 || tally.has(atom.index)) continue;
    if (fluorines.length >= 2) tally.add('fluorocarbon');
    else tally.without.add('a carbon with a single fluorine: Davies gives no number for it');
    tally.claim([atom.index, ...fluorines.map((fluorine) => fluorine.index)]);
  }
}

function countUnit(tally: Tally, unit: AlkoxyUnit): void {
  if (unit.etherOxygen === null || unit.carbons.some((carbon) => tally.has(carbon))) return;
  tally.add(unit.kind);
  tally.claim([...unit.carbons, unit.etherOxygen]);
}

function countPlain(tally: Tally, graph: Graph, atom: Atom, sorbitan: ReadonlySet<number>): void {
  if (atom.element === 'C') {
    tally.add('carbon');
    if (atom.hydrogens === 0)
      tally.cautions.add('A carbon without hydrogen was counted like CH2; Davies’ table names none.');
    return;
  }
  if (atom.element === 'O' && atom.charge === 0 && atom.hydrogens === 1) {
    tally.add(sorbitan.has(atom.index) ? 'hydroxyl-sorbitan-ring' : 'hydroxyl');
    cautionHydroxyl(tally, graph, atom, sorbitan);
    return;
  }
  if (isEther(graph, atom, tally)) return tally.add('ether');
  tally.without.add(`${atom.element} in an unusual place: Davies gives no number for it`);
}

function cautionHydroxyl(tally: Tally, graph: Graph, atom: Atom, sorbitan: ReadonlySet<number>): void {
  const carbon = graph.neighbours(atom)[0];
  if (carbon?.aromatic)
    tally.cautions.add('A phenol was counted as a free hydroxyl; Davies’ table has no phenol.');
  else if (carbon?.inRing && !sorbitan.has(atom.index))
    tally.cautions.add(
      'Hydroxyls on a sugar ring were counted as free; Davies has ring numbers for sorbitan only.',
    );
}

function isEther(graph: Graph, atom: Atom, tally: Tally): boolean {
  return (
    atom.element === 'O' &&
    atom.charge === 0 &&
    !atom.aromatic &&
    !tally.has(atom.index) &&
    graph.bonded(atom, 'C', 1).length === 2
  );
}
