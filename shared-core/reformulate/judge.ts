import { formatMoney } from '../locale/money';
import { DEMANDS } from './demand-rows';
import type { Field } from './field';
import { limitsOf } from './model';
import { isOwn, type Player } from './player';
import { KEPT_ROLES, WATER } from './roles';
import type { Shares } from './search';

/** A demand held against an answer: what it comes to, and whether it stands in the way of a nearer formula. */
export interface JudgedDemand {
  demand: string;
  says: string;
  broken: boolean;
  binds: boolean;
}

/** What rounding to the ppm may move of a share, %; a demand may be missed by what its strongest material makes of it. */
const ROUNDED = 1.5e-4;
/** How near to its end a demand binds, relative to the end. */
const NEAR = 1e-4;

const figure = (value: number): string => String(Number(value.toFixed(3)));
const sum = (shares: Shares, of: (player: Player) => number): number =>
  [...shares].reduce((total, [player, percent]) => total + percent * of(player), 0);

/** Holds a value against one or two ends. */
function within(
  demand: string,
  says: string,
  value: number,
  { low = -Infinity, high = Infinity, strongest = 1 }: { low?: number; high?: number; strongest?: number },
): JudgedDemand {
  const room = ROUNDED * strongest + 1e-9;
  const scale = Math.max(1, ...[low, high].filter(Number.isFinite).map(Math.abs));
  return {
    demand,
    says,
    broken: value < low - room || value > high + room,
    binds: value < low + room + NEAR * scale || value > high - room - NEAR * scale,
  };
}

/** What 1 % of the strongest material of an answer makes of a figure that sums shares. */
const strongest = (shares: Shares, of: (player: Player) => number): number =>
  Math.max(0, ...[...shares.keys()].map((player) => Math.abs(of(player))));

/** Raw-material cost per kg of the priced shares, minor units. */
export const costOf = (shares: Shares): number => sum(shares, ({ cost }) => (cost ?? 0) / 100);

/** Natural origin content at its lower end, %. */
export function originOf(shares: Shares, withWater: boolean): number {
  const counted = new Map([...shares].filter(([{ water }]) => withWater || !water));
  const whole = sum(counted, () => 1);
  return whole > 0 ? (100 * sum(counted, ({ origin }) => origin)) / whole : 0;
}

function meanOf(shares: Shares, of: (player: Player) => number | null): number | null {
  const known = new Map([...shares].filter(([player]) => of(player) !== null));
  const whole = sum(known, () => 1);
  return whole > 0 ? sum(known, (player) => of(player) ?? 0) / whole : null;
}

function judgedHlb({ hlb, wish }: Field, shares: Shares): JudgedDemand[] {
  if (hlb === null || wish.hlbWithin === null) return [];
  // A mean of HLB moves by 40 units over the little that is described.
  const ends = { low: hlb - wish.hlbWithin, high: hlb + wish.hlbWithin, strongest: 40 };
  const offered = meanOf(shares, (player) => player.hlb);
  const required = meanOf(shares, (player) => player.required);
  const says = (what: string, value: number | null): string =>
    `${what} HLB ${value === null ? 'not known' : figure(value)}, asked from ${figure(ends.low)} to ${figure(ends.high)}`;
  const judged = (what: string, value: number | null): JudgedDemand => {
    const one = within(DEMANDS.hlb, says(what, value), value ?? NaN, ends);
    return value === null ? { ...one, broken: true } : one;
  };
  return [judged('offered', offered), judged('required', required)];
}

function judgedGroups({ players, wish }: Field, shares: Shares): JudgedDemand[] {
  const roles = new Set(players.filter(isOwn).map(({ role }) => role));
  roles.delete(WATER);
  return [...roles].map((role) => {
    const now = players
      .filter((player) => player.role === role)
      .reduce((total, player) => total + player.now, 0);
    const value = sum(shares, (player) => (player.role === role ? 1 : 0));
    const room = (now * wish.groupsWithin) / 100;
    const says = `${role} ${figure(value)} %, asked from ${figure(now - room)} to ${figure(now + room)} %`;
    return within(DEMANDS.groups, says, value, { low: now - room, high: now + room, strongest: 10 });
  });
}

