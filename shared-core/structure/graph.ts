import type { Atom } from './atom';

/** The heavy-atom graph of one molecule or ion, with the few questions that finding groups asks of it. */
export class Graph {
  private readonly byIndex: ReadonlyMap<number, Atom>;

  constructor(
    readonly atoms: readonly Atom[],
    readonly rings: readonly (readonly number[])[],
  ) {
    this.byIndex = new Map(atoms.map((atom) => [atom.index, atom]));
  }

  atom(index: number): Atom | undefined {
    return this.byIndex.get(index);
  }

  neighbours(atom: Atom): Atom[] {
    return atom.bonds.map((bond) => this.byIndex.get(bond.to)).filter((next) => next !== undefined);
  }

  /** Neighbours of one element, by the order of the bond when given. */
  bonded(atom: Atom, element: string, order?: number): Atom[] {
    return atom.bonds
      .filter((bond) => order === undefined || bond.order === order)
      .map((bond) => this.byIndex.get(bond.to))
      .filter((next) => next !== undefined)
      .filter((next) => next.element === element);
  }

  /** Atoms reached from `start` without passing through an atom that `stops` holds. */
  reach(start: Atom, stops: (atom: Atom) => boolean): Atom[] {
    const seen = new Set([start.index]);
    const found = [start];
    for (const atom of found)
      for (const next of this.neighbours(atom)) {
        if (seen.has(next.index) || stops(next)) continue;
        seen.add(next.index);
        found.push(next);
      }
    return found;
  }
}
