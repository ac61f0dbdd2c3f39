import { promisify } from 'node:util';
import { crc32, inflate } from 'node:zlib';
import { lettersAt, viewOf, type Picture } from './picture';

const inflated = promisify(inflate) as (
  bytes: Uint8Array,
  options: { maxOutputLength: number },
) => Promise<Uint8Array>;

/** Most bytes of a PNG when unpacked: some 33 million pixels in full colour with transparency. */
const MOST_BYTES = 128 * 1024 * 1024;
const OTHER_KIND = 'a PDF cannot hold this kind of PNG; add the photo as JPEG';

/** Samples of a pixel, and the bits that one may have, by colour type (PNG, third edition, table 8; from memory). */
const COLOUR_TYPES: Record<number, { samples: number; bits: number[] } | undefined> = {
  0: { samples: 1, bits: [1, 2, 4, 8, 16] },
  2: { samples: 3, bits: [8, 16] },
  3: { samples: 1, bits: [1, 2, 4, 8] },
  4: { samples: 2, bits: [8, 16] },
  6: { samples: 4, bits: [8, 16] },
};
const INDEXED = 3;
/** The printer takes a note's letters all at once, which fails for very long ones. */
const LONGEST_NOTE = 32 * 1024;

/** Start and step of each pass of an interlaced picture, across and down. */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

interface Head {
  width: number;
  height: number;
  bits: number;
  colourType: number;
  interlaced: boolean;
}

interface Chunks {
  head: Head;
  data: Uint8Array[];
  /** Bytes of the palette; null without one. */
  palette: number | null;
  transparency: boolean;
  /** Bytes of the longest written note. */
  longestNote: number;
}

function headOf(view: DataView, at: number, length: number): Head | null {
  if (length !== 13) return null;
  const [width, height] = [view.getUint32(at), view.getUint32(at + 4)];
  const [bits, colourType, packing, filter, interlace] = [8, 9, 10, 11, 12].map((by) =>
    view.getUint8(at + by),
  ) as [number, number, number, number, number];
  if (width === 0 || height === 0 || !COLOUR_TYPES[colourType]?.bits.includes(bits)) return null;
  if (packing !== 0 || filter !== 0 || interlace > 1) return null;
  return { width, height, bits, colourType, interlaced: interlace === 1 };
}

/** Walks the chunks to the end mark; null when one is cut short, or one that the picture needs is damaged. */
function chunksOf(bytes: Uint8Array): Chunks | null {
  const view = viewOf(bytes);
  const data: Uint8Array[] = [];
  let head: Head | null = null;
  let palette: number | null = null;
  let transparency = false;
  let longestNote = 0;
  for (let at = 8; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    const kind = lettersAt(bytes, at + 4);
    const sum = at + 8 + length;
    if (sum + 4 > bytes.length) return null;
    // A capital marks a chunk that the picture cannot do without.
    const needed = /^[A-Z]/.test(kind);
    if (needed && crc32(bytes.subarray(at + 4, sum)) !== view.getUint32(sum)) return null;
    if (!head && kind !== 'IHDR') return null;
    if (kind === 'IHDR') head = headOf(view, at + 8, length);
    if (!head) return null;
    if (kind === 'IDAT') data.push(bytes.subarray(at + 8, sum));
    if (kind === 'PLTE') palette = length;
    transparency ||= kind === 'tRNS';
    if (kind === 'tEXt') longestNote = Math.max(longestNote, length);
    if (kind === 'IEND') return { head, data, palette, transparency, longestNote };
    at = sum + 4;
  }
  return null;
}

/** Rows of each pass, with the bytes of one without its leading filter byte. */
function passesOf({ width, height, bits, colourType, interlaced }: Head): { rows: number; bytes: number }[] {
  const perPixel = bits * (COLOUR_TYPES[colourType]?.samples ?? 0);
  const passes = interlaced ? PASSES : ([[0, 0, 1, 1]] as const);
  return passes.flatMap(([x, y, across, down]) => {
    const [wide, rows] = [Math.ceil((width - x) / across), Math.ceil((height - y) / down)];
    return wide > 0 && rows > 0 ? [{ rows, bytes: Math.ceil((wide * perPixel) / 8) }] : [];
  });
}

/** Whether the data unpacks to every row of the picture, each with a filter that there is. */
async function dataIsWhole(head: Head, data: readonly Uint8Array[], length: number): Promise<boolean> {
  let pixels: Uint8Array;
  try {
    pixels = await inflated(Buffer.concat(data), { maxOutputLength: length });
  } catch {
    return false;
  }
  if (pixels.length !== length) return false;
  let at = 0;
  for (const { rows, bytes } of passesOf(head))
    for (let row = 0; row < rows; row += 1, at += 1 + bytes) if ((pixels[at] ?? 5) > 4) return false;
  return true;
}

/** Whether the printer takes a palette as the colours of a picture: whole colours, as many as its bits can name. */
function isPlainPalette(bytes: number | null, { bits, colourType }: Head): boolean {
  if (colourType !== INDEXED) return bytes === null;
  return bytes !== null && bytes > 0 && bytes % 3 === 0 && bytes / 3 <= 2 ** bits;
}

/** Reads a PNG through: head, every needed chunk with its checksum, and data for all of its rows. */
export async function readPng(bytes: Uint8Array): Promise<Picture | null> {
  const chunks = chunksOf(bytes);
  if (!chunks) return null;
  const { head, data, palette, transparency, longestNote } = chunks;
  const { width, height, bits, colourType, interlaced } = head;
  const indexed = colourType === INDEXED;
  if (data.length === 0 || (indexed && palette === null)) return null;
  const length = passesOf(head).reduce((sum, pass) => sum + pass.rows * (1 + pass.bytes), 0);
  const tooLarge = length > MOST_BYTES;
  if (!tooLarge && !(await dataIsWhole(head, data, length))) return null;
  // The printer takes pixels of less than a byte only as they are packed, neither interlaced nor transparent.
  const odd = bits < 8 && (interlaced || (indexed && transparency));
  const plain = !odd && isPlainPalette(palette, head) && longestNote <= LONGEST_NOTE;
  return { width, height, unpacked: length, tooLarge, unprintable: plain ? '' : OTHER_KIND };
}
