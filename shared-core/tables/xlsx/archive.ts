import { Inflate } from 'fflate';
import { crc32 } from './crc32';
import { damaged, tooLarge } from './refusals';
import { readDirectory, type ZipEntry } from './zip-directory';

/** Bytes that a part, and all that are read, may unpack to; and how many times a large part may have been packed. */
export interface Limits {
  part: number;
  all: number;
  large: number;
  packedTimes: number;
}

const MB = 1_000_000;
/** Tables pack some 10 times, and 50 where they repeat themselves; only blanks come near deflate's utmost, 1,032. */
const LIMITS: Limits = { part: 100 * MB, all: 200 * MB, large: 10 * MB, packedTimes: 250 };
/** So much goes in between two looks at what came out: 16 MB at most. */
const PACKED_PIECE = 16 * 1024;

/** Part names are the same in any case, and begin at the root: ECMA-376 Part 2 (2021), 6.2.2 and 7.3. */
const partName = (name: string) => name.replaceAll('\\', '/').replace(/^\/+/, '').toLowerCase();

/** The parts of a workbook. None unpacks to more than its directory says, nor to more than the limits. */
export class Archive {
  private readonly entries = new Map<string, ZipEntry>();
  private unpacked = 0;

  /** @throws Problem where the archive is damaged, locked, or names one part twice. */
  constructor(
    bytes: Uint8Array,
    private readonly limits = LIMITS,
  ) {
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
   * @throws Problem where it is missing, damaged, or unpacks to more than a part, or all parts together, may.
   */
  unpack(name: string, take: (piece: Uint8Array) => void): void {
    const entry = this.entries.get(partName(name));
    if (!entry) throw damaged(`${name} is missing`);
    this.admit(entry);
    let [length, check] = [0, 0];
    const taken = (piece: Uint8Array) => {
      length += piece.length;
      // What was admitted is what is said: a part that says less than it is goes no further than that.
      if (length > entry.size) throw damaged(`${name} unpacks to more than it says`);
      check = crc32(piece, check);
      take(piece);
    };
    if (entry.deflated) inflate(entry, taken);
    else for (const piece of pieces(entry.packed)) taken(piece);
    if (length !== entry.size || check !== entry.check) throw damaged(`${name} is not what was packed`);
  }

  private admit({ name, size, packed }: ZipEntry): void {
    const { part, all, large, packedTimes } = this.limits;
    this.unpacked += size;
    const tooMuch =
      size > part || this.unpacked > all || (size > large && size > packed.length * packedTimes);
    if (tooMuch) throw tooLarge(`${name} of ${packed.length} bytes unpacks to ${size}`);
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
