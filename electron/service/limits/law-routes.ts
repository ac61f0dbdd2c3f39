import { readLaw } from '@db/limits/law';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';

/** The library's law as a whole, and the examples to begin with. */
export function lawRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(readLaw(context.session.current().library)))
    .post('/starter-set', async (c) => {
      // A host that starts needs none of the examples.
      const { addStarterSet } = await import('./starter-set');
      return c.json(addStarterSet(context), 201);
    });
}
