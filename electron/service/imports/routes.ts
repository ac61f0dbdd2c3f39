import { SUBJECTS } from '@core/imports/subjects';
import { keyTarget, tableRow } from '@core/imports/table-row';
import { lineText } from '@core/quantities/text';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { Imports } from './imports';

/** So many rows are planned at a request: each such takes a few tens of milliseconds. */
const MOST_ROWS = 300;

const beginning = z.object({
  about: z.enum(SUBJECTS).default('materials'),
  key: keyTarget,
  file: lineText(200),
});
const some = z.object({ at: z.int().min(0).default(0), rows: z.array(tableRow).max(MOST_ROWS) });

/** Tables on their way in: nothing of them is in the library until it is taken in. */
export function importsRoutes(context: ServiceContext) {
  const imports = new Imports(context);
  return new Hono()
    .post('/', validBody(beginning), async (c) => {
      const { about, key, file } = c.req.valid('json');
      return c.json({ id: await imports.begin(about, key, file) }, 201);
    })
    .post('/:id/rows', validBody(some), async (c) => {
      const { at, rows } = c.req.valid('json');
      return c.json(await imports.plan(c.req.param('id'), at, rows));
    })
    .post('/:id/take-in', async (c) => c.json(await imports.takeIn(c.req.param('id'))))
    .post('/:id/take-back', async (c) => c.json(await imports.takeBack(c.req.param('id'))))
    .delete('/:id', async (c) => {
      await imports.end(c.req.param('id'));
      return c.body(null, 204);
    });
}
