import type { Material } from '@core/materials/material';
import { Problem } from '@core/problems/problem';
import type { SheetPhoto } from '@core/sheets/photo';
import type { OpenLibrary } from '@db/library/open-library';
import { mediaTypeOf } from '../attachments/media-type';
import { readPicture } from '../attachments/pictures/read-picture';

/**
 * What the photos of one sheet may take together, in bytes of their files and, of a PNG, also of its pixels, which are
 * unpacked to be printed. 200 photos as Stillroom makes them take half of it.
 */
const MOST_OF_A_SHEET = 192 * 1024 * 1024;
const TOO_MUCH: SheetPhoto = {
  cannotPrint: 'the photos of this sheet are too large together; print fewer at once or add smaller ones',
};

/** What is left of that for the photos of one sheet. */
interface Room {
  left: number;
}

const DAMAGED: SheetPhoto = { cannotPrint: 'its file is damaged; add it again' };

/** A photo for the printer, or why it cannot be printed: a sheet never fails for its photo. Null for none. */
export async function sheetPhoto(
  library: OpenLibrary,
  sha256: string | null,
  room: Room = { left: MOST_OF_A_SHEET },
): Promise<SheetPhoto | null> {
  if (sha256 === null) return null;
  let bytes: Uint8Array;
  try {
    bytes = await library.attachments.get(sha256);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    if (error.code === 'library-damaged') return DAMAGED;
    return { cannotPrint: 'its file cannot be read; add it again' };
  }
  room.left -= bytes.length;
  if (room.left < 0) return TOO_MUCH;
  const type = mediaTypeOf(bytes);
  if (!type || type === 'application/pdf') return { cannotPrint: 'it is not a picture' };
  const picture = await readPicture(bytes, type);
  if (!picture) return DAMAGED;
  if (picture.tooLarge) return { cannotPrint: 'it has too many pixels; add a smaller one' };
  room.left -= picture.unpacked;
  if (room.left < 0) return TOO_MUCH;
  if (picture.unprintable) return { cannotPrint: picture.unprintable };
  return { dataUrl: `data:${type};base64,${Buffer.from(bytes).toString('base64')}` };
}

/** The photos of many materials, one read after the other, by material; those without one are left out. */
export async function sheetPhotos(
  library: OpenLibrary,
  materials: readonly Pick<Material, 'id' | 'photo'>[],
): Promise<Record<string, SheetPhoto>> {
  const photos: Record<string, SheetPhoto> = {};
  const room: Room = { left: MOST_OF_A_SHEET };
  for (const { id, photo: sha256 } of materials) {
    const photo = await sheetPhoto(library, sha256, room);
    if (photo) photos[id] = photo;
  }
  return photos;
}
