import { settings } from '@core/settings/settings';
import { readSettings, writeSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';

export function settingsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(readSettings(context.session.current().library)))
    .put('/', validBody(settings), (c) => {
      const changed = c.req.valid('json');
      context.session.current().library.transaction((tx) => writeSettings(tx, changed));
      return c.json(changed);
    });
}
