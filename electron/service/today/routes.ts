import { readAttention } from '@db/today/attention';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { unfinishedDrafts } from './unfinished';

/** A price is asked for anew after a year; common practice, no source. */
const PRICE_YEARS = 1;

/** What of the library needs a look today. */
export function todayRoutes(context: ServiceContext) {
  const { session } = context;
  return new Hono()
    .get('/', (c) => {
      const from = context.now();
      from.setUTCFullYear(from.getUTCFullYear() - PRICE_YEARS);
      return c.json(readAttention(session.current().library, from.toISOString().slice(0, 10)));
    })
    .get('/unfinished', async (c) => {
      const onDay = context.now().toISOString().slice(0, 10);
      return c.json(await unfinishedDrafts(session.current().library, onDay));
    });
}
