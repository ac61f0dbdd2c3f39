import { brokenDemands, costOf, type Level } from './choice';
import type { Demand } from './demand';
import type { Cut } from './model';
import { keepsRule } from './pairing';
import { LEAST_USE_PERCENT, type Player } from './prepare';

type Point = readonly [number, number];
/** a·x + b·y ≤ c. */
type HalfPlane = readonly [a: number, b: number, c: number];

/** Binary noise allowed when a corner lies on an edge; the demands are checked again on the answer. */
const NOISE = 1e-9;

function least({ one }: Player): number {
  return Math.max(one.minPercent, LEAST_USE_PERCENT);
}

/** Cuts a convex polygon by a half-plane (Sutherland and Hodgman 1974, from memory). */
function clip(corners: readonly Point[], [a, b, c]: HalfPlane): Point[] {
  const out: Point[] = [];
  corners.forEach((here, index) => {
    const next = corners[(index + 1) % corners.length] ?? here;
    const [dHere, dNext] = [a * here[0] + b * here[1] - c, a * next[0] + b * next[1] - c];
    if (dHere <= NOISE) out.push(here);
    if (dHere <= NOISE !== dNext <= NOISE) {
      const t = dHere / (dHere - dNext);
      out.push([here[0] + t * (next[0] - here[0]), here[1] + t * (next[1] - here[1])]);
    }
  });
  return out;
}

function hlbPlanes(first: Player, second: Player, { targetHlb, tolerance }: Demand): HalfPlane[] {
  if (targetHlb === null) return [];
  const away = (player: Player, end: number): number => (player.described ? (player.one.hlb ?? 0) - end : 0);
  const [low, high] = [targetHlb - tolerance, targetHlb + tolerance];
  const weight = (player: Player): number => (player.described ? -1 : 1);
  return [
    [-away(first, low), -away(second, low), 0],
    [away(first, high), away(second, high), 0],
    [weight(first), weight(second), 0],
  ];
}

/** The levels at which two emulsifiers alone meet the amounts asked for: a convex polygon, empty when none do. */
function pairRegion(first: Player, second: Player, demand: Demand): Point[] {
  const [l1, u1, l2, u2] = [least(first), first.one.maxPercent, least(second), second.one.maxPercent];
  const planes: HalfPlane[] = [
    [-1, -1, -demand.totalMinPercent],
    [1, 1, demand.totalMaxPercent],
    ...hlbPlanes(first, second, demand),
  ];
  const square: Point[] = [
    [l1, l2],
    [u1, l2],
    [u1, u2],
    [l1, u2],
  ];
  return planes.reduce<Point[]>((corners, plane) => clip(corners, plane), square);
}

/** Whether two cannot meet the totals or the HLB whatever their levels: spares most pairs the polygon. */
function hopeless(first: Player, second: Player, demand: Demand): boolean {
  const { targetHlb, tolerance, totalMinPercent, totalMaxPercent } = demand;
  if (first.one.maxPercent + second.one.maxPercent < totalMinPercent - NOISE) return true;
  if (least(first) + least(second) > totalMaxPercent + NOISE) return true;
  if (targetHlb === null) return false;
  const side = ({ one, described }: Player): number => {
    const away = (one.hlb ?? 0) - targetHlb;
    return !described || Math.abs(away) <= tolerance + NOISE ? 0 : Math.sign(away);
  };
  const [a, b] = [side(first), side(second)];
  return a === b ? a !== 0 || (!first.described && !second.described) : !first.described || !second.described;
}

interface Ask {
  demand: Demand;
  cuts: readonly Cut[];
}

function keepsCuts(levels: readonly Level[], cuts: Ask['cuts']): boolean {
  const names = new Set(levels.map(({ player }) => player.y));
  return cuts.every(
    ({ used, exact }) => !used.every((y) => names.has(y)) || (exact && names.size > used.length),
  );
}

const accepted = (levels: Level[], { demand, cuts }: Ask): boolean =>
  keepsCuts(levels, cuts) && brokenDemands(levels, demand).length === 0;

/** What levels cost, for choosing among answers of one size: one without all prices comes after all others. */
const price = (levels: readonly Level[]): number => costOf(levels) ?? Infinity;

function single(players: readonly Player[], ask: Ask): Level[] | null {
  let best: Level[] | null = null;
  for (const player of players) {
    const levels = [{ player, percent: Math.max(least(player), ask.demand.totalMinPercent) }];
    if (accepted(levels, ask) && (!best || price(levels) < price(best))) best = levels;
  }
  return best;
}

/** The cheapest accepted corner of a pair's region: a linear cost is least at a corner. */
function cheapestCorner(first: Player, second: Player, ask: Ask): Level[] | null {
  let best: Level[] | null = null;
  for (const [x, y] of pairRegion(first, second, ask.demand)) {
    const levels = [
      { player: first, percent: x },
      { player: second, percent: y },
    ];
    if ((!best || price(levels) < price(best)) && accepted(levels, ask)) best = levels;
  }
  return best;
}

function pair(players: readonly Player[], ask: Ask): Level[] | null {
  const { demand } = ask;
  const pins = new Set(demand.pinned).size;
  const byPrice = [...players].sort((a, b) => (a.one.costPerKg ?? Infinity) - (b.one.costPerKg ?? Infinity));
  let best: Level[] | null = null;
  for (const [index, first] of byPrice.entries()) {
    // Sorted by price: from here on no pair costs less than the first of it alone would.
    if (best && ((first.one.costPerKg ?? Infinity) * demand.totalMinPercent) / 100 >= price(best)) break;
    for (const second of byPrice.slice(index + 1)) {
      if (pins > Number(first.pinned) + Number(second.pinned) || hopeless(first, second, demand)) continue;
      if (!demand.rules.every((rule) => keepsRule(rule, [first.groups, second.groups]))) continue;
      const levels = cheapestCorner(first, second, ask);
      if (levels && (!best || price(levels) < price(best))) best = levels;
    }
  }
  return best;
}

/**
 * The cheapest single emulsifier that meets a demand, else the cheapest two (those without a price last), in closed
 * form; null proves that at least three are needed.
 *
 * @param cuts answers given before, which are barred
 */
export function oneOrTwo(players: readonly Player[], demand: Demand, cuts: Ask['cuts']): Level[] | null {
  const allowed = players.filter((player) => !player.excluded);
  const ask = { demand, cuts };
  const one = single(allowed, ask);
  return one || demand.atMost < 2 ? one : pair(allowed, ask);
}
