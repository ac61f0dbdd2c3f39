import type { Level } from './choice';
import { lpText, relaxed } from './lp-text';
import { buildModel, DEMANDS, isPin, type ModelParts } from './model';
import { couldImprove, rank, SMALL } from './narrow';
import type { Player } from './prepare';
import type { SolveLp } from './result';

/** How many of the most promising make the first, small model of a large field. */
const FIRST_FEW = 16;

/** Levels with the value of the objective that they were solved for. */
interface Solved {
  levels: Level[];
  value: number;
}

function levelsFrom(players: readonly Player[], values: Readonly<Record<string, number>>): Level[] {
  return players
    .filter(({ y }) => (values[y] ?? 0) > 0.5)
    .map((player) => ({ player, percent: values[player.x] ?? 0 }));
}

function valueOf(parts: ModelParts, values: Readonly<Record<string, number>>): number {
  return parts.objective.reduce((sum, [by, name]) => sum + by * (values[name] ?? 0), 0);
}

/**
 * Solves one model as it stands, or answers null when it is infeasible. The levels are those of a second, small model
 * over the chosen ones alone: a solver takes 0.9999999 for 1, and that must not blur the masses.
 */
async function solveWhole(parts: ModelParts, solve: SolveLp): Promise<Solved | null> {
  const first = await solve(lpText(buildModel(parts)));
  if (first.status === 'infeasible') return null;
  const rough = levelsFrom(parts.players, first.values);
  const players = rough.map(({ player }) => ({ ...player, pinned: true }));
  const demand = { ...parts.demand, atMost: Math.max(players.length, 1) };
  const without = new Set([...(parts.without ?? [])].filter((name) => !isPin(name)));
  // With every use pinned to 1 nothing whole is left to decide, so that the relaxation is the model.
  const again = await solve(lpText(relaxed(buildModel({ ...parts, cuts: [], players, demand, without }))));
  if (again.status === 'infeasible') return { levels: rough, value: valueOf(parts, first.values) };
  const byId = new Map(rough.map(({ player }) => [player.y, player]));
  const levels = levelsFrom(players, again.values).map(({ player, percent }) => ({
    player: byId.get(player.y) ?? player,
    percent,
  }));
  return { levels, value: valueOf(parts, again.values) };
}

/**
 * Solves a model to proven optimality; null when it is infeasible. A large field is narrowed first: the most promising
 * few are solved, and then only those others that are not proven unable to improve on that answer.
 *
 * @param step the least improvement that counts: 1 where the objective is a count, else 0
 */
export async function solveModel(parts: ModelParts, solve: SolveLp, step = 0): Promise<Level[] | null> {
  const allowed = parts.players.filter((player) => !player.excluded || parts.without?.has(DEMANDS.excluded));
  const field = { ...parts, players: allowed };
  if (allowed.length <= SMALL) return (await solveWhole(field, solve))?.levels ?? null;
  const ranking = await rank(field, solve);
  if (!ranking) return (await solveWhole(field, solve))?.levels ?? null;
  const few = new Set([...allowed.filter((player) => player.pinned), ...ranking.order.slice(0, FIRST_FEW)]);
  const first = await solveWhole({ ...field, players: [...few] }, solve);
  if (!first) return (await solveWhole(field, solve))?.levels ?? null;
  const others = couldImprove(ranking, first.value, step);
  if (others.every((player) => few.has(player))) return first.levels;
  const better = await solveWhole({ ...field, players: others }, solve);
  return better && better.value < first.value ? better.levels : first.levels;
}
