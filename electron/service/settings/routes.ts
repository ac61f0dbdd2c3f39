import { settings, type Settings } from '@core/settings/settings';
import { readSettings, writeSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { invalidInput, validBody } from '../problems/validated';

/** Changes some settings and leaves the others, so that two changes on their way cannot undo each other. */
function changeSettings(context: ServiceContext, part: Record<string, unknown>): Settings {
  const { library } = context.session.current();
  const wanted = settings.safeParse({ ...readSettings(library), ...part });
  if (!wanted.success) throw invalidInput(wanted.error);
  library.transaction((tx) => writeSettings(tx, wanted.data));
  return wanted.data;
}

export function settingsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(readSettings(context.session.current().library)))
    .patch('/', validBody(z.record(z.string(), z.unknown())), (c) =>
      c.json(changeSettings(context, c.req.valid('json'))),
    );
}
