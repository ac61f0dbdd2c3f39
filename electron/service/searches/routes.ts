import { nameText } from '@core/quantities/text';
import { deleteSearch, insertSearch, listSearches, type SavedSearch } from '@db/searches/searches';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';

const wanted = z.object({ name: nameText('the search’s name', 80), query: z.string().max(2000) });

export function searchesRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(listSearches(context.session.current().library)))
    .post('/', validBody(wanted), (c) => {
      const added: SavedSearch = { id: context.newId(), ...c.req.valid('json') };
      context.session
        .current()
        .library.transaction((tx) => insertSearch(tx, added, context.now().toISOString()));
      return c.json(added, 201);
    })
    .delete('/:id', (c) => {
      context.session.current().library.transaction((tx) => deleteSearch(tx, c.req.param('id')));
      return c.body(null, 204);
    });
}
