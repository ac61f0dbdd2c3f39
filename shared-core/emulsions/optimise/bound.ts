import type { LpModel, Row } from './lp-text';
import type { Player } from './prepare';

/**
 * What every solution that uses a player must cost at least, by Lagrangian relaxation.
 *
 * The rows of a model, save those that link x with y, pin, or count, are moved into the objective at the prices
 * `duals`; what is left falls apart into one small choice for each player, of which at most k are taken. By weak
 * duality the result bounds every solution from below at any prices of the right sign (Geoffrion 1974, from memory):
 * prices that are off make the bound loose, never wrong.
 */
export interface PlayerBounds {
  /** The bound over all solutions. */
  all: number;
  /** By the player's y: the bound over solutions that use it. */
  using: Map<string, number>;
  /** By the player's y: what it adds to the relaxed objective when used; negative ones are attractive. */
  worth: Map<string, number>;
}

/** A price of the sign that its row allows: only then is the bound valid. */
function allowed(row: Row, price: number): number {
  if (row.sense === '>=') return Math.max(price, 0);
  return row.sense === '<=' ? Math.min(price, 0) : price;
}

/** Objective coefficients after the priced rows are moved in, and the constant that they leave. */
function reducedCosts(
  model: LpModel,
  priced: readonly [Row, number][],
): { costs: Map<string, number>; constant: number } {
  const costs = new Map<string, number>();
  const add = (name: string, by: number) => costs.set(name, (costs.get(name) ?? 0) + by);
  for (const [by, name] of model.objective) add(name, by);
  let constant = 0;
  for (const [row, raw] of priced) {
    const price = allowed(row, raw);
    if (price === 0) continue;
    constant += price * row.rhs;
    for (const [by, name] of row.terms) add(name, -price * by);
  }
  return { costs, constant };
}

export interface BoundInput {
  model: LpModel;
  players: readonly Player[];
  /** Least and most level of a player when used, % of the formula. */
  limits: ReadonlyMap<string, { least: number; most: number }>;
  /** Rows with their prices; rows not listed are left out, which loosens the bound but keeps it valid. */
  priced: readonly [Row, number][];
  atMost: number;
}

/** Lower bounds on the objective for all solutions, and for those that use each player. */
export function playerBounds({ model, players, limits, priced, atMost }: BoundInput): PlayerBounds {
  const { costs, constant } = reducedCosts(model, priced);
  const worth = new Map<string, number>();
  for (const { x, y } of players) {
    const { least, most } = limits.get(y) ?? { least: 0, most: 0 };
    const rate = costs.get(x) ?? 0;
    worth.set(y, (costs.get(y) ?? 0) + Math.min(rate * least, rate * most));
  }
  let base = constant;
  const names = new Set(players.flatMap(({ x, y }) => [x, y]));
  for (const [name, cost] of costs) {
    if (!names.has(name)) base += Math.min(0, cost * (model.upperBounds.get(name) ?? 1));
  }
  const pinned = players.filter((player) => player.pinned);
  for (const { y } of pinned) base += worth.get(y) ?? 0;
  const places = Math.max(atMost - pinned.length, 0);
  const free = players.filter((player) => !player.pinned).map(({ y }) => worth.get(y) ?? 0);
  const attractive = free.filter((value) => value < 0).sort((a, b) => a - b);
  const sum = (count: number) => attractive.slice(0, count).reduce((total, value) => total + value, 0);
  const [full, oneLess] = [sum(places), sum(Math.max(places - 1, 0))];
  const lastIn = attractive[places - 1] ?? 0;
  const using = new Map<string, number>();
  for (const { y, pinned: isPinned } of players) {
    const value = worth.get(y) ?? 0;
    // Among the best already, it takes its own place; otherwise it takes that of the least of them.
    const best = isPinned || (value < 0 && value <= lastIn) ? full : oneLess + value;
    using.set(y, places === 0 && !isPinned ? Infinity : base + best);
  }
  return { all: base + full, using, worth };
}
