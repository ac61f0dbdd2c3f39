import { substanceContent } from '@core/substances/substance';
import { substanceRecords } from '@db/substances/substances';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { listPage } from '../lists/list-page';
import { validBody } from '../problems/validated';
import { addRecord, changeRecord, record, removeRecord } from '../record/records';

const edit = z.object({ revision: z.int(), content: substanceContent });

/** Substances: what compositions, limits and labels mean by a name. */
export function substancesRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await listPage(context, 'substances', c.req.url)))
    .post('/', validBody(substanceContent), (c) =>
      c.json(
        addRecord(context, substanceRecords, () => c.req.valid('json')),
        201,
      ),
    )
    .get('/:id', (c) => c.json(record(context, substanceRecords, c.req.param('id'))))
    .put('/:id', validBody(edit), (c) => {
      const { revision, content } = c.req.valid('json');
      return c.json(changeRecord(context, substanceRecords, c.req.param('id'), revision, () => content));
    })
    .delete('/:id', (c) => {
      removeRecord(context, substanceRecords, c.req.param('id'));
      return c.body(null, 204);
    });
}
