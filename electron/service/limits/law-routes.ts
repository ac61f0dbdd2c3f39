import type { Law } from '@core/limits/law';
import { readLimits } from '@db/limits/limits';
import { readSubstances } from '@db/substances/substances';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { addStarterSet } from './starter-set';

/** Everything that the checks and the label ask of substances and limits, at once. */
function lawOf(context: ServiceContext): Law {
  const { library } = context.session.current();
  return { substances: readSubstances(library), limits: readLimits(library) };
}

/** The library's law as a whole, and the examples to begin with. */
export function lawRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(lawOf(context)))
    .post('/starter-set', (c) => c.json(addStarterSet(context), 201));
}
