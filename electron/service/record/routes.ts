import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { deletedOnes, historyOf, restoreDeleted, stateAt } from './history';

/** What every record remembers, whatever its noun: its states, who left it so, and those that were deleted. */
export function recordRoutes(context: ServiceContext) {
  return new Hono()
    .get('/deleted', (c) => c.json(deletedOnes(context)))
    .post('/deleted/:kind/:id/bring-back', (c) => {
      const { id } = restoreDeleted(context, c.req.param('kind'), c.req.param('id'));
      return c.json({ id }, 201);
    })
    .get('/:kind/:id/history', (c) => c.json(historyOf(context, c.req.param('kind'), c.req.param('id'))))
    .get('/:kind/:id/history/:n', (c) =>
      c.json(
        stateAt(context, c.req.param('kind'), c.req.param('id'), Number(c.req.param('n'))) as Record<
          string,
          unknown
        >,
      ),
    );
}
