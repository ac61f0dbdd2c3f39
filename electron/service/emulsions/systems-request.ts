import { benchLine, benchState } from '@core/emulsions/bench/bench-state';
import type { Ranking } from '@core/emulsions/systems/rank-systems';
import { systemWish } from '@core/emulsions/systems/wish';
import { Problem } from '@core/problems/problem';
import type { Reader } from '@db/database';
import { idsWithFunction, idsWithInciEnding, readMaterials } from '@db/materials/materials';
import { readSettings } from '@db/settings/settings';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { overShelf } from '../shelf/over-shelf';
import { runInline } from './run-job';

/** What systems are asked for; the library's emulsifiers are read here. */
export const systemsRequest = z.object({
  wish: systemWish.omit({ currency: true }),
  oils: z.array(benchLine).max(60, 'An oil phase can hold 60 lines at most.'),
  /** The other lines of the formula, which charges must get on with. */
  rest: benchState.shape.rest.default([]),
  /** Set by hand; null ranks by the required HLB of the oils. */
  targetHlb: benchState.shape.targetHlb.default(null),
  /** Weights by rule id; a rule not named keeps its own. */
  weights: z
    .record(
      z.string(),
      z
        .number('A weight must be a number.')
        .min(0, 'A weight cannot be negative.')
        .max(100, 'A weight of 100 is the most.'),
    )
    .default({}),
});

function emulsifierIds(library: Reader): string[] {
  // Fatty alcohols build body beside an emulsifier, whatever function their maker gave them.
  const alcohols = idsWithInciEnding(library, ' alcohol');
  return [...new Set([...idsWithFunction(library, ['emulsifier', 'co-emulsifier']), ...alcohols])];
}

/**
 * Ranks systems from the library for an oil phase and a wish.
 * @throws Problem as `rankSystems`, and `cancelled` when the asker has gone
 */
export async function rankFromLibrary(
  context: ServiceContext,
  { wish, oils, rest, weights, targetHlb }: z.infer<typeof systemsRequest>,
  signal: AbortSignal,
): Promise<Ranking> {
  const { library } = context.session.current();
  const known = readMaterials(
    library,
    [...oils, ...rest].map((line) => line.materialId),
  );
  const lines = oils.map(({ materialId, percent }) => {
    const material = known.get(materialId);
    if (material) return { material, mass: percent };
    throw new Problem({
      code: 'invalid-input',
      title: 'An oil on the bench is no longer in the library.',
      advice: 'Remove the marked line, or choose another material for it.',
    });
  });
  const input = {
    wish: { ...wish, currency: readSettings(library).currency },
    oils: lines,
    // A line whose material is gone since carries no charge that could be judged.
    rest: rest.flatMap(({ materialId, percent }) => {
      const material = known.get(materialId);
      return material ? [{ material, mass: percent }] : [];
    }),
    weights,
    targetHlb,
    limit: 12,
  };
  return overShelf(library, emulsifierIds, (shelf) =>
    (context.runJob ?? runInline)({ kind: 'systems', shelf, input }, signal),
  );
}
