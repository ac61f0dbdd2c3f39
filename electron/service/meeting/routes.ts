import { RELATIONS } from '@core/merging/ancestry';
import { decisions } from '@core/merging/choice';
import { Problem } from '@core/problems/problem';
import { nameText } from '@core/quantities/text';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { validBody, validQuery } from '../problems/validated';
import { Meetings } from './meetings';

const MOST_ROWS = 200;

const folderChosen = z.object({ token: z.string().max(64) });
const backupChosen = z.object({ name: z.string().max(200) });
const fileNamed = z.object({ name: z.string().max(200).default('') });
const asked = z.object({
  decisions,
  relation: z.enum(RELATIONS).nullable(),
  offset: z.int().min(0),
  limit: z.int().min(0).max(MOST_ROWS),
});
const oneRecord = z.object({ key: z.string().max(120) });

/** Meetings with another library, a pack or a backup: what differs, what is decided, and the merge. */
export function meetingRoutes(context: ServiceContext) {
  const meetings = new Meetings(context);
  const chosenFolder = (token: string): string => {
    const folder = context.session.places.folder(token);
    if (folder !== undefined) return folder;
    throw new Problem({
      code: 'not-found',
      title: 'This folder is not known here.',
      advice: 'Choose it again.',
    });
  };
  return new Hono()
    .post('/library', validBody(folderChosen), async (c) =>
      c.json(await meetings.withLibrary(chosenFolder(c.req.valid('json').token), c.req.raw.signal), 201),
    )
    .post('/backup', validBody(backupChosen), async (c) =>
      c.json(await meetings.withBackup(c.req.valid('json').name, c.req.raw.signal), 201),
    )
    .post('/file', validQuery(fileNamed), async (c) => {
      const bytes = new Uint8Array(await c.req.arrayBuffer());
      return c.json(await meetings.withFile(bytes, c.req.valid('query').name, c.req.raw.signal), 201);
    })
    .post('/take-back', async (c) => {
      await meetings.takeBack();
      return c.body(null, 204);
    })
    .post('/:id/rows', validBody(asked), async (c) => {
      const { decisions: decided, ...ask } = c.req.valid('json');
      return c.json(await meetings.rows(c.req.param('id'), decided, ask));
    })
    .get('/:id/fields', validQuery(oneRecord), async (c) =>
      c.json(await meetings.fields(c.req.param('id'), c.req.valid('query').key)),
    )
    .post('/:id/apply', validBody(decisions), async (c) =>
      c.json(await meetings.apply(c.req.param('id'), c.req.valid('json'))),
    )
    .post('/:id/beside', validBody(z.object({ name: nameText('the library’s name', 80) })), async (c) => {
      await meetings.beside(c.req.param('id'), c.req.valid('json').name);
      return c.body(null, 204);
    })
    .delete('/:id', async (c) => {
      await meetings.end(c.req.param('id'));
      return c.body(null, 204);
    });
}
