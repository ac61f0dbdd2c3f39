import { Problem } from '@core/problems/problem';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { mediaTypeOf } from './media-type';
import { readPicture } from './pictures/read-picture';

/**
 * A damaged picture is told of while its maker still has the original at hand.
 * @returns why a sheet cannot show it, or null
 */
async function refuseDamaged(
  bytes: Uint8Array,
  type: Parameters<typeof readPicture>[1],
): Promise<string | null> {
  const picture = await readPicture(bytes, type);
  if (!picture)
    throw new Problem({
      code: 'invalid-input',
      title: 'This picture is damaged or cut short.',
      advice:
        'Copy it again from where it came from, or open it in a picture viewer, save it as PNG or JPEG and add that. Nothing was changed.',
    });
  if (picture.tooLarge)
    throw new Problem({
      code: 'too-large',
      title: 'This picture has too many pixels to print.',
      advice: 'Save a copy of 2,000 pixels on its longer side and add that. Nothing was changed.',
    });
  return picture.unprintable || null;
}

async function keep(context: ServiceContext, bytes: Uint8Array) {
  const mediaType = mediaTypeOf(bytes);
  if (!mediaType)
    throw new Problem({
      code: 'invalid-input',
      title: 'Stillroom keeps PDF documents and PNG, JPEG or WebP pictures.',
      advice: 'Save the file as one of these and add it again.',
    });
  /** Kept all the same: it may be a document. Whoever adds it as a photo is told. */
  const cannotPrint = mediaType === 'application/pdf' ? null : await refuseDamaged(bytes, mediaType);
  const sha256 = await context.session.current().library.attachments.put(bytes);
  return { sha256, mediaType, bytes: bytes.length, cannotPrint };
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
