import { lpText, type LpModel, type Row, type Term } from '../emulsions/optimise/lp-text';
import type { SolveLp } from '../emulsions/optimise/result';
import { demandRows, SIGN } from './demand-rows';
import type { Field } from './field';
import {
  askedRows,
  buildModel,
  distanceConstant,
  distanceTerms,
  limitsOf,
  movedBy,
  MOVE_PERCENT,
  type Asked,
} from './model';
import { isOwn, type Player } from './player';

/** Lower bounds on the distance of every formula, and of every one that takes a new material in. */
export interface Bounds {
  all: number;
  /** By the new player's y. */
  using: ReadonlyMap<string, number>;
}

/** A row of the relaxation, and the row of the whole model that it stands for. */
interface Relaxed {
  model: LpModel;
  /** In the order of the model's rows. */
  originals: Row[];
}

/**
 * A row with each new y in the place of which its share of the highest use stands: y is never less. Null where that
 * would make the row stricter than it is.
 */
function weakened(row: Row, shareOf: ReadonlyMap<string, readonly [by: number, x: string]>): Row | null {
  const sign = row.sense === '<=' ? 1 : row.sense === '>=' ? -1 : 0;
  const terms: Term[] = [];
  for (const [by, name] of row.terms) {
    const share = shareOf.get(name);
    if (share && sign * by < 0) return null;
    if (share && sign === 0) return null;
    terms.push(share ? [by * share[0], share[1]] : [by, name]);
  }
  return { ...row, terms };
}

/**
 * The linear relaxation without the yes-or-no of new materials: their coming is paid for in proportion to their highest
 * use, which no whole solution can undercut.
 */
function relaxation(field: Field, asked: Asked): Relaxed {
  const own = field.players.filter(isOwn);
  const others = field.players.filter((player) => !isOwn(player));
  const mostOf = (player: Player): number => limitsOf(player, field.wish.keepRanges).most;
  const shareOf = new Map(others.map((player) => [player.y, [1 / mostOf(player), player.x] as const]));
  const ofOwn = buildModel({ ...field, players: own });
  const fixed = ofOwn.rows.filter(({ demand }) => demand === 'link' || demand === 'distance');
  const shared = [...demandRows(field), ...askedRows(field.players, asked)].flatMap((row) => {
    const weak = weakened(row, shareOf);
    return weak ? [{ row, weak }] : [];
  });
  const model: LpModel = {
    objective: [
      ...ofOwn.objective,
      ...others.map((player) => [0.5 + MOVE_PERCENT / mostOf(player), player.x] as const),
    ],
    rows: [...fixed, ...shared.map(({ weak }) => weak)],
    upperBounds: new Map([
      ...ofOwn.upperBounds,
      ...ofOwn.binaries.map((y): [string, number] => [y, 1]),
      [SIGN, 1],
      ...others.map((player): [string, number] => [player.x, mostOf(player)]),
    ]),
    binaries: [],
  };
  return { model, originals: [...fixed, ...shared.map(({ row }) => row)] };
}

const allowed = ({ sense }: Row, price: number): number =>
  sense === '>=' ? Math.max(price, 0) : sense === '<=' ? Math.min(price, 0) : price;

/**
 * Bounds by Lagrangian relaxation at the prices of the linear one: all its rows move into the objective, and what is
 * left falls apart into one choice a variable (Geoffrion 1974, from memory). Prices that are off make it loose, never
 * wrong. Null where the relaxation has no solution: then nothing has.
 */
export async function boundsOf(field: Field, asked: Asked, solve: SolveLp): Promise<Bounds | null> {
  const { model, originals } = relaxation(field, asked);
  const solution = await solve(lpText(model));
  if (solution.status === 'infeasible') return null;
  const own = field.players.filter(isOwn);
  const others = field.players.filter((player) => !isOwn(player));
  const rate = new Map<string, number>();
  const add = (name: string, by: number): void => void rate.set(name, (rate.get(name) ?? 0) + by);
  for (const [by, name] of distanceTerms(field.players)) add(name, by);
  let base = distanceConstant(field.players);
  originals.forEach((row, at) => {
    const price = allowed(row, solution.duals[at] ?? 0);
    if (price === 0) return;
    base += price * row.rhs;
    for (const [by, name] of row.terms) add(name, -price * by);
  });
  const names = [...own.flatMap((player) => [player.x, player.y, movedBy(player)]), SIGN];
  for (const name of names) base += Math.min(0, (rate.get(name) ?? 0) * (model.upperBounds.get(name) ?? 1));
  const worth = new Map(
    others.map((player) => {
      const { least, most } = limitsOf(player, field.wish.keepRanges);
      const each = rate.get(player.x) ?? 0;
      return [player.y, (rate.get(player.y) ?? 0) + Math.min(each * least, each * most)] as const;
    }),
  );
  const all = [...worth.values()].reduce((sum, one) => sum + Math.min(0, one), base);
  return { all, using: new Map([...worth].map(([y, one]) => [y, all - Math.min(0, one) + one])) };
}
