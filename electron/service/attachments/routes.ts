import { isPicture } from '@core/materials/document';
import { Problem } from '@core/problems/problem';
import { sha256Of } from '@db/library/file/whole-file';
import { attachmentsInUse } from '@db/record/attachments-in-use';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { mediaTypeOf } from './media-type';
import { readPicture } from './pictures/read-picture';
import { withoutMetadata } from './pictures/without-metadata';

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

/** Whether a record shows the file of that hash: then those very bytes are asked for. */
function isShown({ session }: ServiceContext, sha256: string): boolean {
  return attachmentsInUse(session.current().library).some((one) => one.sha256 === sha256);
}

async function keep(context: ServiceContext, bytes: Uint8Array) {
  if (bytes.length === 0)
    throw new Problem({
      code: 'invalid-input',
      title: 'This file is empty.',
      advice: 'Choose another one. Nothing was changed.',
    });
  const shown = mediaTypeOf(bytes);
  const mediaType = shown ?? 'application/octet-stream';
  /** Kept all the same: it may be a document. Whoever adds it as a photo is told. */
  const cannotPrint = shown && isPicture(shown) ? await refuseDamaged(bytes, shown) : null;
  const bare = shown && isPicture(shown) ? withoutMetadata(bytes, shown) : bytes;
  // One that was kept before, with all that a camera writes, is mended by its like alone.
  const kept = bare.length !== bytes.length && isShown(context, sha256Of(bytes)) ? bytes : bare;
  const sha256 = await context.session.current().library.attachments.put(kept);
  return { sha256, mediaType, bytes: kept.length, cannotPrint };
}

/** Nothing of another kind is ever shown by a browser: whatever it holds, such as a script, it is only saved. */
function saved(name: string): Record<string, string> {
  const called = encodeURIComponent(name.replace(/[/\\]/g, ' ')).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  return {
    'Content-Type': 'application/octet-stream',
    'Content-Disposition': called === '' ? 'attachment' : `attachment; filename*=UTF-8''${called}`,
  };
}

/** Photos, documents and any other file, kept under the SHA-256 of their bytes. */
export function attachmentsRoutes(context: ServiceContext) {
  return new Hono()
    .post('/', async (c) => c.json(await keep(context, new Uint8Array(await c.req.arrayBuffer())), 201))
    .get('/:sha256', async (c) => {
      const bytes = await context.session.current().library.attachments.get(c.req.param('sha256'));
      const type = mediaTypeOf(bytes);
      return c.body(new Uint8Array(bytes), 200, {
        ...(type ? { 'Content-Type': type } : saved(c.req.query('name') ?? '')),
        'Cache-Control': 'private, max-age=31536000, immutable',
      });
    });
}
