import { Problem } from '@core/problems/problem';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { mediaTypeOf } from './media-type';

async function keep(context: ServiceContext, bytes: Uint8Array) {
  const mediaType = mediaTypeOf(bytes);
  if (!mediaType)
    throw new Problem({
      code: 'invalid-input',
      title: 'Stillroom keeps PDF documents and PNG, JPEG or WebP pictures.',
      advice: 'Save the file as one of these and add it again.',
    });
  const sha256 = await context.session.current().library.attachments.put(bytes);
  return { sha256, mediaType, bytes: bytes.length };
}

/** Photos and documents, kept under the SHA-256 of their bytes. */
export function attachmentsRoutes(context: ServiceContext) {
  return new Hono()
    .post('/', async (c) => c.json(await keep(context, new Uint8Array(await c.req.arrayBuffer())), 201))
    .get('/:sha256', async (c) => {
      const bytes = await context.session.current().library.attachments.get(c.req.param('sha256'));
      const type = mediaTypeOf(bytes) ?? 'application/octet-stream';
      return c.body(new Uint8Array(bytes), 200, {
        'Content-Type': type,
        'Cache-Control': 'private, max-age=31536000, immutable',
      });
    });
}
