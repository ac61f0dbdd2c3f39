import { alikePairs, type Likeness } from '@core/lookalikes/look-alikes';
import { inciWords } from '@core/materials/words';
import { Problem } from '@core/problems/problem';
import { id } from '@core/record/id';
import { readSketches } from '@db/lookalikes/sketches';
import { materials } from '@db/materials/materials';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { inPieces } from '../exports/in-pieces';
import { validBody } from '../problems/validated';
import { joinMaterials, takeJoinBack, type JoinWritten } from './join';

/** As many pairs as anybody looks through at a time. */
const MOST_SHOWN = 100;
const joining = z.object({ keep: id, other: id });

/** One of two materials that look alike, as much as tells it from the other. */
export interface AlikeMaterial {
  id: string;
  tradeName: string;
  code: string;
  inci: string;
  supplier: string;
  /** In how many formulas it stands. */
  uses: number;
}

export interface ShownPair {
  by: Likeness[];
  both: [AlikeMaterial, AlikeMaterial];
}

/** Materials that look alike, and what makes one of them. */
export function lookAlikeRoutes(context: ServiceContext) {
  let last: { library: string; written: JoinWritten } | null = null;
  return new Hono()
    .get('/', async (c) => {
      const { library } = context.session.current();
      const pairs = await inPieces(alikePairs(readSketches(library)));
      const shown = pairs.slice(0, MOST_SHOWN);
      const read = materials.readMany(
        library,
        shown.flatMap(({ ids }) => [...ids]),
      );
      const uses = new Map(
        library
          .all<{ id: string; n: number }>(
            'SELECT material_id AS id, count(DISTINCT formula_id) AS n FROM formula_line GROUP BY material_id',
          )
          .map((row) => [row.id, row.n]),
      );
      const one = (materialId: string): AlikeMaterial => {
        const found = read.get(materialId)!;
        const { tradeName, code } = found;
        const supplier = found.offers.at(-1)?.supplier ?? '';
        return {
          id: materialId,
          tradeName,
          code,
          inci: inciWords(found),
          supplier,
          uses: uses.get(materialId) ?? 0,
        };
      };
      return c.json({
        total: pairs.length,
        pairs: shown.map(({ ids, by }): ShownPair => ({ by, both: [one(ids[0]), one(ids[1])] })),
      });
    })
    .post('/join', validBody(joining), (c) => {
      const { keep, other } = c.req.valid('json');
      const { done, written } = joinMaterials(context, keep, other);
      last = { library: context.session.current().library.id, written };
      return c.json(done);
    })
    .post('/take-back', (c) => {
      if (last?.library !== context.session.current().library.id)
        throw new Problem({
          code: 'not-found',
          title: 'There is nothing here to undo.',
          advice: 'Correct single materials from their history.',
        });
      takeJoinBack(context, last.written);
      last = null;
      return c.body(null, 204);
    });
}
