import type { PictureType } from '@core/materials/document';
import { readJpeg } from './jpeg';
import type { Picture, ReadPicture } from './picture';
import { readPng } from './png';
import { readWebp } from './webp';

const READERS: Record<PictureType, ReadPicture> = {
  'image/png': readPng,
  'image/jpeg': readJpeg,
  'image/webp': readWebp,
};

/** What a picture of that type is; null when it is damaged or cut short. */
export async function readPicture(bytes: Uint8Array, type: PictureType): Promise<Picture | null> {
  return READERS[type](bytes);
}
