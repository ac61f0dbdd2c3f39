import { lpText, type LpModel, type Row } from '../emulsions/optimise/lp-text';
import type { SolveLp } from '../emulsions/optimise/result';
import type { Field } from './field';
import { buildModel, demandRows, distanceConstant, isOwn, limitsOf, movedBy, MOVE_PERCENT } from './model';
import type { Player } from './player';

/** Lower bounds on the distance of every formula, and of every one that takes a new material in. */
export interface Bounds {
  all: number;
  /** By the new player's y. */
  using: ReadonlyMap<string, number>;
}

/**
 * The linear relaxation without the yes-or-no of new materials: their coming is paid for in proportion to their highest
 * use, which no whole solution can undercut; rows that name their y are left out.
 */
function relaxation(field: Field): LpModel {
  const own = field.players.filter(isOwn);
  const others = field.players.filter((player) => !isOwn(player));
  const named = new Set(others.map(({ y }) => y));
  const ofOwn = buildModel({ ...field, players: own });
  const fixed = ofOwn.rows.filter(({ demand }) => demand === 'link' || demand === 'distance');
  const shared = demandRows(field).filter(({ terms }) => !terms.some(([, name]) => named.has(name)));
  const { keepRanges } = field.wish;
  return {
    objective: [
      ...ofOwn.objective,
      ...others.map((player) => [0.5 + MOVE_PERCENT / limitsOf(player, keepRanges).most, player.x] as const),
    ],
    rows: [...fixed, ...shared],
    upperBounds: new Map([
      ...ofOwn.upperBounds,
      ...ofOwn.binaries.map((y): [string, number] => [y, 1]),
      ...others.map((player): [string, number] => [player.x, limitsOf(player, keepRanges).most]),
    ]),
    binaries: [],
  };
}

const allowed = ({ sense }: Row, price: number): number =>
  sense === '>=' ? Math.max(price, 0) : sense === '<=' ? Math.min(price, 0) : price;

/**
 * Bounds by Lagrangian relaxation at the prices of the linear one: all its rows move into the objective, and what is
 * left falls apart into one choice a variable (Geoffrion 1974, from memory). Prices that are off make it loose, never
 * wrong. Null where the relaxation has no solution: then nothing has.
 */
export async function boundsOf(field: Field, solve: SolveLp): Promise<Bounds | null> {
  const model = relaxation(field);
  const solution = await solve(lpText(model));
  if (solution.status === 'infeasible') return null;
  const others = field.players.filter((player) => !isOwn(player));
  const rate = new Map<string, number>();
  const add = (name: string, by: number): void => void rate.set(name, (rate.get(name) ?? 0) + by);
  for (const [by, name] of model.objective) add(name, by);
  // A new material pays for its coming as a whole in what follows, not in proportion.
  for (const player of others) rate.set(player.x, 0.5);
  let base = distanceConstant(field.players);
  model.rows.forEach((row, at) => {
    const price = allowed(row, solution.duals[at] ?? 0);
    if (price === 0) return;
    base += price * row.rhs;
    for (const [by, name] of row.terms) add(name, -price * by);
  });
  for (const player of field.players.filter(isOwn))
    for (const name of [player.x, player.y, movedBy(player)])
      base += Math.min(0, (rate.get(name) ?? 0) * (model.upperBounds.get(name) ?? 1));
  for (const name of model.upperBounds.keys()) if (name === 'sign') base += Math.min(0, rate.get(name) ?? 0);
  const worth = new Map(others.map((player) => [player.y, worthOf(player, rate.get(player.x) ?? 0, field)]));
  const all = [...worth.values()].reduce((sum, one) => sum + Math.min(0, one), base);
  return {
    all,
    using: new Map([...worth].map(([y, one]) => [y, all - Math.min(0, one) + one])),
  };
}

/** What a new material adds at its best where it is used. */
function worthOf(player: Player, rate: number, field: Field): number {
  const { least, most } = limitsOf(player, field.wish.keepRanges);
  return MOVE_PERCENT + Math.min(rate * least, rate * most);
}
