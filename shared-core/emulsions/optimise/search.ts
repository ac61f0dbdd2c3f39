import { brokenDemands, meanHlb, type Level } from './choice';
import type { Demand } from './demand';
import type { Row, Term } from './lp-text';
import type { ModelParts } from './model';
import { oneOrTwo } from './pairs';
import type { Player } from './prepare';
import type { SolveLp } from './result';
import { solveModel } from './solve-model';

/** One demand over its players, with the solver to ask. */
export interface Search {
  players: readonly Player[];
  demand: Demand;
  solve: SolveLp;
}

export type Extra = Pick<ModelParts, 'without' | 'cuts'>;
type Window = ModelParts['window'];
type Asked = Omit<ModelParts, 'players' | 'demand'>;

/** How close to zero the last step of a fractional search must come, HLB units. */
const FRACTION_EPSILON = 1e-7;
/** A fractional search takes a handful of steps; more than this is a fault. */
const MOST_STEPS = 60;
/** No distance Σ(HLB − T)x can be larger: 40 units over 100 %. */
const LARGEST_DISTANCE = 4000;

/** The HLB window of the demand; null without a target. */
export function demandedWindow({ targetHlb, tolerance }: Demand): Window {
  return targetHlb === null ? null : { low: targetHlb - tolerance, high: targetHlb + tolerance };
}

/** Solves one model over the search's players. */
export function solveFor(
  { players, demand, solve }: Search,
  asked: Asked,
  step = 0,
): Promise<Level[] | null> {
  return solveModel({ ...asked, players, demand }, solve, step);
}

const costTerms = (players: readonly Player[]): Term[] =>
  players.map(({ one, x }) => [(one.costPerKg ?? 0) / 100, x]);
const countTerms = (players: readonly Player[]): Term[] => players.map(({ y }) => [1, y]);

/** The least cost among the priced players; where they do not suffice, null. A missing price is never a zero. */
function cheapest(search: Search, asked: Omit<Asked, 'objective'>): Promise<Level[] | null> {
  const players = search.players.filter(({ one }) => one.costPerKg !== null);
  if (
    players.length === 0 ||
    search.players.some((player) => player.pinned && player.one.costPerKg === null)
  ) {
    return Promise.resolve(null);
  }
  return solveFor({ ...search, players }, { ...asked, objective: costTerms(players) });
}

/** Terms of the described players, each at a factor of its own. */
function describedTerms(players: readonly Player[], factor: (hlb: number) => number): Term[] {
  return players.filter((player) => player.described).map(({ one, x }) => [factor(one.hlb ?? 0), x]);
}

/**
 * The nearest mean HLB to a target, then the least cost where priced. Asks for the target exactly first; only where
 * that is infeasible is |Σ(HLB − T)x| / Σx minimised, by Dinkelbach's method: each step minimises |…| − λ Σx to
 * proven optimality, and the last, whose optimum is zero, proves that nothing is nearer (Dinkelbach 1967, from memory).
 */
export async function nearest(search: Search, extra: Extra, window: Window): Promise<Level[] | null> {
  const target = search.demand.targetHlb ?? 0;
  const exact = { ...extra, window: { low: target, high: target } };
  const hit = (await cheapest(search, exact)) ?? (await solveFor(search, { ...exact, objective: [] }));
  if (hit) return hit;
  const distance = (levels: Level[]): number => Math.abs((meanHlb(levels) ?? target) - target);
  let best = await solveFor(search, { ...extra, window, objective: [] });
  for (let step = 0; best && step < MOST_STEPS; step += 1) {
    const better = await nearer(search, { ...extra, window }, target, distance(best));
    if (!better || distance(better) >= distance(best) - FRACTION_EPSILON) {
      const room = distance(best) + FRACTION_EPSILON;
      const within = { ...extra, window: { low: target - room, high: target + room } };
      return (await cheapest(search, within)) ?? best;
    }
    best = better;
  }
  if (!best) return null;
  throw new Error('The search for the nearest HLB did not settle.');
}

/** One step of Dinkelbach's method from a distance `lambda`. */
function nearer(search: Search, asked: Omit<Asked, 'objective'>, target: number, lambda: number) {
  const away = describedTerms(search.players, (hlb) => hlb - target);
  const opposite = away.map(([by, x]): Term => [-by, x]);
  const extraRows: Row[] = [
    { demand: 'distance', terms: [[1, 'd'], ...opposite], sense: '>=', rhs: 0 },
    { demand: 'distance', terms: [[1, 'd'], ...away], sense: '>=', rhs: 0 },
  ];
  const objective: Term[] = [[1, 'd'], ...describedTerms(search.players, () => -lambda)];
  return solveFor(search, { ...asked, objective, extraRows, extraBounds: [['d', LARGEST_DISTANCE]] });
}

/** The highest (`sign` 1) or lowest (−1) mean HLB that the demand allows apart from its HLB window. */
export async function extremeHlb(search: Search, extra: Extra, sign: 1 | -1): Promise<number | null> {
  let reached: number | null = null;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const from: number = reached ?? 0;
    const objective = describedTerms(search.players, (hlb) => -sign * (hlb - from));
    const levels = await solveFor(search, { ...extra, window: null, objective });
    const mean = levels ? meanHlb(levels) : null;
    if (mean === null) return reached;
    if (reached !== null && sign * (mean - reached) <= FRACTION_EPSILON) return reached;
    reached = mean;
  }
  throw new Error('The search for the extreme HLB did not settle.');
}

/** The fewest materials, then the least cost among so few where priced. */
async function fewest(search: Search, extra: Extra, window: Window): Promise<Level[] | null> {
  const { players, demand } = search;
  const asked = { ...extra, window };
  const small = oneOrTwo(players, demand, extra.cuts ?? []);
  if (small) return small;
  const found = await solveFor(search, { ...asked, objective: countTerms(players) }, 1);
  if (!found) return null;
  const asFew = { ...search, demand: { ...demand, atMost: found.length } };
  return (await cheapest(asFew, asked)) ?? found;
}

/** The best answer to a demand, proven; null when there is none. Checked against the demand before it is given. */
export async function bestAnswer(search: Search, extra: Pick<Extra, 'cuts'>): Promise<Level[] | null> {
  const { players, demand } = search;
  const window = demandedWindow(demand);
  const levels = await {
    'least cost': () => solveFor(search, { ...extra, window, objective: costTerms(players) }),
    'nearest HLB': () => nearest(search, extra, window),
    'fewest materials': () => fewest(search, extra, window),
  }[demand.objective]();
  if (!levels) return null;
  const broken = brokenDemands(levels, demand);
  if (broken.length > 0) throw new Error(`The solver’s answer breaks a demand: ${broken.join(', ')}.`);
  return levels;
}
