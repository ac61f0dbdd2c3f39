import { refusalResponse } from '@service/security/refusal';
import type { MiddlewareHandler } from 'hono';
import { isOurs, ORIGIN } from './origin';

/** Lets only the window's own page through: our host, and our origin where the browser names one. */
export function windowGate(): MiddlewareHandler {
  return async (c, next) => {
    const origin = c.req.header('origin');
    if (!isOurs(c.req.url) || (origin !== undefined && origin !== ORIGIN)) {
      const title = 'This request did not come from Stillroom’s window.';
      return refusalResponse(
        { status: 403, code: 'not-allowed', title, advice: 'Use Stillroom’s own window.' },
        c.req.path,
      );
    }
    await next();
  };
}
