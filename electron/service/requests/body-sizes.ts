import { Problem } from '@core/problems/problem';
import { bodyLimit } from 'hono/body-limit';
import type { MiddlewareHandler } from 'hono';

const MB = 1024 * 1024;
/** A photo or document. */
const LARGEST_ATTACHMENT = 25 * MB;
/** All else is JSON, which holds the process while it is read: a formula of 1,000 lines takes a tenth of this. */
const LARGEST_JSON = 2 * MB;

function refuse(title: string, advice: string): never {
  throw new Problem({ code: 'too-large', title, advice });
}

const attachment = bodyLimit({
  maxSize: LARGEST_ATTACHMENT,
  onError: () =>
    refuse(
      'This is more than 25 MB.',
      'Attach a smaller file: a photo of 2,000 pixels or a scan at 200 dpi is enough.',
    ),
});

/** A pack with its pictures, or a library as a document. */
const LARGEST_FILE = 600 * MB;
const file = bodyLimit({
  maxSize: LARGEST_FILE,
  onError: () =>
    refuse('This file holds more than 600 MB.', 'Ask for a pack of fewer records. Nothing was changed.'),
});

const json = bodyLimit({
  maxSize: LARGEST_JSON,
  onError: () =>
    refuse('This is more than 2 MB of text.', 'Shorten the longest note, or divide it. Nothing was changed.'),
});

/** Refuses a body that is too large before it is read to its end: 25 MB for attachments, 600 MB for packs, 2 MB for all else. */
export function limitBodies(): MiddlewareHandler {
  return (c, next) => {
    if (c.req.path === '/api/attachments') return attachment(c, next);
    return c.req.path === '/api/meetings/file' ? file(c, next) : json(c, next);
  };
}
