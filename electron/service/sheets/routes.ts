import { sheetRequest } from '@core/sheets/requests';
import { readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { issueSheet } from './issue';
import type { SheetJob } from './job';
import { readSubject } from './kinds/all';
import { productFileZip, zipRequest } from './product-file-zip';

/** Prints in this process, where no worker is built; loaded only then, for the printer is slow to load. */
async function printHere(job: SheetJob): Promise<Uint8Array> {
  const { printSheet } = await import('./job');
  return printSheet(job);
}

/** Sheets as PDF. What is printed is read from the library here: a page only says of what. */
export function sheetsRoutes(context: ServiceContext) {
  const routes = new Hono().post('/product-file.zip', validBody(zipRequest), async (c) => {
    const { stream, fileName } = await productFileZip(context, c.req.valid('json'), c.req.raw.signal);
    return c.body(stream, 200, {
      'Content-Type': 'application/zip',
      'Content-Disposition': `attachment; filename="${fileName}"`,
    });
  });
  return routes.post('/', validBody(sheetRequest), async (c) => {
    const request = c.req.valid('json');
    const { library } = context.session.current();
    issueSheet(context, request);
    const { subject, fileName } = await readSubject(library, request);
    const stored = readSettings(library);
    const job: SheetJob = {
      subject,
      settings: { ...stored, paperSize: request.paperSize ?? stored.paperSize },
      printedAt: context.now().toISOString(),
      replaceUnprintable: request.replaceUnprintable,
    };
    const pdf = await (context.printing?.run(job, c.req.raw.signal) ?? printHere(job));
    return c.body(new Uint8Array(pdf), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="${fileName}"`,
    });
  });
}