function judgedLaw({ limits }: Field, shares: Shares): JudgedDemand[] {
  return limits.map(({ key, says, most }) => {
    const value = sum(shares, ({ law }) => law.get(key) ?? 0);
    return within(DEMANDS.law, `${says}: ${figure(value)} of at most ${figure(most)}`, value, {
      high: most,
      strongest: 0,
    });
  });
}

function judgedPlayers({ players, wish, locked }: Field, shares: Shares): JudgedDemand[] {
  const ranges = [...shares].map(([player, percent]) => {
    const { least, most } = limitsOf(player, wish.keepRanges);
    const says = `${player.material.tradeName} ${figure(percent)} %, used from ${figure(least)} to ${figure(most)} %`;
    const judged = within(DEMANDS.ranges, says, percent, { low: least, high: most });
    return player.role === WATER ? { ...judged, binds: false } : judged;
  });
  const barred = [...shares].flatMap(([{ barred: name, material }, percent]): JudgedDemand[] =>
    name === null
      ? []
      : [{ demand: name, says: `${material.tradeName} is still there`, broken: percent > 0, binds: true }],
  );
  const kept = players
    .filter(({ material }) => locked.has(material.id))
    .map((player) =>
      within(DEMANDS.locked, `${player.material.tradeName} stays`, shares.get(player) ?? 0, {
        low: player.now,
        high: player.now,
      }),
    );
  const gone = players
    .filter((player) => isOwn(player) && KEPT_ROLES.has(player.role) && player.barred === null)
    .filter((player) => !shares.has(player))
    .map(({ material }) => ({
      ...{ demand: DEMANDS.kept, says: `${material.tradeName} is gone`, broken: true, binds: true },
    }));
  return [...(wish.keepRanges ? ranges : []), ...barred, ...kept, ...gone];
}

/** Every demand held against an answer, from its shares alone and not from the model. */
export function judgedDemands(field: Field, shares: Shares): JudgedDemand[] {
  const { wish, baseLessAcid } = field;
  const judged = [
    within(
      'whole',
      'the lines come to 100 %',
      sum(shares, () => 1),
      { low: 100, high: 100 },
    ),
  ];
  if (wish.costAtMost !== null) {
    const cost = costOf(shares);
    const money = (minor: number): string => formatMoney(minor, field.currency, 'en-GB');
    const says = `${money(cost)} of at most ${money(wish.costAtMost)} per kg`;
    judged.push(
      within(DEMANDS.cost, says, cost, {
        high: wish.costAtMost,
        strongest: strongest(shares, (player) => (player.cost ?? 0) / 100),
      }),
    );
  }
  if (wish.originAtLeast !== null) {
    const origin = originOf(shares, wish.originWithWater);
    const says = `${figure(origin)} % of at least ${figure(wish.originAtLeast)} %`;
    judged.push(within(DEMANDS.origin, says, origin, { low: wish.originAtLeast }));
  }
  if (wish.phWithin !== null && [...shares].some(([player]) => player.baseLessAcid !== 0)) {
    const value = sum(shares, (player) => player.baseLessAcid);
    const ends = { low: baseLessAcid - wish.phWithin, high: baseLessAcid + wish.phWithin };
    const says = `base less acid ${figure(value)} mmol in 100 g, asked from ${figure(ends.low)} to ${figure(ends.high)}`;
    judged.push(
      within(DEMANDS.ph, says, value, {
        ...ends,
        strongest: 2 * strongest(shares, (player) => player.baseLessAcid),
      }),
    );
  }
  return [
    ...judged,
    ...judgedHlb(field, shares),
    ...judgedGroups(field, shares),
    ...judgedLaw(field, shares),
    ...judgedPlayers(field, shares),
  ];
}
