import type { FileSystem } from '../file/file-system';

/** Room is taken in blocks, and more of it the longer the log is: taking it costs a flush of its own. */
const BLOCK = 64 * 1024;
const LONG_LOG = 256 * 1024;
const LARGE_ROOM = 1024 * 1024;

/** How long the file of a log is made whose records end at `length`: one to two blocks more, or a large room. */
export function lengthWithRoom(length: number): number {
  const room = length < LONG_LOG ? BLOCK : LARGE_ROOM;
  return (Math.floor(length / BLOCK) + 1) * BLOCK + room - BLOCK;
}

/** The bytes of a log as a whole file, with the zeros that follow its records. */
export function withRoom(content: Uint8Array): Uint8Array {
  const whole = new Uint8Array(lengthWithRoom(content.length));
  whole.set(content);
  return whole;
}

/** Writes zeros from one place of a file to another. */
export function writeZeros(fs: FileSystem, fd: number, from: number, to: number): void {
  if (to > from) writeFully(fs, fd, new Uint8Array(to - from), from);
}

/** Writes all of the bytes at a place of a file, however few the disk takes at a time. */
export function writeFully(fs: FileSystem, fd: number, bytes: Uint8Array, at: number): void {
  let done = 0;
  while (done < bytes.length) {
    const count = fs.writeSync(fd, bytes, done, bytes.length - done, at + done);
    if (count <= 0) throw Object.assign(new Error('The disk took no more bytes.'), { code: 'EIO' });
    done += count;
  }
}
