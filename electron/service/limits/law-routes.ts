import { readLaw } from '@db/limits/law';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { addStarterSet } from './starter-set';

/** The library's law as a whole, and the examples to begin with. */
export function lawRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(readLaw(context.session.current().library)))
    .post('/starter-set', (c) => c.json(addStarterSet(context), 201));
}
