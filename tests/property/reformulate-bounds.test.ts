import fc from 'fast-check';
import { lpText } from '@core/emulsions/optimise/lp-text';
import { NO_LAW } from '@core/limits/law';
import { fieldOf, type Field } from '@core/reformulate/field';
import { buildModel, distanceConstant } from '@core/reformulate/model';
import { isOwn } from '@core/reformulate/player';
import { boundsOf } from '@core/reformulate/narrow';
import type { Player } from '@core/reformulate/player';
import { reformulateWish } from '@core/reformulate/wish';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { describe, expect, it } from 'vitest';
import { over, raw } from '../unit/reformulate/small-shelf';

/** The least distance of a field, of all its formulas or of those that use one material; infinite where there is none. */
async function least(field: Field, using?: Player): Promise<number> {
  const model = buildModel(field);
  if (using) model.rows.push({ demand: 'used', terms: [[1, using.y]], sense: '=', rhs: 1 });
  const { status, values } = await solveWithHighs(lpText(model));
  if (status === 'infeasible') return Infinity;
  return model.objective.reduce(
    (sum, [by, name]) => sum + by * (values[name] ?? 0),
    distanceConstant(field.players),
  );
}

const instance = fc.record({
  rows: fc.array(
    fc.record({
      cost: fc.integer({ min: 100, max: 3_000 }),
      origin: fc.constantFrom(0, 0.5, 1),
      least: fc.constantFrom(0, 0.5, 1),
      most: fc.integer({ min: 4, max: 20 }),
      now: fc.integer({ min: 1, max: 6 }),
    }),
    { minLength: 4, maxLength: 7 },
  ),
  cheaper: fc.constantFrom(0.6, 0.8, 0.95),
  origin: fc.option(fc.constantFrom(90, 96, 99)),
  barred: fc.boolean(),
});

describe('what tells which new materials could matter', () => {
  it('never holds one for farther than it is: its bound lies below every formula that uses it', async () => {
    await fc.assert(
      fc.asyncProperty(instance, async ({ rows, cheaper, origin, barred }) => {
        const water = raw('Water', 'Aqua', ['solvent'], { cost: 0, origin: 1 });
        const shelf = rows.map(({ cost, origin: index, least: low, most }, at) =>
          raw(`M${at}`, `M${at}`, ['humectant'], { cost, origin: index, use: [low, most] }),
        );
        const own = rows.slice(0, 2);
        const field = fieldOf({
          content: over(
            water,
            own.map(({ now }, at) => [shelf[at]!, now]),
          ),
          ...{ materials: [water, ...shelf.slice(0, 2)], candidates: shelf },
          ...{ law: NO_LAW, onDay: '2026-11-28', currency: 'EUR' },
          wish: reformulateWish.parse({
            costAtMost: own.reduce((sum, { now, cost }) => sum + (now * cost) / 100, 0) * cheaper,
            originAtLeast: origin,
            withoutSubstances: barred ? ['M0'] : [],
            groupsWithin: 60,
          }),
        });
        const bounds = await boundsOf(field, { cuts: [] }, solveWithHighs);
        const nearest = await least(field);
        // No bound at all says that nothing meets what is asked.
        if (bounds === null) expect(nearest).toBe(Infinity);
        if (bounds === null) return;
        expect(bounds.all).toBeLessThanOrEqual(nearest + 1e-6);
        for (const player of field.players.filter((one) => !isOwn(one))) {
          const bound = bounds.using.get(player.y)!;
          expect(bound).toBeGreaterThanOrEqual(bounds.all - 1e-9);
          expect(bound, player.material.tradeName).toBeLessThanOrEqual((await least(field, player)) + 1e-6);
        }
      }),
      { numRuns: 8 },
    );
  });
});
