import type { Context, MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { frontDoor, lockedDoor } from './door';
import { refusalResponse, type Refusal } from './refusal';
import type { RunKeys } from './run-keys';

export interface LoopbackGate {
  /** The port that the host listens on; asked at each request, as it is chosen only when listening begins. */
  port: () => number;
  keys: RunKeys;
  /** Called when the key of an address was used. */
  opened?: () => void;
}

const SAFE_METHODS = new Set(['GET', 'HEAD']);
/** What the page of a locked door is drawn with: nothing of a maker's is in them. */
const OUTSIDE = new Set(['/door.css', '/icon.svg']);

/** Cookies do not tell ports apart: the port is in the name, so that two libraries can be open side by side. */
export function secretCookieName(port: number): string {
  return `stillroom-${port}`;
}

/** A visit to the front door by whoever holds a key: typed, or led there by the page that opens the browser. */
function isVisit(c: Context): boolean {
  const mode = c.req.header('sec-fetch-mode');
  return (
    c.req.path === '/' && c.req.query('key') !== undefined && (mode === undefined || mode === 'navigate')
  );
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
  const ours = site === undefined || site === 'same-origin' || (site === 'none' && !unsafe);
  if (!ours && !(isVisit(c) && !unsafe)) {
    return { status: 403, code: 'not-allowed', title: 'This request came from another site.', advice };
  }
  return undefined;
}

const LOCKED: Refusal = {
  status: 403,
  code: 'key-needed',
  title: 'Stillroom was started again, and needs its new address.',
  advice:
    'Open the address that Stillroom printed when it started, the part after “?key=” included, in this browser. ' +
    'This page then continues. An address works once: press Enter where Stillroom runs for another.',
};

function locked(path: string): Response {
  return path.startsWith('/api/') ? refusalResponse(LOCKED, path) : lockedDoor(LOCKED);
}

/**
 * Lets only the maker's own browser through: exact Host (so that a look-alike name that resolves to this machine
 * gets nothing), exact Origin, and a secret of this run. A visit to `/?key=…` changes the key, once, for a cookie that
 * scripts cannot read and that other sites cannot send. There is no CORS, on purpose.
 */
export function loopbackGate({ port, keys, opened }: LoopbackGate): MiddlewareHandler {
  return async (c, next) => {
    const cookie = secretCookieName(port());
    const refusal = foreign(c, port());
    if (refusal) return refusalResponse(refusal, c.req.path);
    const isIn = keys.knows(getCookie(c, cookie));
    const given = c.req.path === '/' ? c.req.query('key') : undefined;
    if (given !== undefined && c.req.method === 'GET') {
      const secret = keys.exchange(given);
      // Whoever is in already may use an old address, from the history say.
      if (secret === undefined) return isIn ? frontDoor(c) : locked(c.req.path);
      setCookie(c, cookie, secret, { httpOnly: true, sameSite: 'Strict', path: '/' });
      opened?.();
      return frontDoor(c);
    }
    const isOutside = OUTSIDE.has(c.req.path) && SAFE_METHODS.has(c.req.method);
    if (!isIn && !isOutside) return locked(c.req.path);
    await next();
  };
}
