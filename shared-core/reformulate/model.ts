import type { LpModel, Row, Term } from '../emulsions/optimise/lp-text';
import { useRows } from '../emulsions/optimise/use-rows';
import type { Field } from './field';
import type { Player } from './player';
import { KEPT_ROLES, WATER } from './roles';

/** What one material that comes or goes counts beside the share of the formula that changes, in %. */
export const MOVE_PERCENT = 0.5;
/** The least that counts as using a material, % of the formula. */
export const LEAST_PERCENT = 0.01;

/** What is left free below a limit of law, % of the formula. */
const LAW_ROOM = 5e-4;

/** The names of the demands, as rows carry them and a clash reports them. */
export const DEMANDS = {
  cost: 'the cost',
  origin: 'the natural origin',
  ranges: 'the usage ranges',
  groups: 'the room of each group',
  hlb: 'the HLB band',
  ph: 'the balance of acid and base',
  law: 'the limits of law',
  locked: 'the locked lines',
  charge: 'one sign of charge',
  kept: 'keeping what the product is made for',
} as const;

export const isOwn = ({ now }: Player): boolean => now > 0;
/** How far an own player's share moved, as a variable. */
export const movedBy = ({ x }: Player): string => `u${x.slice(1)}`;
/** The sign of charge of the formula: 1 lets cationics in, 0 anionics. */
export const SIGN = 'sign';

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

function groupRows({ players, wish }: Field): Row[] {
  const roles = new Set(players.filter(isOwn).map(({ role }) => role));
  roles.delete(WATER);
  return [...roles].flatMap((role): Row[] => {
    const members = players.filter((player) => player.role === role);
    const now = members.reduce((sum, player) => sum + player.now, 0);
    const terms = members.map(({ x }): Term => [1, x]);
    const room = (now * wish.groupsWithin) / 100;
    return [
      { demand: DEMANDS.groups, terms, sense: '>=', rhs: now - room },
      { demand: DEMANDS.groups, terms, sense: '<=', rhs: now + room },
    ];
  });
}

function costRows({ players, wish }: Field): Row[] {
  if (wish.costAtMost === null) return [];
  const unpriced = players.filter((player) => player.cost === null && isOwn(player));
  return [
    {
      demand: DEMANDS.cost,
      terms: players.map(({ cost, x }): Term => [(cost ?? 0) / 100, x]),
      sense: '<=',
      rhs: wish.costAtMost,
    },
    ...unpriced.map(({ x, now }): Row => ({ demand: DEMANDS.cost, terms: [[1, x]], sense: '<=', rhs: now })),
  ];
}

function originRows({ players, wish }: Field): Row[] {
  const { originAtLeast: least, originWithWater } = wish;
  if (least === null) return [];
  const counted = players.filter(({ water }) => originWithWater || !water);
  const terms = counted.map(({ origin, x }): Term => [100 * origin - least, x]);
  return [{ demand: DEMANDS.origin, terms, sense: '>=', rhs: 0 }];
}

/** A mean between two ends, multiplied out: Σ (value − end)·x. */
function meanRows(parts: readonly (readonly [number, string])[], low: number, high: number): Row[] {
  const away = (end: number): Term[] => parts.map(([value, x]): Term => [value - end, x]);
  return [
    { demand: DEMANDS.hlb, terms: away(low), sense: '>=', rhs: 0 },
    { demand: DEMANDS.hlb, terms: away(high), sense: '<=', rhs: 0 },
  ];
}

function hlbRows({ players, wish, hlb }: Field): Row[] {
  if (hlb === null || wish.hlbWithin === null) return [];
  const [low, high] = [hlb - wish.hlbWithin, hlb + wish.hlbWithin];
  const offered = players.flatMap(({ hlb: value, x }) => (value === null ? [] : [[value, x] as const]));
  const required = players.flatMap(({ required: value, x }) => (value === null ? [] : [[value, x] as const]));
  // A mean over nothing is none: one emulsifier that it describes stays, and one oil.
  const some = (parts: typeof offered): Row => ({
    ...{ demand: DEMANDS.hlb, sense: '>=', rhs: 1 },
    terms: parts.map(([, x]): Term => [1, `y${x.slice(1)}`]),
  });
  return [...meanRows(offered, low, high), ...meanRows(required, low, high), some(offered), some(required)];
}

function phRows({ players, wish, baseLessAcid }: Field): Row[] {
  if (wish.phWithin === null) return [];
  const terms = players.map(({ baseLessAcid: each, x }): Term => [each, x]).filter(([by]) => by !== 0);
  if (terms.length === 0) return [];
  return [
    { demand: DEMANDS.ph, terms, sense: '>=', rhs: baseLessAcid - wish.phWithin },
    { demand: DEMANDS.ph, terms, sense: '<=', rhs: baseLessAcid + wish.phWithin },
  ];
}

function lawRows({ players, limits }: Field): Row[] {
  return limits.map(({ key, most }): Row => {
    const terms = players.flatMap(({ law, x }): Term[] => (law.has(key) ? [[law.get(key) ?? 0, x]] : []));
    // The law is kept after rounding too: a few ppm of the strongest are left free.
    const room = LAW_ROOM * Math.max(0, ...terms.map(([by]) => by));
    return { demand: DEMANDS.law, terms, sense: '<=', rhs: Math.max(0, most - room) };
  });
}

/** No anionic emulsifier or surfactant beside a cationic one, unless the formula has both already. */
function chargeRows({ players }: Field): Row[] {
  const own = new Set(players.filter(isOwn).map(({ charge }) => charge));
  if (own.has('anionic') && own.has('cationic')) return [];
  return players.flatMap(({ charge, y }): Row[] => {
    if (charge === null) return [];
    return charge === 'cationic'
      ? [
          {
            demand: DEMANDS.charge,
            terms: [
              [1, y],
              [-1, SIGN],
            ],
            sense: '<=',
            rhs: 0,
          },
        ]
      : [
          {
            demand: DEMANDS.charge,
            terms: [
              [1, y],
              [1, SIGN],
            ],
            sense: '<=',
            rhs: 1,
          },
        ];
  });
}

function barredRows({ players, locked }: Field): Row[] {
  return players.flatMap(({ barred, material, x, now }): Row[] => [
    ...(barred === null ? [] : [{ demand: barred, terms: [[1, x]] as Term[], sense: '<=' as const, rhs: 0 }]),
    ...(locked.has(material.id)
      ? [{ demand: DEMANDS.locked, terms: [[1, x]] as Term[], sense: '=' as const, rhs: now }]
      : []),
  ]);
}

/** Actives, fragrance, colour and pH aids stay in the formula. */
function keptRows({ players }: Field): Row[] {
  return players
    .filter((player) => isOwn(player) && KEPT_ROLES.has(player.role) && player.barred === null)
    .map(({ y }): Row => ({ demand: DEMANDS.kept, terms: [[1, y]], sense: '=', rhs: 1 }));
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

/** All demands as rows; those named in `without` are left out. */
export function demandRows(field: Field, without: ReadonlySet<string> = new Set()): Row[] {
  const { players } = field;
  const rows: Row[] = [
    { demand: 'whole', terms: players.map(({ x }): Term => [1, x]), sense: '=', rhs: 100 },
    ...groupRows(field),
    ...costRows(field),
    ...originRows(field),
    ...hlbRows(field),
    ...phRows(field),
    ...lawRows(field),
    ...chargeRows(field),
    ...keptRows(field),
    ...barredRows(field),
  ];
  return rows.filter(({ demand, terms }) => terms.length > 0 && !without.has(demand));
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
