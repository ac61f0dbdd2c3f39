import type { Row, Term } from '../emulsions/optimise/lp-text';
import type { Field } from './field';
import { isOwn } from './player';
import { KEPT_ROLES, WATER } from './roles';

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

/** The sign of charge of the formula: 1 lets cationics in, 0 anionics. */
export const SIGN = 'sign';

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
