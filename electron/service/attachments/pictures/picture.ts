/** What the structure of a picture tells, without drawing it. */
export interface Picture {
  width: number;
  height: number;
  /** Bytes that it takes unpacked, where printing unpacks it: 0 for all but PNG. */
  unpacked: number;
  /** It would take more memory to draw than a photo for a sheet may. */
  tooLarge: boolean;
  /** Why a PDF cannot hold it as it is, with what to do; empty when it can. */
  unprintable: string;
}

/** Reads a picture; null when it is damaged or cut short. */
export type ReadPicture = (bytes: Uint8Array) => Picture | null | Promise<Picture | null>;

/** Above any camera of a telephone in common use; common practice, no source. */
const MOST_PIXELS = 120_000_000;

/** Whether a picture that a PDF holds as it is has more pixels than can sensibly be handed out. */
export function hasTooManyPixels(width: number, height: number): boolean {
  return width * height > MOST_PIXELS;
}

export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** Four letters, as the names of chunks are. */
export function lettersAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
