import { librarySchema } from '@core/exchange/schema';
import { packRequest } from '@core/packs/pack';
import { readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { writeExport } from './job';
import { makePack, wholeLibrary } from './pack';
import { NOUN_TABLES } from './noun-tables';
import { tableRequest, tablesOf } from './table';

const MEDIA_TYPES = {
  csv: 'text/csv;charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
} as const;

/** What leaves the library as a file. */
export function exportsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/tables', (c) =>
      c.json(
        Object.fromEntries(
          Object.entries(NOUN_TABLES).map(([noun, tables]) => [noun, tables.map(({ name }) => name)]),
        ),
      ),
    )
    .post('/table', validBody(tableRequest), async (c) => {
      const request = c.req.valid('json');
      const { languageRegion: region } = readSettings(context.session.current().library);
      const job = {
        kind: 'table' as const,
        tables: await tablesOf(context, request),
        format: request.format,
        region,
      };
      const bytes = await (context.exporting?.run(job, c.req.raw.signal) ?? writeExport(job));
      return c.body(new Uint8Array(bytes), 200, { 'Content-Type': MEDIA_TYPES[request.format] });
    })
    .get('/schema', (c) => c.json(librarySchema()))
    .post('/library', async (c) => {
      const bytes = await wholeLibrary(context, c.req.raw.signal);
      return c.body(new Uint8Array(bytes), 200, { 'Content-Type': 'application/json' });
    })
    .post('/pack', validBody(packRequest), async (c) => {
      const request = c.req.valid('json');
      const bytes = await makePack(context, request, c.req.raw.signal);
      const type = request.format === 'pack' ? 'application/zip' : 'application/json';
      return c.body(new Uint8Array(bytes), 200, { 'Content-Type': type });
    });
}
