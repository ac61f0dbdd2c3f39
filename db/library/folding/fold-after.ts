const SHORTEST = 256 * 1024;
const LONGEST = 32 * 1024 * 1024;
const SHARE_OF_FILE = 8;

/**
 * How long a log may grow, in bytes, before it is worth writing a file of this size whole: so that for each byte of
 * changes some eight are written, and that replaying the log at the next opening stays quick.
 */
export function foldAfter(fileBytes: number): number {
  return Math.min(LONGEST, Math.max(SHORTEST, fileBytes / SHARE_OF_FILE));
}
