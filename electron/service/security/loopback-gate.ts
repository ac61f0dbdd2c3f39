import { createHash, timingSafeEqual } from 'node:crypto';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { refusalResponse, type Refusal } from './refusal';

export interface LoopbackGate {
  /** The port that the host listens on; asked at each request, as it is chosen only when listening begins. */
  port: () => number;
  /** This run's key, which only the printed address carries. */
  key: string;
}

const SAFE_METHODS = new Set(['GET', 'HEAD']);

/** Cookies do not tell ports apart: the port is in the name, so that two libraries can be open side by side. */
export function keyCookieName(port: number): string {
  return `stillroom-${port}`;
}

function sameKey(given: string | undefined, key: string): boolean {
  if (given === undefined) return false;
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(key));
}

/** Refuses what our own page in a browser cannot have sent: another host name, another origin, another site. */
function foreign(c: Context, port: number): Refusal | undefined {
  const address = `127.0.0.1:${port}`;
  const advice = `Open the address that Stillroom printed when it started. It begins with http://${address}/`;
  if (c.req.header('host') !== address) {
    return { status: 403, code: 'not-allowed', title: 'This is not an address of Stillroom.', advice };
  }
  const origin = c.req.header('origin');
  const unsafe = !SAFE_METHODS.has(c.req.method);
  if (origin === undefined ? unsafe : origin !== `http://${address}`) {
    return { status: 403, code: 'not-allowed', title: 'This request came from another site.', advice };
  }
  const site = c.req.header('sec-fetch-site');
  if (site !== undefined && site !== 'same-origin' && !(site === 'none' && !unsafe)) {
    return { status: 403, code: 'not-allowed', title: 'This request came from another site.', advice };
  }
  return undefined;
}

const WRONG_KEY: Refusal = {
  status: 403,
  code: 'not-allowed',
  title: 'This page needs the key of the running Stillroom.',
  advice: 'Open the whole address that Stillroom printed when it started, with the part after “?key=”.',
};

/**
 * Lets only the maker's own browser through: exact Host (so that a look-alike name that resolves to this machine
 * gets nothing), exact Origin, and this run's key. The first visit, `/?key=…`, changes the key for a cookie that
 * scripts cannot read and that other sites cannot send. There is no CORS, on purpose.
 */
export function loopbackGate(gate: LoopbackGate): MiddlewareHandler {
  return async (c, next) => {
    const port = gate.port();
    const refusal = foreign(c, port);
    if (refusal) return refusalResponse(refusal, c.req.path);
    const given = c.req.path === '/' ? c.req.query('key') : undefined;
    if (given !== undefined && SAFE_METHODS.has(c.req.method)) {
      if (!sameKey(given, gate.key)) return refusalResponse(WRONG_KEY, c.req.path);
      setCookie(c, keyCookieName(port), gate.key, { httpOnly: true, sameSite: 'Strict', path: '/' });
      return c.redirect('/', 303);
    }
    if (!sameKey(getCookie(c, keyCookieName(port)), gate.key)) return refusalResponse(WRONG_KEY, c.req.path);
    await next();
  };
}
