import type { MiddlewareHandler } from 'hono';
import { securityHeaders, type DevelopmentServer } from './content-policy';

/** Puts the security headers on whatever the handlers behind it answer, refusals and errors included. */
export function withSecurityHeaders(development?: DevelopmentServer): MiddlewareHandler {
  const headers = Object.entries(securityHeaders(development));
  return async (c, next) => {
    await next();
    for (const [name, value] of headers) c.res.headers.set(name, value);
    // What a maker enters is theirs: API answers stay out of the browser's disk cache.
    if (c.req.path.startsWith('/api/') && !c.res.headers.has('Cache-Control')) {
      c.res.headers.set('Cache-Control', 'no-store');
    }
  };
}
