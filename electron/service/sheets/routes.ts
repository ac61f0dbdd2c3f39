import { sheetRequest } from '@core/sheets/requests';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { composeSheet } from './compose-sheet';
import { renderSheet } from './render';

/** Sheets as PDF. What is printed is read from the library here: a page only says of what. */
export function sheetsRoutes(context: ServiceContext) {
  return new Hono().post('/', validBody(sheetRequest), async (c) => {
    const request = c.req.valid('json');
    const now = context.now();
    const { definition, fileName } = await composeSheet(context, request, now);
    const pdf = await renderSheet(definition, { now, replaceUnprintable: request.replaceUnprintable });
    return c.body(new Uint8Array(pdf), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="${fileName}"`,
    });
  });
}
