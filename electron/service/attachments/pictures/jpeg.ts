import { hasTooManyPixels, viewOf, type Picture } from './picture';

// Markers of ITU-T T.81, table B.1 (from memory).
const END = 0xd9;
const SCAN = 0xda;
/** Frames that a PDF's DCTDecode draws: baseline, extended and progressive, Huffman-coded (ISO 32000-1, 7.4.8). */
const DRAWN_FRAMES = [0xc0, 0xc1, 0xc2];
const OTHER_FRAMES = [0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf];
/** Arithmetic conditioning and an extension, neither for Huffman codes: the printer takes them for a frame. */
const LIKE_FRAMES = [0xc8, 0xcc];
const OTHER_KIND = 'a PDF cannot hold this kind of JPEG; save it anew and add that';

const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);

/** The next marker that is not within a scan's data; the length of the file when there is none. */
function afterScan(bytes: Uint8Array, from: number): number {
  let at = from;
  for (; at + 1 < bytes.length; at += 1) {
    const next = bytes[at + 1] ?? 0;
    if (bytes[at] === 0xff && next !== 0x00 && next !== 0xff && !standsAlone(next)) return at;
  }
  return bytes.length;
}

function frameOf(view: DataView, at: number, length: number, marker: number): Picture | null {
  if (length < 8) return null;
  const [bits, height, width] = [view.getUint8(at), view.getUint16(at + 1), view.getUint16(at + 3)];
  const channels = view.getUint8(at + 5);
  if (width === 0 || height === 0) return null;
  const drawn = DRAWN_FRAMES.includes(marker) && bits === 8 && [1, 3, 4].includes(channels);
  return {
    ...{ width, height, unpacked: 0 },
    tooLarge: hasTooManyPixels(width, height),
    unprintable: drawn ? '' : OTHER_KIND,
  };
}

/** Walks a JPEG's segments: one frame with its size, at least one scan, and the end mark. */
export function readJpeg(bytes: Uint8Array): Picture | null {
  const view = viewOf(bytes);
  let picture: Picture | null = null;
  /** Allowed before the frame, but the printer loses its way there. */
  let strange = false;
  let scans = 0;
  let at = 2;
  while (at + 1 < bytes.length) {
    const marker = bytes[at + 1] ?? 0;
    if (bytes[at] !== 0xff) return null;
    strange ||= !picture && (marker === 0xff || standsAlone(marker) || LIKE_FRAMES.includes(marker));
    if (marker === 0xff) at += 1;
    else if (marker === END) return scans > 0 ? picture : null;
    else if (standsAlone(marker)) at += 2;
    else {
      if (at + 4 > bytes.length) return null;
      const length = view.getUint16(at + 2);
      const end = at + 2 + length;
      if (length < 2 || end > bytes.length) return null;
      if (DRAWN_FRAMES.includes(marker) || OTHER_FRAMES.includes(marker)) {
        picture = frameOf(view, at + 4, length, marker);
        if (!picture) return null;
        if (strange) picture.unprintable ||= OTHER_KIND;
      }
      if (marker === SCAN) scans += 1;
      at = marker === SCAN ? afterScan(bytes, end) : end;
    }
  }
  return null;
}
