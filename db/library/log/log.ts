import { dirname } from 'node:path';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { isMissing, type FileSystem } from '../file/file-system';
import { encodeHeader, type LogHeader } from './log-format';
import { syncFolderNow, temporaryPath } from '../file/whole-file';

/**
 * The open change log. `append` returns once the bytes are on the disk; when it throws, the log is as before.
 * Where even that cannot be had, it stays closed to further changes until the disk lets it be put right.
 */
export class ChangeLog {
  readonly path: string;
  readonly #fs: FileSystem;
  #fd: number | undefined;
  #length: number;
  #ino: number;
  /** As of our last append. */
  #mtimeMs = 0;
  /** Bytes of a failed append may follow `#length`. */
  #dirtyTail = false;
  /** The log was replaced, and its folder's entry is not known to be on the disk. */
  #folderUnsynced = false;
  /** The log must be restarted here before anything is appended: what it holds does not lead to our state. */
  #restart: LogHeader | undefined;

  private constructor(fs: FileSystem, path: string, length: number) {
    this.#fs = fs;
    this.path = path;
    this.#length = length;
    this.#fd = fs.openSync(path, 'r+');
    this.#ino = fs.statSync(path).ino;
  }

  /** Opens a log whose first `length` bytes hold; a torn rest is cut off. */
  static continueAt(fs: FileSystem, path: string, length: number): ChangeLog {
    const log = new ChangeLog(fs, path, length);
    try {
      log.#dirtyTail = fs.statSync(path).size !== length;
      log.#putRight();
      return log;
    } catch (error) {
      log.#closeNow();
      throw error;
    }
  }

  /** Puts a new, empty log in place. */
  static create(fs: FileSystem, path: string, header: LogHeader): ChangeLog {
    const bytes = encodeHeader(header);
    replaceNow(fs, path, [bytes]);
    const log = new ChangeLog(fs, path, bytes.length);
    log.#folderUnsynced = true;
    log.#putRight();
    return log;
  }

  get length(): number {
    return this.#length;
  }

  /** Adds one record and flushes it. Throws Problem; then nothing was added. */
  append(record: Uint8Array): void {
    try {
      this.#putRight();
      if (this.seemsChanged()) throw changedOutside(this.path);
    } catch (error) {
      throw diskProblem(error, 'save the change');
    }
    try {
      this.#write(record, this.#length);
    } catch (error) {
      this.#undoFailedWrite();
      throw diskProblem(error, 'save the change');
    }
    this.#length += record.length;
    this.#rememberTime();
  }

  /** Takes back what was appended after `length`. */
  truncate(length: number): void {
    this.#length = length;
    this.#undoFailedWrite();
  }

  /** Whether someone else replaced, lengthened or cut the log. Throws when the disk does not answer. */
  seemsChanged(): boolean {
    try {
      const { ino, size } = this.#fs.statSync(this.path);
      return ino !== this.#ino || size !== this.#length;
    } catch (error) {
      if (isMissing(error)) return true;
      throw error;
    }
  }

  /** Whether it may have been written to since our last append, so that its content is worth comparing. */
  seemsTouched(): boolean {
    return this.#fs.statSync(this.path).mtimeMs !== this.#mtimeMs;
  }

  /** Keeps only what follows `from`, under a new header. On failure the old log goes on, which is harmless. */
  startAfter(from: number, header: LogHeader): void {
    const tail = this.#fs.readFileSync(this.path).subarray(from, this.#length);
    this.#replace([encodeHeader(header), tail]);
    this.#putRight();
  }

  /** Drops all records. Until that has worked, nothing is appended; `append` tries again. */
  restartAt(header: LogHeader): void {
    this.#restart = header;
    this.#putRight();
  }

  /** Every record has been flushed by itself, so a close that fails loses nothing. */
  close(): void {
    try {
      this.#closeNow();
    } catch {
      // The descriptor is gone either way.
    }
  }

  #replace(parts: readonly Uint8Array[]): void {
    // Windows does not replace a file that is open.
    this.#closeNow();
    try {
      replaceNow(this.#fs, this.path, parts);
      this.#length = parts.reduce((sum, part) => sum + part.length, 0);
      this.#folderUnsynced = true;
      this.#dirtyTail = false;
    } finally {
      this.#reopen();
    }
  }

  #write(bytes: Uint8Array, at: number): void {
    const fd = this.#opened();
    writeFully(this.#fs, fd, bytes, at);
    this.#fs.fdatasyncSync(fd);
  }

  /** The record is on the disk by now: not knowing its time only makes the next comparison slower. */
  #rememberTime(): void {
    try {
      this.#mtimeMs = this.#fs.statSync(this.path).mtimeMs;
    } catch {
      this.#mtimeMs = 0;
    }
  }

  #undoFailedWrite(): void {
    this.#dirtyTail = true;
    try {
      this.#putRight();
    } catch {
      // Stays marked: the next append tries again before it writes anything.
    }
  }

  /** Restores what `append` relies on: a known end, and a folder entry that survives a power cut. */
  #putRight(): void {
    if (this.#restart) this.#replace([encodeHeader(this.#restart)]);
    this.#restart = undefined;
    const fd = this.#opened();
    if (this.#dirtyTail) {
      this.#fs.ftruncateSync(fd, this.#length);
      this.#fs.fsyncSync(fd);
      this.#dirtyTail = false;
    }
    if (this.#folderUnsynced) {
      if (!syncFolderNow(this.#fs, dirname(this.path))) {
        throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
      }
      this.#folderUnsynced = false;
    }
  }

  #opened(): number {
    if (this.#fd === undefined) this.#reopen();
    if (this.#fd === undefined) throw Object.assign(new Error('The log is not open.'), { code: 'EIO' });
    return this.#fd;
  }

  #reopen(): void {
    // Both or neither: a descriptor beside an old inode number would look like a change from outside.
    const { ino } = this.#fs.statSync(this.path);
    this.#fd = this.#fs.openSync(this.path, 'r+');
    this.#ino = ino;
  }

  #closeNow(): void {
    const fd = this.#fd;
    this.#fd = undefined;
    if (fd !== undefined) this.#fs.closeSync(fd);
  }
}

function changedOutside(path: string): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: 'Another program changed this library while it was open here.',
    advice: 'Nothing was overwritten. Save what you have here as a copy, then open the library again.',
    facts: { file: path },
  });
}

function replaceNow(fs: FileSystem, path: string, parts: readonly Uint8Array[]): void {
  const temporary = temporaryPath(path);
  try {
    const fd = fs.openSync(temporary, 'wx');
    try {
      let at = 0;
      for (const part of parts) {
        writeFully(fs, fd, part, at);
        at += part.length;
      }
      fs.fsyncSync(fd);
    } finally {
      fs.closeSync(fd);
    }
    fs.renameSync(temporary, path);
  } catch (error) {
    try {
      fs.unlinkSync(temporary);
    } catch {
      // It may not exist yet; a leftover is swept at the next opening.
    }
    throw error;
  }
}

function writeFully(fs: FileSystem, fd: number, bytes: Uint8Array, at: number): void {
  let done = 0;
  while (done < bytes.length) {
    const count = fs.writeSync(fd, bytes, done, bytes.length - done, at + done);
    if (count <= 0) throw Object.assign(new Error('The disk took no more bytes.'), { code: 'EIO' });
    done += count;
  }
}
