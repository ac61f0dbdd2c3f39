import type { MiddlewareHandler } from 'hono';
import type { ServiceContext } from '../context';

/** What is answered while a library is being opened: how far that is, and what is told to every window. */
const AT_ONCE = new Set(['/api/library', '/api/changes']);

/** Lets all that is asked of a library wait until the one that is being opened is there, or is known not to come. */
export function waitForLibrary({ session }: ServiceContext): MiddlewareHandler {
  return async (c, next) => {
    if (c.req.method !== 'GET' || !AT_ONCE.has(c.req.path)) await session.ready();
    await next();
  };
}
