import { Problem } from '@core/problems/problem';
import { fold } from '@core/quantities/fold';
import { savedSearch } from '@core/searches/search';
import { listSearches, searchRecords, type SavedSearch } from '@db/searches/searches';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { addRecord, removeRecord } from '../record/records';

/** Two of one name could not be told apart in the list. */
function refuseSecond(name: string, known: SavedSearch[]): void {
  if (!known.some((search) => fold(search.name) === fold(name))) return;
  throw new Problem({
    code: 'conflict',
    title: `There is already a search called ${name}.`,
    advice: 'Give it another name, or remove the earlier one first.',
  });
}

export function searchesRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(listSearches(context.session.current().library)))
    .post('/', validBody(savedSearch), (c) => {
      const wanted = c.req.valid('json');
      refuseSecond(wanted.name, listSearches(context.session.current().library));
      const { id, name, query } = addRecord(context, searchRecords, () => wanted);
      return c.json({ id, name, query }, 201);
    })
    .delete('/:id', (c) => {
      removeRecord(context, searchRecords, c.req.param('id'));
      return c.body(null, 204);
    });
}
