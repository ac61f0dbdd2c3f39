import type { PictureType } from '@core/materials/document';
import { lettersAt, viewOf } from './picture';

/* What a camera writes beside the picture (where and when it was taken, with what, a preview) is left out. */

// Markers of ITU-T T.81, table B.1 (from memory).
const END = 0xd9;
const SCAN = 0xda;
/** Frames, tables, scans and what counts them: all that is drawn from. */
const isDrawn = (marker: number): boolean => marker >= 0xc0 && marker <= 0xdf;
const EXIF = 'Exif';
/** The tag that says how the picture is turned (Exif 2.32, 4.6.4, from memory); 1 is upright. */
const ORIENTATION = 0x0112;
const UPRIGHT = 1;
const MOST_TAGS = 200;

const joined = (pieces: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(pieces));

/** How a picture is turned, by its Exif data (TIFF 6.0, section 2), from 1 to 8; upright where that cannot be told. */
function orientationIn(tiff: Uint8Array): number {
  const view = viewOf(tiff);
  if (tiff.length < 14) return UPRIGHT;
  const little = view.getUint16(0) === 0x4949;
  const directory = view.getUint32(4, little);
  if (directory + 2 > tiff.length) return UPRIGHT;
  const tags = Math.min(view.getUint16(directory, little), MOST_TAGS);
  for (let tag = 0; tag < tags; tag += 1) {
    const at = directory + 2 + 12 * tag;
    if (at + 12 > tiff.length) return UPRIGHT;
    if (view.getUint16(at, little) !== ORIENTATION) continue;
    const turned = view.getUint16(at + 8, little);
    return turned >= 1 && turned <= 8 ? turned : UPRIGHT;
  }
  return UPRIGHT;
}

/** Exif data that says how the picture is turned, and nothing else. */
function exifOf(orientation: number): Uint8Array {
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0];
  const body = [...Buffer.from(`${EXIF}\0\0`, 'latin1'), ...tiff, 0, 0, 0, 0];
  const length = body.length + 2;
  return Uint8Array.from([0xff, 0xe1, length >> 8, length & 0xff, ...body]);
}

/** Of what programs write beside a JPEG only its colours count: JFIF, the colour profile, how it is coded. */
function isOfColour(marker: number, segment: Uint8Array): boolean {
  if (marker === 0xe0) return lettersAt(segment, 4) === 'JFIF';
  if (marker === 0xe2) return Buffer.from(segment.subarray(4, 15)).toString('latin1') === 'ICC_PROFILE';
  return marker === 0xee;
}

/** Where the data of a scan ends: the next mark that is neither a zero nor a restart (T.81, B.1.1). */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    const next = bytes[at + 1] ?? 0;
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

function jpegWithout(bytes: Uint8Array): Uint8Array {
  const view = viewOf(bytes);
  const kept: Uint8Array[] = [];
  let orientation = UPRIGHT;
  let at = 2;
  while (at + 4 <= bytes.length) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === END) break;
    if (marker === 0xff || (marker >= 0xd0 && marker <= 0xd7) || marker === 0x01) {
      at += marker === 0xff ? 1 : 2;
      continue;
    }
    const end = at + 2 + view.getUint16(at + 2);
    const segment = bytes.subarray(at, end);
    if (marker === 0xe1 && lettersAt(segment, 4) === EXIF && orientation === UPRIGHT)
      orientation = orientationIn(segment.subarray(10));
    const stop = marker === SCAN ? endOfScan(bytes, end) : end;
    if (isDrawn(marker) || isOfColour(marker, segment)) kept.push(bytes.subarray(at, stop));
    at = stop;
  }
  // JFIF data, where there is some, comes first; the picture's turn behind it.
  const first = kept[0]?.[1] === 0xe0 ? 1 : 0;
  if (orientation !== UPRIGHT) kept.splice(first, 0, exifOf(orientation));
  return joined([bytes.subarray(0, 2), ...kept, Uint8Array.of(0xff, END)]);
}

/** Written notes, times and camera data of a PNG (third edition, 11.3, from memory). */
const PNG_NOTES = ['tEXt', 'zTXt', 'iTXt', 'tIME', 'eXIf'];

function pngWithout(bytes: Uint8Array): Uint8Array {
  const view = viewOf(bytes);
  const kept: Uint8Array[] = [bytes.subarray(0, 8)];
  for (let at = 8; at + 12 <= bytes.length;) {
    const kind = lettersAt(bytes, at + 4);
    const end = at + 12 + view.getUint32(at);
    if (!PNG_NOTES.includes(kind)) kept.push(bytes.subarray(at, end));
    if (kind === 'IEND') break;
    at = end;
  }
  return joined(kept);
}

/** The flags of a WebP that has Exif or XMP data (RFC 9649, 2.7, from memory). */
const WEBP_NOTED = 0x08 | 0x04;

function webpWithout(bytes: Uint8Array): Uint8Array {
  const view = viewOf(bytes);
  const kept: Uint8Array[] = [];
  const end = Math.min(8 + view.getUint32(4, true), bytes.length);
  for (let at = 12; at + 8 <= end;) {
    const length = view.getUint32(at + 4, true);
    const next = at + 8 + length + (length % 2);
    const kind = lettersAt(bytes, at);
    if (kind !== 'EXIF' && kind !== 'XMP ') kept.push(bytes.slice(at, next));
    if (kind === 'VP8X') kept.at(-1)![8]! &= ~WEBP_NOTED;
    at = next;
  }
  const whole = joined([bytes.subarray(0, 12), ...kept]);
  viewOf(whole).setUint32(4, whole.length - 8, true);
  return whole;
}

/**
 * A picture without what was written beside it: place, time, camera, previews, comments. Its pixels, its colours and how
 * it is turned stay as they are.
 * @param bytes a whole picture of that type
 */
export function withoutMetadata(bytes: Uint8Array, type: PictureType): Uint8Array {
  if (type === 'image/jpeg') return jpegWithout(bytes);
  return type === 'image/png' ? pngWithout(bytes) : webpWithout(bytes);
}
