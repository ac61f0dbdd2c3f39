import { hasTooManyPixels, lettersAt, viewOf, type Picture } from './picture';

const WEBP = 'a PDF cannot hold WebP; add the photo as PNG or JPEG';

interface Size {
  width: number;
  height: number;
}

const low = (view: DataView, at: number): number => view.getUint16(at, true) & 0x3fff;
const canvas = (view: DataView, at: number): number =>
  view.getUint16(at, true) + view.getUint8(at + 2) * 0x10000 + 1;

/** The size in the head of a chunk (RFC 9649, sections 2.5 to 2.7, from memory); null when it is not one. */
function sizeIn(kind: string, view: DataView, at: number, length: number): Size | null {
  if (length < (kind === 'VP8L' ? 5 : 10)) return null;
  if (kind === 'VP8X') return { width: canvas(view, at + 4), height: canvas(view, at + 7) };
  if (kind === 'VP8 ') return { width: low(view, at + 6), height: low(view, at + 8) };
  if (kind !== 'VP8L' || view.getUint8(at) !== 0x2f) return null;
  const bits = view.getUint32(at + 1, true);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

/** Walks a WebP's chunks: all of them there, a size, and picture data. */
export function readWebp(bytes: Uint8Array): Picture | null {
  const view = viewOf(bytes);
  if (bytes.length < 20) return null;
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) return null;
  let size: Size | null = null;
  let drawn = false;
  for (let at = 12; at + 8 <= end;) {
    const kind = lettersAt(bytes, at);
    const length = view.getUint32(at + 4, true);
    if (at + 8 + length > end) return null;
    size ??= sizeIn(kind, view, at + 8, length);
    drawn ||= ['VP8 ', 'VP8L', 'ANMF'].includes(kind);
    // Chunks are padded to an even length.
    at += 8 + length + (length % 2);
  }
  if (!size || !drawn || size.width === 0 || size.height === 0) return null;
  return { ...size, unpacked: 0, tooLarge: hasTooManyPixels(size.width, size.height), unprintable: WEBP };
}
