import { same } from '@core/record/same';
import { SETTINGS } from '@core/settings/noun';
import { settings, type Settings } from '@core/settings/settings';
import { changeSettings, readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { changedMeanwhile } from '../problems/found';
import { invalidInput, validBody } from '../problems/validated';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';

const edit = z.object({ over: z.unknown(), content: settings });

/** Takes the settings as a whole, if they are still those that the maker saw. @throws Problem conflict otherwise */
function replace(context: ServiceContext, { over, content }: z.infer<typeof edit>): Settings {
  const now = readSettings(context.session.current().library);
  if (!same(over, now)) throw changedMeanwhile('library’s settings');
  return change(context, content);
}

/** Changes some settings and leaves the others, so that two changes on their way cannot undo each other. */
function change(context: ServiceContext, part: Record<string, unknown>): Settings {
  const { library } = context.session.current();
  const wanted = settings.safeParse({ ...readSettings(library), ...part });
  if (!wanted.success) throw invalidInput(wanted.error);
  const doing = doingNow(context);
  library.transaction((tx) => changeSettings(tx, wanted.data, doing));
  tellChange(context, SETTINGS.kind, { id: SETTINGS.kind, revision: 1 });
  return wanted.data;
}

export function settingsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(readSettings(context.session.current().library)))
    .put('/', validBody(edit), (c) => c.json(replace(context, c.req.valid('json'))))
    .patch('/', validBody(z.record(z.string(), z.unknown())), (c) =>
      c.json(change(context, c.req.valid('json'))),
    );
}
