import type { Material } from '@core/materials/material';
import { Problem } from '@core/problems/problem';
import type { SheetPhoto } from '@core/sheets/photo';
import type { OpenLibrary } from '@db/library/open-library';
import { mediaTypeOf } from '../attachments/media-type';
import { readPicture } from '../attachments/pictures/read-picture';

const DAMAGED: SheetPhoto = { cannotPrint: 'its file is damaged; add it again' };

/** A photo for the printer, or why it cannot be printed: a sheet never fails for its photo. Null for none. */
export async function sheetPhoto(library: OpenLibrary, sha256: string | null): Promise<SheetPhoto | null> {
  if (sha256 === null) return null;
  let bytes: Uint8Array;
  try {
    bytes = await library.attachments.get(sha256);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    if (error.code === 'library-damaged') return DAMAGED;
    return { cannotPrint: 'its file cannot be read; add it again' };
  }
  const type = mediaTypeOf(bytes);
  if (!type || type === 'application/pdf') return { cannotPrint: 'it is not a picture' };
  const picture = await readPicture(bytes, type);
  if (!picture) return DAMAGED;
  if (picture.tooLarge) return { cannotPrint: 'it has too many pixels; add a smaller one' };
  if (picture.unprintable) return { cannotPrint: picture.unprintable };
  return { dataUrl: `data:${type};base64,${Buffer.from(bytes).toString('base64')}` };
}

/** The photos of many materials, one read after the other, by material; those without one are left out. */
export async function sheetPhotos(
  library: OpenLibrary,
  materials: readonly Pick<Material, 'id' | 'photo'>[],
): Promise<Record<string, SheetPhoto>> {
  const photos: Record<string, SheetPhoto> = {};
  for (const { id, photo: sha256 } of materials) {
    const photo = await sheetPhoto(library, sha256);
    if (photo) photos[id] = photo;
  }
  return photos;
}
