import type { Demand } from './demand';
import type { LpModel, Row, Term } from './lp-text';
import { pairingRows, SIGN } from './pairing';
import { LEAST_USE_PERCENT, type Player } from './prepare';
import { useRows } from './use-rows';

/** The names of the demands, as rows carry them and as an infeasible answer reports them. */
export const DEMANDS = {
  hlb: 'the HLB window',
  totalLow: 'the lowest total',
  totalHigh: 'the highest total',
  atMost: 'the number of materials',
  usage: 'the usage ranges',
  excluded: 'the exclusions',
} as const;

/** The demand that one emulsifier be used. */
export const pinOf = (player: Player): string => `the pin on ${player.one.name}`;
export const isPin = (name: string): boolean => name.startsWith('the pin on ');

/** Players (by y) that were an answer before. */
export interface Cut {
  used: readonly string[];
  /** Whether only this very set is barred; else every set that holds all of it is too. */
  exact: boolean;
}

/** What differs between the models solved for one demand. */
export interface ModelParts {
  players: readonly Player[];
  demand: Demand;
  /** The HLB window, its ends included; null leaves it out. */
  window: { low: number; high: number } | null;
  objective: Term[];
  /** Names of demands to leave out. */
  without?: ReadonlySet<string>;
  cuts?: readonly Cut[];
  extraRows?: readonly Row[];
  /** Upper bounds of variables other than the players'. */
  extraBounds?: readonly [string, number][];
}

/** Least and most level of each player when used, % of the formula, by its y. */
export function usageLimits({
  players,
  demand,
  without,
}: ModelParts): Map<string, { least: number; most: number }> {
  const relaxed = without?.has(DEMANDS.usage) ?? false;
  const ceiling = without?.has(DEMANDS.totalHigh) ? 100 : demand.totalMaxPercent;
  return new Map(
    players.map(({ one, y }) => {
      const least = relaxed ? LEAST_USE_PERCENT : Math.max(one.minPercent, LEAST_USE_PERCENT);
      // No larger than the highest total, which keeps the relaxation tight.
      return [y, { least, most: Math.min(relaxed ? 100 : one.maxPercent, ceiling) }];
    }),
  );
}

/** The mean HLB between two ends, multiplied out so that it is linear: Σ (HLB − end)·x over the described. */
export function windowRows(players: readonly Player[], low: number, high: number): Row[] {
  const away = (end: number): Term[] =>
    players.filter((player) => player.described).map(({ one, x }) => [(one.hlb ?? 0) - end, x]);
  if (low === high) return [{ demand: DEMANDS.hlb, terms: away(low), sense: '=', rhs: 0 }];
  return [
    { demand: DEMANDS.hlb, terms: away(low), sense: '>=', rhs: 0 },
    { demand: DEMANDS.hlb, terms: away(high), sense: '<=', rhs: 0 },
  ];
}

/**
 * A mean over nothing is no mean, and a mean over a sliver says little: half of the mass must be described. No demand of
 * the maker's, but part of what a target HLB means: it is given up with the HLB window.
 */
function describedRows(players: readonly Player[]): Row[] {
  const described = players.filter((player) => player.described);
  const rows: Row[] = [{ demand: 'described', terms: described.map(({ y }) => [1, y]), sense: '>=', rhs: 1 }];
  if (described.length === players.length) return rows;
  const terms: Term[] = players.map((player) => [player.described ? 1 : -1, player.x]);
  return [...rows, { demand: 'described', terms, sense: '>=', rhs: 0 }];
}

function demandRows({ players, demand }: ModelParts): Row[] {
  const all: Term[] = players.map(({ x }) => [1, x]);
  const used: Term[] = players.map(({ y }) => [1, y]);
  return [
    // No demand of the maker's: a choice of nothing is none.
    { demand: 'some', terms: used, sense: '>=', rhs: 1 },
    { demand: DEMANDS.totalLow, terms: all, sense: '>=', rhs: demand.totalMinPercent },
    { demand: DEMANDS.totalHigh, terms: all, sense: '<=', rhs: demand.totalMaxPercent },
    { demand: DEMANDS.atMost, terms: used, sense: '<=', rhs: demand.atMost },
    ...players
      .filter((player) => player.pinned)
      .map((player): Row => ({ demand: pinOf(player), terms: [[1, player.y]], sense: '=', rhs: 1 })),
    ...[...new Set(demand.rules)].flatMap((rule) => pairingRows(rule, players)),
  ];
}

/** A set of players that is barred, alone or with all that hold it. */
function cutRow({ used, exact }: Cut, players: readonly Player[]): Row {
  const others = exact ? players.filter(({ y }) => !used.includes(y)) : [];
  const terms: Term[] = [...used.map((y): Term => [1, y]), ...others.map(({ y }): Term => [-1, y])];
  return { demand: 'cut', terms, sense: '<=', rhs: used.length - 1 };
}

/**
 * The mixed-integer model of a demand: x in % of the formula, y whether it is used, least·y ≤ x ≤ most·y.
 *
 * Demands named in `without` are left
 * out; a player excluded by the demand is in the model only while the exclusions are left out.
 */
export function buildModel(parts: ModelParts): LpModel {
  const without = parts.without ?? new Set<string>();
  const players = parts.players.filter((player) => !player.excluded || without.has(DEMANDS.excluded));
  const limits = usageLimits({ ...parts, players });
  const limitsOf = ({ y }: Player) => limits.get(y) ?? { least: 0, most: 0 };
  const rows: Row[] = [
    ...players.flatMap((player) => useRows(player, limitsOf(player))),
    ...demandRows({ ...parts, players }),
    ...(parts.demand.targetHlb === null || without.has(DEMANDS.hlb) ? [] : describedRows(players)),
    ...(parts.window ? windowRows(players, parts.window.low, parts.window.high) : []),
    ...(parts.cuts ?? []).map((cut) => cutRow(cut, players)),
    ...(parts.extraRows ?? []),
  ];
  const present = new Set(players.flatMap(({ x, y }) => [x, y]));
  const isPresent = ([, name]: Term): boolean => present.has(name) || !/^[xy]\d/.test(name);
  const kept = rows.filter((row) => !without.has(row.demand));
  const signed = kept.some((row) => row.terms.some(([, name]) => name === SIGN));
  return {
    objective: parts.objective.filter(isPresent),
    rows: kept.map((row) => ({ ...row, terms: row.terms.filter(isPresent) })),
    upperBounds: new Map([
      ...players.map((player): [string, number] => [player.x, limitsOf(player).most]),
      ...(parts.extraBounds ?? []),
    ]),
    binaries: [...players.map(({ y }) => y), ...(signed ? [SIGN] : [])],
  };
}
