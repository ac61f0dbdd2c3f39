import { lpText, relaxed, type LpModel } from '../emulsions/optimise/lp-text';
import type { SolveLp } from '../emulsions/optimise/result';
import type { Field } from './field';
import { buildModel, distanceConstant, type Asked, type Cut } from './model';
import { boundsOf } from './narrow';
import { isOwn, type Player } from './player';

/** Shares of a formula, % by player; those not used are left out. */
export type Shares = ReadonlyMap<Player, number>;

/** An answer of the model: its shares, and how far it is from the formula of now. */
export interface Solved {
  shares: Shares;
  distance: number;
  /** Whether no nearer one meets what was asked. */
  proven: boolean;
}

/** Up to as many players a model is solved as it stands; of more, so many of the most promising new ones first. */
const SMALL = 60;
const FIRST_NEW = 20;
const NOISE = 1e-7;

const valueOf = (model: LpModel, values: Readonly<Record<string, number>>): number =>
  model.objective.reduce((sum, [by, name]) => sum + by * (values[name] ?? 0), 0);

/** Solves over exactly these players; the shares are those of a second model in which nothing whole is open. */
async function solveWhole(field: Field, asked: Asked, solve: SolveLp): Promise<Solved | null> {
  const model = buildModel(field, asked);
  const first = await solve(lpText(model));
  if (first.status === 'infeasible') return null;
  const used = (player: Player): number => ((first.values[player.y] ?? 0) > 0.5 ? 1 : 0);
  const fixed = field.players.map((player) => ({
    ...{ demand: 'fixed', terms: [[1, player.y] as const], sense: '=' as const, rhs: used(player) },
  }));
  const pinned = relaxed({ ...buildModel(field), rows: [...buildModel(field).rows, ...fixed] });
  const again = await solve(lpText(pinned));
  const values = again.status === 'optimal' ? again.values : first.values;
  const shares = new Map(
    field.players.filter((player) => used(player) === 1).map((player) => [player, values[player.x] ?? 0]),
  );
  return { shares, distance: valueOf(model, values) + distanceConstant(field.players), proven: true };
}

/** A field with the bounds that tell which new materials could matter; found once for all its cuts. */
export class Search {
  /** New materials of the answers so far: another answer is often made of them too. */
  private readonly used = new Set<Player>();

  constructor(
    readonly field: Field,
    private readonly solve: SolveLp,
  ) {}

  private over(players: readonly Player[]): Field {
    return { ...this.field, players: [...players] };
  }

  /**
   * The nearest formula that makes none of the barred sets of moves, proven; null where there is none. A large field
   * is narrowed: the most promising new materials first, and then those that are not proven unable to do better. Where
   * only very sets of moves are barred, the relaxation tells too little for that: a near one is then enough.
   */
  async nearest(asked: Asked): Promise<Solved | null> {
    const { players } = this.field;
    if (players.length <= SMALL) return solveWhole(this.field, asked, this.solve);
    const bounds = await boundsOf(this.field, asked, this.solve);
    if (bounds === null) return null;
    const own = players.filter(isOwn);
    const boundOf = ({ y }: Player): number => bounds.using.get(y) ?? -Infinity;
    const others = players.filter((player) => !isOwn(player)).sort((a, b) => boundOf(a) - boundOf(b));
    const enough = asked.cuts.some(({ exact }) => exact);
    let taken = [...new Set([...this.used, ...others.slice(0, FIRST_NEW)])];
    for (;;) {
      const found = await solveWhole(this.over([...own, ...taken]), asked, this.solve);
      const ceiling = found ? found.distance - NOISE : Infinity;
      const open = others.filter((player) => boundOf(player) < ceiling);
      if ((found && enough) || open.every((player) => taken.includes(player))) {
        for (const player of found?.shares.keys() ?? []) if (!isOwn(player)) this.used.add(player);
        return found && { ...found, proven: open.every((player) => taken.includes(player)) };
      }
      // Without an answer the field is doubled; with one, all that could still be nearer come in at once.
      taken = found
        ? [...new Set([...taken, ...open])]
        : others.slice(0, Math.min(others.length, 4 * taken.length));
    }
  }

  /** Whether any formula meets the demands but for some. */
  async feasibleWithout(names: readonly string[]): Promise<boolean> {
    const without = new Set(names);
    const model = { ...buildModel(this.field, { without }), objective: [] };
    if ((await this.solve(lpText(relaxed(model)))).status === 'infeasible') return false;
    return (await this.solve(lpText(model))).status === 'optimal';
  }

  /** The least of a linear figure over all formulas that meet the demands but for one; null where none does. */
  async leastOf(
    objective: LpModel['objective'],
    without: string,
  ): Promise<{ shares: Shares; value: number } | null> {
    const model = { ...buildModel(this.field, { without: new Set([without]) }), objective };
    const found = await this.solve(lpText(model));
    if (found.status === 'infeasible') return null;
    const shares = new Map(this.field.players.map((player) => [player, found.values[player.x] ?? 0]));
    return { shares, value: valueOf(model, found.values) };
  }
}

/** What comes and goes in an answer of its own accord, to bar it from coming again; what is barred goes in every one. */
export function movesOf({ players }: Field, shares: Shares): Cut {
  return {
    come: players.filter((player) => !isOwn(player) && shares.has(player)).map(({ y }) => y),
    go: players
      .filter((player) => isOwn(player) && player.barred === null && !shares.has(player))
      .map(({ y }) => y),
  };
}
