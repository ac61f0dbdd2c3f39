import type { LpModel, Row, Term } from '../emulsions/optimise/lp-text';
import { useRows } from '../emulsions/optimise/use-rows';
import { DEMANDS, demandRows, SIGN } from './demand-rows';
import type { Field } from './field';
import { isOwn, type Player } from './player';
import { WATER } from './roles';

/** What one material that comes or goes counts beside the share of the formula that changes, in %. */
export const MOVE_PERCENT = 0.5;
/** The least that counts as using a material, % of the formula. */
export const LEAST_PERCENT = 0.01;

/** How far an own player's share moved, as a variable. */
export const movedBy = ({ x }: Player): string => `u${x.slice(1)}`;

/** Players (by y) whose coming and going together was an answer before, or a whole set of materials. */
export interface Cut {
  come: readonly string[];
  go: readonly string[];
  /** Whether only these very moves are barred; else every answer that makes all of them and more is too. */
  exact?: boolean;
}

/** The ends between which a player's share lies when it is used, % of the formula. */
export function limitsOf(player: Player, ranges: boolean): { least: number; most: number } {
  if (player.role === WATER) return { least: LEAST_PERCENT, most: 100 };
  if (!ranges)
    return { least: LEAST_PERCENT, most: Math.max(player.most, Math.min(100, 2 * player.now + 5)) };
  const least = Math.max(player.least, LEAST_PERCENT);
  // A range that the formula leaves already is not what it is to be moved into by force.
  return {
    least: isOwn(player) ? Math.min(least, player.now) : least,
    most: Math.max(player.most, player.now),
  };
}

function distanceRows(player: Player): Row[] {
  const { x, now } = player;
  const u = movedBy(player);
  return [
    {
      demand: 'distance',
      terms: [
        [1, u],
        [-1, x],
      ],
      sense: '>=',
      rhs: -now,
    },
    {
      demand: 'distance',
      terms: [
        [1, u],
        [1, x],
      ],
      sense: '>=',
      rhs: now,
    },
  ];
}

/** Bars an answer that makes all of these moves again; with no moves, one that makes none. */
function cutRow({ come, go, exact }: Cut, players: readonly Player[]): Row {
  if (come.length + go.length > 0 && !exact) {
    const terms: Term[] = [...come.map((y): Term => [1, y]), ...go.map((y): Term => [-1, y])];
    return { demand: 'cut', terms, sense: '<=', rhs: come.length - 1 };
  }
  // At least one of the moves is not made, or one is made besides.
  const moved = new Set([...come, ...go]);
  const free = players.filter(({ barred }) => barred === null);
  const whenUsed = (player: Player): 1 | -1 => (isOwn(player) === moved.has(player.y) ? 1 : -1);
  const terms = free.map((player): Term => [whenUsed(player), player.y]);
  const lowest = free.filter((player) => whenUsed(player) === -1).length;
  return { demand: 'cut', terms, sense: '>=', rhs: 1 - lowest };
}

/** Further answers bring no more in than go, beyond what the best needed: a needless trace is no other formula. */
function evenRow(players: readonly Player[], spare: number): Row {
  const own = players.filter(isOwn);
  const terms = players.map(({ y }): Term => [1, y]);
  return { demand: 'even', terms, sense: '<=', rhs: own.length + spare };
}

/** What further answers are asked beside the demands. */
export interface Asked {
  cuts: readonly Cut[];
  /** How many more may come in than go. */
  spare?: number;
}

/** The rows of what further answers are asked. */
export function askedRows(players: readonly Player[], { cuts, spare }: Asked): Row[] {
  return [
    ...cuts.map((cut) => cutRow(cut, players)),
    ...(spare === undefined ? [] : [evenRow(players, spare)]),
  ];
}

/** Half of the moved shares, so that one share in the place of another counts once, and each coming and going. */
export function distanceTerms(players: readonly Player[]): Term[] {
  return players.flatMap((player): Term[] =>
    isOwn(player)
      ? [
          [0.5, movedBy(player)],
          [-MOVE_PERCENT, player.y],
        ]
      : [
          [0.5, player.x],
          [MOVE_PERCENT, player.y],
        ],
  );
}

/** What the objective leaves out: own materials that stay count nothing. */
export const distanceConstant = (players: readonly Player[]): number =>
  MOVE_PERCENT * players.filter(isOwn).length;

/** The mixed-integer model over some players of a field. */
export function buildModel(
  field: Field,
  {
    cuts = [],
    spare,
    without,
  }: { cuts?: readonly Cut[]; spare?: number; without?: ReadonlySet<string> } = {},
): LpModel {
  const { players } = field;
  const ranges = field.wish.keepRanges && !without?.has(DEMANDS.ranges);
  const rows = [
    ...players.flatMap((player) => useRows(player, limitsOf(player, ranges))),
    ...players.filter(isOwn).flatMap(distanceRows),
    ...demandRows(field, without),
    ...askedRows(players, { cuts, spare }),
  ];
  const signed = rows.some(({ terms }) => terms.some(([, name]) => name === SIGN));
  return {
    objective: distanceTerms(players),
    rows,
    upperBounds: new Map([
      ...players.map((player): [string, number] => [player.x, limitsOf(player, ranges).most]),
      ...players.filter(isOwn).map((player): [string, number] => [movedBy(player), 100]),
    ]),
    binaries: [...players.map(({ y }) => y), ...(signed ? [SIGN] : [])],
  };
}
