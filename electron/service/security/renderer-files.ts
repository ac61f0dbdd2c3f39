import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';
import type { Handler } from 'hono';
import { refusalResponse } from './refusal';

const CONTENT_TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.pfb': 'application/octet-stream',
  '.bcmap': 'application/octet-stream',
  '.icc': 'application/vnd.iccprofile',
  '.wasm': 'application/wasm',
};

/** The built page's files by address. A request can reach these and nothing else, whatever its path says. */
export function mapRendererFiles(folder: string): Map<string, string> {
  const files = new Map<string, string>();
  let entries;
  try {
    entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  } catch (error) {
    // Not built yet: the map stays empty, and a visit says so.
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return files;
    throw error;
  }
  for (const entry of entries) {
    if (!entry.isFile() || !(extname(entry.name) in CONTENT_TYPES)) continue;
    const file = join(entry.parentPath, entry.name);
    files.set('/' + relative(folder, file).split(sep).join('/'), file);
  }
  const index = files.get('/index.html');
  if (index) files.set('/', index);
  return files;
}

function addressOf(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

/**
 * Serves the built renderer. Reads (GET, HEAD) only; fixed content types; an unknown path is 404 and never the
 * index page, as the page's own routes live after `#`.
 */
export function rendererFiles(folder: string): Handler {
  const files = mapRendererFiles(folder);
  return async (c) => {
    const path = c.req.path;
    if (c.req.method !== 'GET' && c.req.method !== 'HEAD') {
      const title = 'Files of the page can only be read.';
      return refusalResponse({ status: 405, code: 'not-allowed', title, advice: 'Use GET.' }, path);
    }
    if (files.size === 0) {
      const advice = 'Stop Stillroom and run “npm start”, which builds it. Your library is not affected.';
      return refusalResponse(
        { status: 503, code: 'not-found', title: 'The page is not built.', advice },
        path,
      );
    }
    const address = addressOf(path);
    if (address === undefined) {
      const title = 'The address is malformed.';
      return refusalResponse({ status: 400, code: 'invalid-input', title, advice: 'Go back to “/”.' }, path);
    }
    const file = files.get(address);
    if (file === undefined) {
      const title = 'There is nothing at this address.';
      return refusalResponse({ status: 404, code: 'not-found', title, advice: 'Go back to “/”.' }, path);
    }
    const body = await readFile(file);
    return c.body(new Uint8Array(body), 200, {
      'Content-Type': CONTENT_TYPES[extname(file)] ?? 'application/octet-stream',
      // Built names carry a hash of the content; the index and what pdf.js loads by name do not.
      'Cache-Control': address.startsWith('/assets/') ? 'private, max-age=31536000, immutable' : 'no-cache',
    });
  };
}
