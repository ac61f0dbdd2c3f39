import type { Term } from '../emulsions/optimise/lp-text';
import { costOf, originOf } from './judge';
import { DEMANDS, demandRows } from './demand-rows';
import type { Search } from './search';

/** A demand that, given up or eased, lets a formula through; `says` tells how far. */
export interface Eased {
  demand: string;
  says: string;
  /** Of cost and origin: what can be reached. Minor units per kg, or %. */
  reach: number | null;
}

/** Why no formula meets what is asked: a smallest set of demands that clash, and what would let one through. */
export interface Clash {
  conflict: string[];
  eased: Eased[];
}

/** Given up last, and never advised. */
const KEPT: readonly string[] = [DEMANDS.law, DEMANDS.charge];

function namesOf(search: Search): string[] {
  const names = new Set(demandRows(search.field).map(({ demand }) => demand));
  names.delete('whole');
  const ranges = search.field.wish.keepRanges ? [DEMANDS.ranges] : [];
  // The ones easiest to give up first: what is not needed for the clash is dropped in this order.
  return [
    ...[...names].filter((name) => !KEPT.includes(name)),
    ...ranges,
    ...KEPT.filter((name) => names.has(name)),
  ];
}

async function easedBy(search: Search, demand: string): Promise<Eased> {
  const { players, wish } = search.field;
  if (demand === DEMANDS.cost) {
    const objective = players.map(({ cost, x }): Term => [(cost ?? 0) / 100, x]);
    const least = await search.leastOf(objective, demand);
    return { demand, says: 'the least that can be reached', reach: least && costOf(least.shares) };
  }
  if (demand === DEMANDS.origin) {
    const counted = players.filter(({ water }) => wish.originWithWater || !water);
    const least = wish.originAtLeast ?? 0;
    const objective = counted.map(({ origin, x }): Term => [least - 100 * origin, x]);
    const most = await search.leastOf(objective, demand);
    return {
      demand,
      says: 'about the most that can be reached',
      reach: most && originOf(most.shares, wish.originWithWater),
    };
  }
  return { demand, says: `drop or ease ${demand}`, reach: null };
}

/** Finds which demands clash, each needed for it, and which of them, given up alone, would let a formula through. */
export async function explainClash(search: Search): Promise<Clash> {
  const names = namesOf(search);
  const dropped: string[] = [];
  for (const name of names) if (!(await search.feasibleWithout([...dropped, name]))) dropped.push(name);
  const conflict = names.filter((name) => !dropped.includes(name));
  const eased: Eased[] = [];
  for (const name of conflict)
    if (!KEPT.includes(name) && (await search.feasibleWithout([name])))
      eased.push(await easedBy(search, name));
  return { conflict, eased };
}
