import { Inflate } from 'fflate';
import { crc32 } from './crc32';
import { damaged, tooLarge } from './refusals';
import { readDirectory, type ZipEntry } from './zip-directory';

const MB = 1_000_000;
const MOST_OF_A_PART = 100 * MB;
const MOST_OF_ALL = 200 * MB;
/** Deflate packs a byte at most 1,032 times: so much comes out between two looks at how much has. */
const PACKED_PIECE = 16 * 1024;

/** Part names are the same in any case, and begin at the root: ECMA-376 Part 2 (2021), 6.2.2 and 7.3. */
const partName = (name: string) => name.replaceAll('\\', '/').replace(/^\/+/, '').toLowerCase();

/** The parts of a workbook. Whatever their sizes are said to be, what comes out of them is counted. */
export class Archive {
  private readonly entries = new Map<string, ZipEntry>();
  private unpacked = 0;

  /** @throws Problem where the archive is damaged, locked, or names one part twice. */
  constructor(bytes: Uint8Array) {
    for (const entry of readDirectory(bytes)) {
      const name = partName(entry.name);
      if (this.entries.has(name)) throw damaged(`${entry.name} is there twice`);
      this.entries.set(name, entry);
    }
  }

  has(name: string): boolean {
    return this.entries.has(partName(name));
  }

  /**
   * Unpacks a part piece by piece, so that it never stands in memory whole.
   * @throws Problem where it is missing, damaged, or more than 100 MB, or all that was unpacked more than 200 MB.
   */
  unpack(name: string, take: (piece: Uint8Array) => void): void {
    const entry = this.entries.get(partName(name));
    if (!entry) throw damaged(`${name} is missing`);
    let [length, check] = [0, 0];
    const taken = (piece: Uint8Array) => {
      length += piece.length;
      this.unpacked += piece.length;
      if (length > MOST_OF_A_PART || this.unpacked > MOST_OF_ALL)
        throw tooLarge(`${name} unpacks to ${length} bytes`);
      check = crc32(piece, check);
      take(piece);
    };
    if (entry.deflated) inflate(entry, taken);
    else for (const piece of pieces(entry.packed)) taken(piece);
    if (length !== entry.size || check !== entry.check) throw damaged(`${name} is not what was packed`);
  }
}

function* pieces(packed: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at < packed.length; at += PACKED_PIECE) yield packed.subarray(at, at + PACKED_PIECE);
}

function inflate({ name, packed }: ZipEntry, take: (piece: Uint8Array) => void): void {
  // What `take` throws must come through as it is; what the library throws means a damaged stream.
  let thrown: { error: unknown } | undefined;
  const stream = new Inflate((piece) => {
    try {
      take(piece);
    } catch (error) {
      thrown = { error };
      throw error;
    }
  });
  try {
    for (const piece of pieces(packed)) stream.push(piece);
    stream.push(new Uint8Array(), true);
  } catch (error) {
    if (thrown) throw thrown.error;
    throw damaged(`${name}: ${error instanceof Error ? error.message : 'cannot be unpacked'}`);
  }
}
