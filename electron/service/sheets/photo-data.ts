import type { OpenLibrary } from '@db/library/open-library';
import { mediaTypeOf } from '../attachments/media-type';

/** The formats that a PDF can hold as they are. */
const PRINTABLE = ['image/png', 'image/jpeg'];

/** A photo as a data URL for the printer; null for none, or for one that a PDF cannot hold. */
export async function photoDataUrl(library: OpenLibrary, sha256: string | null): Promise<string | null> {
  if (sha256 === null) return null;
  const bytes = await library.attachments.get(sha256);
  const type = mediaTypeOf(bytes);
  if (!type || !PRINTABLE.includes(type)) return null;
  return `data:${type};base64,${Buffer.from(bytes).toString('base64')}`;
}
