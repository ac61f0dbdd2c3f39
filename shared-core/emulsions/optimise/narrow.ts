import { playerBounds, type PlayerBounds } from './bound';
import { lpText, relaxed, type Row } from './lp-text';
import { buildModel, DEMANDS, isPin, usageLimits, type ModelParts } from './model';
import type { Player } from './prepare';
import type { SolveLp } from './result';

/** Up to this many players a model is solved as it stands. */
export const SMALL = 48;
/** How many players the relaxation takes in at each step. */
const STEP = 16;
const MOST_STEPS = 12;
/** An answer that is better by less than this share of itself is no better. */
const RELATIVE_ROOM = 1e-9;

/** A stand-in for the whole field: players in the order of their promise, and the bounds that rank them. */
export interface Ranking {
  bounds: PlayerBounds;
  /** The most promising first. */
  order: Player[];
}

/** Rows that the bound prices: the links, pins and count are kept exactly instead. */
function isPriced(row: Row): boolean {
  return row.demand !== 'link' && row.demand !== DEMANDS.atMost && !isPin(row.demand);
}

/** A first handful: the cheapest for the objective at every level of HLB, in every group that a rule may ask for. */
function firstOnes(parts: ModelParts): Set<Player> {
  const cost = new Map(parts.objective.map(([by, name]) => [name, by]));
  const rate = ({ x, y }: Player): number => (cost.get(x) ?? 0) + (cost.get(y) ?? 0);
  const best = new Map<string, Player>();
  for (const player of parts.players) {
    const level = player.described ? `${Math.floor((player.one.hlb ?? 0) / 2)}` : 'other';
    const g = player.groups;
    const group = [g.anionic, g.cationic, g.serves, g.waxy, g.liquid].map(Number).join('');
    const key = `${level} ${group}`;
    const known = best.get(key);
    if (!known || rate(player) < rate(known)) best.set(key, player);
  }
  return new Set([...parts.players.filter((player) => player.pinned), ...best.values()]);
}

/** The row of the whole model that a row of a smaller one stands for: same demand, same place among its kind. */
function keyed(rows: readonly Row[]): [string, Row][] {
  const seen = new Map<string, number>();
  return rows.map((row) => {
    // A row about single players is known by its leading variable, as smaller models hold fewer of them.
    const lead = row.demand === 'one sign of charge' || row.demand === 'cationic with a non-ionic';
    const name = lead ? `${row.demand} ${row.terms[0]?.[1] ?? ''}` : row.demand;
    const count = seen.get(name) ?? 0;
    seen.set(name, count + 1);
    return [`${name} #${count}`, row];
  });
}

/** The relaxation's prices for rows, by key; null when the relaxation over these players is infeasible. */
async function pricesOver(
  parts: ModelParts,
  players: readonly Player[],
  solve: SolveLp,
): Promise<Map<string, number> | null> {
  const model = relaxed(buildModel({ ...parts, players }));
  const solution = await solve(lpText(model));
  if (solution.status === 'infeasible') return null;
  return new Map(keyed(model.rows).map(([key], index) => [key, solution.duals[index] ?? 0]));
}

/**
 * Ranks a large field without ever handing it to the solver whole: the linear relaxation is solved over a few players,
 * its prices tell which of the others are attractive, those are taken in, and so on (column generation). Null when
 * the few have no solution, in which case nothing can be said.
 */
export async function rank(parts: ModelParts, solve: SolveLp): Promise<Ranking | null> {
  const whole = buildModel(parts);
  const rows = keyed(whole.rows);
  const limits = usageLimits(parts);
  const inPlay = firstOnes(parts);
  let bounds: PlayerBounds | null = null;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const prices = await pricesOver(parts, [...inPlay], solve);
    if (!prices) return null;
    const priced = rows
      .filter(([, row]) => isPriced(row))
      .map(([key, row]): [Row, number] => [row, prices.get(key) ?? 0]);
    const atMost = parts.without?.has(DEMANDS.atMost) ? parts.players.length : parts.demand.atMost;
    const found = playerBounds({ model: whole, players: parts.players, limits, priced, atMost });
    if (!bounds || found.all > bounds.all) bounds = found;
    const attractive = parts.players
      .filter((player) => !inPlay.has(player) && (found.worth.get(player.y) ?? 0) < -1e-9)
      .sort((a, b) => (found.worth.get(a.y) ?? 0) - (found.worth.get(b.y) ?? 0));
    if (attractive.length === 0) break;
    for (const player of attractive.slice(0, STEP)) inPlay.add(player);
  }
  if (!bounds) return null;
  const using = bounds.using;
  const order = [...parts.players].sort((a, b) => (using.get(a.y) ?? 0) - (using.get(b.y) ?? 0));
  return { bounds, order };
}

/**
 * The players that could still improve on an answer of value `incumbent`: all others are proven not to, as every
 * solution that uses one of them has a bound no better. `step` is the least improvement that counts (1 for a count).
 */
export function couldImprove({ bounds, order }: Ranking, incumbent: number, step: number): Player[] {
  const room = step > 0 ? step - 1e-6 : RELATIVE_ROOM * (1 + Math.abs(incumbent));
  return order.filter((player) => (bounds.using.get(player.y) ?? -Infinity) < incumbent - room);
}
