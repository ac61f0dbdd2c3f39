import { SolverFailed, type SolveLp } from '../emulsions/optimise/result';
import { ppmFromPercent } from '../quantities/share';
import { explainClash, type Clash } from './explain';
import { fieldOf, type Field, type ReformulateInput } from './field';
import { costOf, judgedDemands, originOf } from './judge';
import type { Cut } from './model';
import { isOwn } from './player';
import { roundedShares } from './rounded';
import { movesOf, Search, type Solved } from './search';

/** One formula that meets what is asked, by material. Shares in ppm; `was` 0 for what came, `is` 0 for what went. */
export interface Reformulation {
  shares: { materialId: string; was: number; is: number; role: string }[];
  come: string[];
  go: string[];
  /** Half of the moved shares, and 0.5 for each material that comes or goes, %. */
  distance: number;
  /** True where none nearer is left beside those before it; else only a near one. */
  proven: boolean;
  /** Minor units per kg of what has a price; natural origin at its lower end, %. */
  costPerKg: number;
  originPercent: number;
  /** The demands that stand in the way of a nearer formula, with what they come to. */
  binds: { demand: string; says: string }[];
}

export type ReformulateResult =
  | {
      status: 'found';
      best: Reformulation;
      alternatives: Reformulation[];
      noMore: boolean;
      cautions: string[];
    }
  | ({ status: 'none'; cautions: string[] } & Clash);

function reformulationOf(field: Field, { shares, distance, proven }: Solved): Reformulation {
  const ppm = roundedShares(field, shares);
  const percent = new Map([...ppm].map(([player, one]) => [player, one / 10_000]));
  const judged = judgedDemands(field, percent);
  const broken = judged.filter((one) => one.broken);
  if (broken.length > 0)
    throw new Error(`The solver’s answer breaks a demand: ${broken.map(({ says }) => says).join('; ')}.`);
  const all = field.players.filter((player) => isOwn(player) || ppm.has(player));
  // What binds shows in the shares as they were solved: rounding leaves a little room below every end.
  const solved = judgedDemands(field, shares);
  const told = judged.filter(({ binds, demand }, at) => (binds || solved[at]?.binds) && demand !== 'whole');
  return {
    shares: all.map((player) => ({
      materialId: player.material.id,
      was: ppmFromPercent(player.now),
      is: ppm.get(player) ?? 0,
      role: player.role,
    })),
    come: all.filter((player) => !isOwn(player)).map(({ material }) => material.id),
    go: all.filter((player) => !ppm.has(player)).map(({ material }) => material.id),
    distance,
    proven,
    costPerKg: costOf(percent),
    originPercent: originOf(percent, field.wish.originWithWater),
    binds: told.map(({ demand, says }) => ({ demand, says })),
  };
}

/**
 * Further answers. First those that do not make all the moves of another again; where they are too few, any other set
 * of moves.
 */
async function alternativesTo(
  search: Search,
  best: Solved,
): Promise<{ found: Solved[]; cautions: string[] }> {
  const first = movesOf(search.field, best.shares);
  const cuts: Cut[] = [first];
  const barred = search.field.players.filter((player) => isOwn(player) && player.barred !== null).length;
  const spare = Math.max(0, first.come.length - first.go.length - barred);
  const found: Solved[] = [];
  try {
    for (const exact of [false, true])
      while (found.length < search.field.wish.alternatives) {
        const next = await search.nearest({ cuts: cuts.map((cut) => ({ ...cut, exact })), spare });
        if (!next) break;
        found.push(next);
        cuts.push(movesOf(search.field, next.shares));
      }
  } catch (failure) {
    // The best is proven already, and must not be lost with the rest.
    if (!(failure instanceof SolverFailed)) throw failure;
    return {
      found,
      cautions: ['The solver could not settle a further formula: there may be more than are shown.'],
    };
  }
  return { found, cautions: [] };
}

/**
 * The formula nearest to the present one that meets what is asked: a mixed-integer model, solved to proven optimality.
 * Near is half of the moved shares, and 0.5 % for each material that comes or goes. What a material does in the formula
 * (emulsifier, oil, preservative…) stays there in about its amount.
 *
 * @param solve solves a CPLEX LP text to proven optimality
 * @throws Problem `invalid-input` for a formula that is not whole
 */
export async function reformulate(input: ReformulateInput, solve: SolveLp): Promise<ReformulateResult> {
  const field = fieldOf(input);
  const search = new Search(field, solve);
  const best = await search.nearest({ cuts: [] });
  if (!best) return { status: 'none', ...(await explainClash(search)), cautions: field.cautions };
  const { found, cautions } = await alternativesTo(search, best);
  return {
    status: 'found',
    best: reformulationOf(field, best),
    alternatives: found.map((one) => reformulationOf(field, one)),
    noMore: found.length < field.wish.alternatives && cautions.length === 0,
    cautions: [...field.cautions, ...cautions],
  };
}
