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

const json = bodyLimit({
  maxSize: LARGEST_JSON,
  onError: () =>
    refuse('This is more than 2 MB of text.', 'Shorten the longest note, or divide it. Nothing was changed.'),
});

/** Refuses a body that is too large before it is read to its end: 25 MB for attachments, 2 MB for all else. */
export function limitBodies(): MiddlewareHandler {
  return (c, next) => (c.req.path === '/api/attachments' ? attachment(c, next) : json(c, next));
}
