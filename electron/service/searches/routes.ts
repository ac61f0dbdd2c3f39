import { Problem } from '@core/problems/problem';
import { fold } from '@core/quantities/fold';
import { nameText } from '@core/quantities/text';
import { deleteSearch, insertSearch, listSearches, type SavedSearch } from '@db/searches/searches';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';

const wanted = z.object({ name: nameText('the search’s name', 80), query: z.string().max(2000) });

/** Two of one name could not be told apart in the list. */
function refuseSecond(name: string, known: SavedSearch[]): void {
  if (!known.some((search) => fold(search.name) === fold(name))) return;
  throw new Problem({
    code: 'conflict',
    title: `There is already a search called ${name}.`,
    advice: 'Give it another name, or take the earlier one away first.',
  });
}

export function searchesRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(listSearches(context.session.current().library)))
    .post('/', validBody(wanted), (c) => {
      const { library } = context.session.current();
      const added: SavedSearch = { id: context.newId(), ...c.req.valid('json') };
      refuseSecond(added.name, listSearches(library));
      library.transaction((tx) => insertSearch(tx, added, context.now().toISOString()));
      return c.json(added, 201);
    })
    .delete('/:id', (c) => {
      context.session.current().library.transaction((tx) => deleteSearch(tx, c.req.param('id')));
      return c.body(null, 204);
    });
}
