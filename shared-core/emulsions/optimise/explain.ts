import { USUAL_HIGHEST_USE } from '../usage-range';
import { meanHlb, type Level } from './choice';
import { lpText, type Term } from './lp-text';
import { buildModel, DEMANDS, isPin, pinOf } from './model';
import { SolverFailed, type Relaxation } from './result';
import { demandedWindow, extremeHlb, nearest, solveFor, type Search } from './search';

const figure = (value: number): string => String(Number(value.toFixed(2)));

/** The demands of a search by name, the ones easiest to give up first. */
function demandNames({ players, demand }: Search): string[] {
  return [
    ...(demand.targetHlb === null ? [] : [DEMANDS.hlb]),
    ...(demand.totalMinPercent > 0 ? [DEMANDS.totalLow] : []),
    DEMANDS.totalHigh,
    DEMANDS.atMost,
    ...players.filter((player) => player.pinned).map(pinOf),
    ...(players.some((player) => player.excluded) ? [DEMANDS.excluded] : []),
    ...new Set(demand.rules),
    DEMANDS.usage,
  ];
}

async function feasibleWithout(search: Search, names: readonly string[]): Promise<boolean> {
  const without = new Set(names);
  const window = demandedWindow(search.demand);
  const model = buildModel({ ...search, window, objective: [], without });
  return (await search.solve(lpText(model))).status === 'optimal';
}

async function hlbSays(search: Search): Promise<string> {
  const { targetHlb, tolerance } = search.demand;
  const target = targetHlb ?? 0;
  const asked = `HLB ${figure(target)} ± ${figure(tolerance)} cannot be reached with the allowed emulsifiers`;
  try {
    return await reachableSays(search, target, asked);
  } catch (failure) {
    // How far it can be reached is a help, not the answer: that it cannot is proven already.
    if (failure instanceof SolverFailed) return asked;
    throw failure;
  }
}

/** What HLB can be reached instead, after the words that the target cannot. */
async function reachableSays(search: Search, target: number, asked: string): Promise<string> {
  const [highest, lowest] = [await extremeHlb(search, {}, 1), await extremeHlb(search, {}, -1)];
  // No HLB is reachable at all: then it is not the window that stands in the way, but that a mean must mean something.
  if (highest === null) {
    return `HLB ${figure(target)} would describe less than half of the emulsifier; leave the target HLB out and find the level by trials`;
  }
  if (highest < target) return `${asked}: the highest reachable is ${figure(highest)}`;
  if (lowest !== null && lowest > target) return `${asked}: the lowest reachable is ${figure(lowest)}`;
  const levels = await nearest(search, {}, null);
  const mean = levels ? meanHlb(levels) : null;
  return mean === null ? asked : `${asked}: the nearest reachable is ${figure(mean)}`;
}

async function withObjective(search: Search, name: string, objective: Term[]): Promise<Level[]> {
  const window = demandedWindow(search.demand);
  return (await solveFor(search, { window, objective, without: new Set([name]) })) ?? [];
}

async function totalSays(search: Search, name: string): Promise<string> {
  const high = name === DEMANDS.totalHigh;
  const levels = await withObjective(
    search,
    name,
    search.players.map(({ x }) => [high ? 1 : -1, x]),
  );
  const total = levels.reduce((sum, level) => sum + level.percent, 0);
  return high
    ? `a total of at least ${figure(total)} % is needed, and ${figure(search.demand.totalMaxPercent)} % is the most allowed`
    : `a total of ${figure(total)} % is the most that can be reached, and ${figure(search.demand.totalMinPercent)} % is the least asked for`;
}

async function excludedSays(search: Search): Promise<string> {
  const objective: Term[] = search.players.filter((player) => player.excluded).map(({ y }) => [1, y]);
  const levels = await withObjective(search, DEMANDS.excluded, objective);
  const names = levels.filter(({ player }) => player.excluded).map(({ player }) => player.one.name);
  return `allow ${names.join(' and ')}, which is excluded now`;
}

/** Which ranges stand in the way: those recorded, and those that stand in where none is. */
function usageSays({ players }: Search): string {
  const assumed = players.filter(({ one }) => one.maxAssumed).map(({ one }) => one.name);
  const says =
    'only levels outside the usage ranges would do; look for other candidates rather than leave the ranges';
  if (assumed.length === 0) return says;
  const some = assumed.slice(0, 3).join(', ') + (assumed.length > 3 ? ` and ${assumed.length - 3} more` : '');
  return `${says}. For ${some} no highest use is recorded and ${USUAL_HIGHEST_USE} % is assumed: record the supplier’s`;
}

async function saysFor(search: Search, name: string): Promise<string> {
  switch (name) {
    case DEMANDS.hlb:
      return hlbSays(search);
    case DEMANDS.totalHigh:
    case DEMANDS.totalLow:
      return totalSays(search, name);
    case DEMANDS.atMost: {
      const levels = await withObjective(
        search,
        name,
        search.players.map(({ y }) => [1, y]),
      );
      return `at least ${levels.length} materials are needed, and ${search.demand.atMost} is the most allowed`;
    }
    case DEMANDS.excluded:
      return excludedSays(search);
    case DEMANDS.usage:
      return usageSays(search);
    default:
      return isPin(name) ? `drop ${name}` : `drop the rule “${name}”`;
  }
}

/** A smallest set of demands that cannot be met together: each in turn is dropped if it is not needed for the clash. */
async function smallestConflict(search: Search, names: readonly string[]): Promise<string[]> {
  const dropped: string[] = [];
  for (const name of names) {
    if (!(await feasibleWithout(search, [...dropped, name]))) dropped.push(name);
  }
  return names.filter((name) => !dropped.includes(name));
}

/** Giving these up is never advised, though they are named where they clash: the mixture would form a salt. */
const NEVER_GIVEN_UP: readonly string[] = ['one sign of charge'];

export interface Explanation {
  reason: string;
  relax: Relaxation[];
  conflict: string[];
}

/** Why a demand has no answer: which demands clash, and which of them, given up alone, would let an answer through. */
export async function explain(search: Search): Promise<Explanation> {
  const names = demandNames(search);
  const conflict = await smallestConflict(search, names);
  const relax: Relaxation[] = [];
  // Only a member of every clash helps when given up alone, so the members of this one are all there is to try.
  for (const name of conflict) {
    if (NEVER_GIVEN_UP.includes(name) || !(await feasibleWithout(search, [name]))) continue;
    relax.push({ demand: name, says: await saysFor(search, name) });
  }
  const clash = `These demands cannot be met together: ${conflict.join('; ')}.`;
  const first = relax[0];
  const lead = first ? `${first.says.charAt(0).toUpperCase()}${first.says.slice(1)}. ` : '';
  return { reason: `${lead}${clash}`, relax, conflict };
}
