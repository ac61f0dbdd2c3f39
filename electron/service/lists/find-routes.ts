import { FOUND_KINDS } from '@core/lists/found';
import { LONGEST_TEXT } from '@core/lists/query';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';

/** As many records as the finder shows at once. */
const MOST_FOUND = 24;

/**
 * `?text=…` with `kinds=…` (several; all when left out) and `limit=…`: the records that are meant, nearest first.
 * An address may be typed: what is not understood counts as left out.
 */
export function findRoutes(context: ServiceContext) {
  return new Hono().get('/', async (c) => {
    const params = new URL(c.req.url).searchParams;
    const asked = new Set(params.getAll('kinds'));
    const kinds = asked.size > 0 ? FOUND_KINDS.filter((kind) => asked.has(kind)) : FOUND_KINDS;
    const limit = Math.trunc(Number(params.get('limit') ?? MOST_FOUND));
    const text = params.get('text')?.slice(0, LONGEST_TEXT) ?? '';
    const most = limit > 0 ? Math.min(limit, MOST_FOUND * 4) : MOST_FOUND;
    return c.json(await context.session.current().lists.find(text, kinds, most));
  });
}
