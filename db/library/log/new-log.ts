import type { FileSystem } from '../file/file-system';
import { temporaryPath } from '../file/whole-file';
import type { LogHeader, Position } from './log-format';
import { removeQuietly } from './log-place';
import { lengthWithRoom, writeFully, writeZeros } from './log-room';
import { NEWLINE } from './log-tail';

/** Throws when the library is not ours any more; asked before anything is added, and again before it counts. */
export type Guard = () => void;

/** On what a log takes changes. */
export interface LogTerms {
  guard: Guard;
  /** From this length on, in bytes, it takes no more. */
  longest: number;
}

/** The header says it now, so the line that announced the file need not. */
export function withoutLineOf({ fileSha256 }: LogHeader, tail: Uint8Array): Uint8Array {
  const lines = Buffer.from(tail.buffer, tail.byteOffset, tail.byteLength);
  const start = lines.indexOf(`file ${fileSha256} `);
  if (start < 0 || (start > 0 && lines[start - 1] !== NEWLINE)) return tail;
  return Buffer.concat([lines.subarray(0, start), lines.subarray(lines.indexOf(NEWLINE, start) + 1)]);
}

/** What a log is to hold, and the change that it leads to. */
export interface LogContent {
  bytes: Uint8Array;
  position: Position;
}

/** A log written beside its place and left open. */
export interface NewLog {
  temporary: string;
  fd: number;
  ino: number;
  length: number;
  size: number;
  position: Position;
}

/** Writes a whole log beside its place, flushed, and leaves it open. */
export function makeBeside(fs: FileSystem, path: string, { bytes, position }: LogContent): NewLog {
  const temporary = temporaryPath(path);
  let fd: number | undefined;
  try {
    fd = fs.openSync(temporary, 'wx+');
    const size = lengthWithRoom(bytes.length);
    writeFully(fs, fd, bytes, 0);
    writeZeros(fs, fd, bytes.length, size);
    fs.fsyncSync(fd);
    const { ino } = fs.statSync(temporary);
    return { temporary, fd, ino, length: bytes.length, size, position: { ...position } };
  } catch (error) {
    if (fd !== undefined) closeQuietly(fs, fd);
    removeQuietly(fs, temporary);
    throw error;
  }
}

export function discard(fs: FileSystem, { fd, temporary }: NewLog): void {
  closeQuietly(fs, fd);
  removeQuietly(fs, temporary);
}

function closeQuietly(fs: FileSystem, fd: number): void {
  try {
    fs.closeSync(fd);
  } catch {
    // The descriptor is gone either way.
  }
}
