/**
 * Whether all vertices of a graph can be paired off along its edges, each with one neighbour.
 *
 * @param neighbours for each vertex, those it may be paired with
 * Source: Edmonds' blossom algorithm, in the form with base vertices; from memory.
 */
export function pairsOff(neighbours: readonly (readonly number[])[]): boolean {
  if (neighbours.length % 2 === 1) return false;
  const matching = new Matching(neighbours);
  return neighbours.every((_, vertex) => matching.has(vertex) || matching.augment(vertex));
}

const NONE = -1;

class Matching {
  private readonly mate: number[];
  private parent: number[] = [];
  private base: number[] = [];
  private queue: number[] = [];
  private reached = new Set<number>();

  constructor(private readonly neighbours: readonly (readonly number[])[]) {
    this.mate = neighbours.map(() => NONE);
  }

  has(vertex: number): boolean {
    return this.mate[vertex] !== NONE;
  }

  /** Pairs one more vertex by an alternating path; those that have a mate keep one. */
  augment(root: number): boolean {
    this.parent = this.neighbours.map(() => NONE);
    this.base = this.neighbours.map((_, vertex) => vertex);
    this.queue = [root];
    this.reached = new Set([root]);
    for (const from of this.queue)
      for (const to of this.neighbours[from] ?? []) {
        if (this.baseOf(from) === this.baseOf(to) || this.mateOf(from) === to) continue;
        if (to === root || (this.has(to) && this.parentOf(this.mateOf(to)) !== NONE)) this.contract(from, to);
        else if (this.parentOf(to) === NONE) {
          this.parent[to] = from;
          if (!this.has(to)) return this.flip(to);
          this.reach(this.mateOf(to));
        }
      }
    return false;
  }

  private flip(end: number): boolean {
    let vertex = end;
    while (vertex !== NONE) {
      const before = this.parentOf(vertex);
      const next = this.mateOf(before);
      this.mate[vertex] = before;
      this.mate[before] = vertex;
      vertex = next;
    }
    return true;
  }

  /** Two even vertices met: their odd cycle becomes one vertex. */
  private contract(one: number, other: number): void {
    const shared = this.sharedBase(one, other);
    const blossom = new Set<number>();
    this.mark(one, shared, other, blossom);
    this.mark(other, shared, one, blossom);
    for (const vertex of this.neighbours.keys())
      if (blossom.has(this.baseOf(vertex))) {
        this.base[vertex] = shared;
        this.reach(vertex);
      }
  }

  private mark(from: number, shared: number, child: number, blossom: Set<number>): void {
    let [vertex, below] = [from, child];
    while (this.baseOf(vertex) !== shared) {
      const mate = this.mateOf(vertex);
      blossom.add(this.baseOf(vertex));
      blossom.add(this.baseOf(mate));
      this.parent[vertex] = below;
      below = mate;
      vertex = this.parentOf(mate);
    }
  }

  private sharedBase(one: number, other: number): number {
    const above = new Set<number>();
    for (let vertex = this.baseOf(one); ; vertex = this.baseOf(this.parentOf(this.mateOf(vertex)))) {
      above.add(vertex);
      if (!this.has(vertex)) break;
    }
    let vertex = this.baseOf(other);
    while (!above.has(vertex)) vertex = this.baseOf(this.parentOf(this.mateOf(vertex)));
    return vertex;
  }

  private reach(vertex: number): void {
    if (this.reached.has(vertex)) return;
    this.reached.add(vertex);
    this.queue.push(vertex);
  }

  private baseOf(vertex: number): number {
    return this.base[vertex] ?? NONE;
  }
  private mateOf(vertex: number): number {
    return this.mate[vertex] ?? NONE;
  }
  private parentOf(vertex: number): number {
    return this.parent[vertex] ?? NONE;
  }
}
