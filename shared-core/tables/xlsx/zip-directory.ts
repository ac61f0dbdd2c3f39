import { damaged, notAWorkbook } from './refusals';

/* The directory at the end of a ZIP file, by APPNOTE.TXT 6.3 (the ZIP format that ECMA-376 Part 2, annex B names). It is
   read here, since the library that unpacks leaves out the checks: the CRC, and where each part truly lies. */

/** One part of the archive, as its directory tells of it. What is unpacked is held against it. */
export interface ZipEntry {
  name: string;
  deflated: boolean;
  check: number;
  size: number;
  packed: Uint8Array;
}

const END = 0x06054b50;
const END_64 = 0x06064b50;
const END_64_LOCATOR = 0x07064b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const ZIP64_EXTRA = 1;
const FULL = 0xffffffff;

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const long = (view: DataView, at: number) => Number(view.getBigUint64(at, true));

function endOfDirectory(view: DataView): number {
  const earliest = Math.max(0, view.byteLength - END_LENGTH - LONGEST_COMMENT);
  for (let at = view.byteLength - END_LENGTH; at >= earliest; at--) {
    if (view.getUint32(at, true) === END) return at;
  }
  throw damaged('the archive has no end: it was cut short');
}

/** How many entries there are (4.3.16), and where the first begins; the long form (4.3.14) where one is needed. */
function directoryStart(view: DataView): { count: number; start: number } {
  const at = endOfDirectory(view);
  const short = { count: view.getUint16(at + 10, true), start: view.getUint32(at + 16, true) };
  if (short.count !== 0xffff && short.start !== FULL) return short;
  const locator = at - 20;
  if (locator < 0 || view.getUint32(locator, true) !== END_64_LOCATOR) return short;
  const long64 = long(view, locator + 8);
  if (view.getUint32(long64, true) !== END_64)
    throw damaged('the long end of the archive is not where it is said');
  return { count: long(view, long64 + 32), start: long(view, long64 + 48) };
}

/** The sizes and place of an entry; those that are full stand in its ZIP64 extra field (4.5.3), in this order. */
function extents(view: DataView, at: number) {
  const [packed, size, place] = [20, 24, 42].map((offset) => view.getUint32(at + offset, true));
  const found = { packed: packed!, size: size!, place: place! };
  let extra = at + 46 + view.getUint16(at + 28, true);
  const end = extra + view.getUint16(at + 30, true);
  for (; extra + 4 <= end; extra += 4 + view.getUint16(extra + 2, true)) {
    if (view.getUint16(extra, true) !== ZIP64_EXTRA) continue;
    let field = extra + 4;
    for (const name of ['size', 'packed', 'place'] as const) {
      if (found[name] !== FULL) continue;
      found[name] = long(view, field);
      field += 8;
    }
  }
  return found;
}

function readEntry(bytes: Uint8Array, view: DataView, at: number): ZipEntry {
  if (view.getUint32(at, true) !== ENTRY) throw damaged('an entry of the archive is not where it is said');
  const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + view.getUint16(at + 28, true)));
  if (view.getUint16(at + 8, true) & 1) {
    throw notAWorkbook(
      'This spreadsheet is locked with a password.',
      'Open it in a spreadsheet program, remove the password, save it, and choose it again.',
    );
  }
  const method = view.getUint16(at + 10, true);
  if (method !== 0 && method !== 8)
    throw damaged(`${name} is packed in a way (${method}) that workbooks do not use`);
  const { packed, size, place } = extents(view, at);
  if (view.getUint32(place, true) !== LOCAL) throw damaged(`${name} is not where it is said`);
  const start = place + 30 + view.getUint16(place + 26, true) + view.getUint16(place + 28, true);
  if (start + packed > bytes.length) throw damaged(`${name} was cut short`);
  return {
    name,
    deflated: method === 8,
    check: view.getUint32(at + 16, true),
    size,
    packed: bytes.subarray(start, start + packed),
  };
}

/** The entries of a ZIP file in its directory's order, folders left out; nothing is unpacked yet. */
export function readDirectory(bytes: Uint8Array): ZipEntry[] {
  const view = viewOf(bytes);
  try {
    const entries: ZipEntry[] = [];
    const { count, start } = directoryStart(view);
    for (let at = start, left = count; left > 0; left--) {
      entries.push(readEntry(bytes, view, at));
      at += 46 + [28, 30, 32].reduce((sum, offset) => sum + view.getUint16(at + offset, true), 0);
    }
    return entries.filter((entry) => !entry.name.endsWith('/'));
  } catch (error) {
    if (error instanceof RangeError) throw damaged('the directory of the archive points outside of it');
    throw error;
  }
}
