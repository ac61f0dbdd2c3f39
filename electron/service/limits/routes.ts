import { limitContent } from '@core/limits/limit';
import { limitRecords } from '@db/limits/limits';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { listPage } from '../lists/list-page';
import { validBody } from '../problems/validated';
import { addRecord, changeRecord, record, removeRecord } from '../record/records';

const edit = z.object({ revision: z.int(), content: limitContent });

/** Limits of law and of advice, as the library holds them. */
export function limitsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await listPage(context, 'limits', c.req.url)))
    .post('/', validBody(limitContent), (c) =>
      c.json(
        addRecord(context, limitRecords, () => c.req.valid('json')),
        201,
      ),
    )
    .get('/:id', (c) => c.json(record(context, limitRecords, c.req.param('id'))))
    .put('/:id', validBody(edit), (c) => {
      const { revision, content } = c.req.valid('json');
      return c.json(changeRecord(context, limitRecords, c.req.param('id'), revision, () => content));
    })
    .delete('/:id', (c) => {
      removeRecord(context, limitRecords, c.req.param('id'));
      return c.body(null, 204);
    });
}
