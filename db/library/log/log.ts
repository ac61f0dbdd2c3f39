import { dirname } from 'node:path';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { errorCode, isMissing, type FileFacts, type FileSystem } from '../file/file-system';
import { syncFolderNow } from '../file/whole-file';
import { decodeLog, encodeFileLine, encodeHeader, type LogHeader, type Position } from './log-format';
import { changedOutside, putInPlace, removeQuietly, takeAway } from './log-place';
import { lengthWithRoom, writeFully, writeZeros } from './log-room';
import { logFull } from './log-limits';
import { discard, makeBeside, withoutLineOf, type LogContent, type LogTerms, type NewLog } from './new-log';

/** How much is always free after a pause, in bytes. */
const SPARE = 32 * 1024;

/**
 * The open change log, ours alone. `append` returns once the bytes are on the disk and the log is known to have been
 * ours when they got there; when it throws, nothing was acknowledged, and the log is as before if it still is ours.
 * Where even that cannot be had, it stays closed to further changes until the disk lets it be put right.
 */
export class ChangeLog {
  readonly path: string;
  readonly #fs: FileSystem;
  readonly #guard: LogTerms['guard'];
  readonly #longest: number;
  #fd: number;
  #ino: number;
  /** Where the last record ends, which change it is, and how long the file is with the zeros that follow. */
  #length: number;
  #position: Position;
  #size: number;
  /** As of our last write. */
  #mtimeMs = 0;
  /** Where bytes of a failed append end. */
  #dirtyUntil = 0;
  /** Room is being taken: the file may be longer than `#size`. */
  #growing = false;
  /** The log was replaced, and its folder's entry is not known to be on the disk; the one before is kept till then. */
  #folderUnsynced = false;
  #spent: string[] = [];
  /** Our log has been renamed away and must be put back. */
  #away: string | undefined;
  /** The log must be restarted here before anything is appended: what it holds does not lead to our state. */
  #restart: LogHeader | undefined;

  private constructor(fs: FileSystem, path: string, { guard, longest }: LogTerms, made: NewLog) {
    this.#fs = fs;
    this.path = path;
    this.#guard = guard;
    this.#longest = longest;
    this.#fd = made.fd;
    this.#ino = made.ino;
    this.#length = made.length;
    this.#position = made.position;
    this.#size = made.size;
  }

  /**
   * Puts a log of this content, which leads to `position`, in place; nothing may be there. Throws EEXIST.
   * @param before a log renamed away, removed once the new one is sure to stay
   */
  static install(
    fs: FileSystem,
    path: string,
    content: LogContent,
    terms: LogTerms,
    before?: string,
  ): ChangeLog {
    const made = makeBeside(fs, path, content);
    let isTidy: boolean;
    try {
      isTidy = putInPlace(fs, made.temporary, path);
    } catch (error) {
      discard(fs, made);
      throw error;
    }
    const log = new ChangeLog(fs, path, terms, made);
    log.#folderUnsynced = true;
    if (before !== undefined) log.#spent.push(before);
    if (!isTidy) log.#spent.push(made.temporary);
    log.#rememberTime();
    try {
      log.#putRight();
      return log;
    } catch (error) {
      log.close();
      throw error;
    }
  }

  get length(): number {
    return this.#length;
  }

  /** Adds one record and flushes it. Throws Problem, also once the log is full; then it does not count. */
  append(record: { bytes: Uint8Array; position: Position }): void {
    if (this.#length + record.bytes.length > this.#longest) throw logFull();
    this.#add(record.bytes, 'save the change');
    this.#position = record.position;
  }

  /** Notes what the library file is going to be, before it is replaced. Throws Problem; then it must not be. */
  announceFile(sha256: string): void {
    this.#add(encodeFileLine(this.#position, sha256), 'write the library file');
  }

  /** Takes back what was appended after `length`, with which the log led to `position`. */
  truncate(length: number, position: Position): void {
    this.#dirtyUntil = Math.max(this.#dirtyUntil, this.#length);
    this.#length = length;
    this.#position = position;
    quietly(() => this.#putRight());
  }

  /** Whether this path is another name of it. */
  isAt(path: string): boolean {
    return this.#fs.statSync(path).ino === this.#ino;
  }

  /** Whether file and content are as we left them. Throws when the disk does not answer. */
  isAsLeft(): boolean {
    const now = this.#stat();
    if (now?.ino !== this.#ino || now.size !== this.#size) return false;
    if (now.mtimeMs === this.#mtimeMs) return true;
    if (!this.#leadsHere()) return false;
    this.#mtimeMs = now.mtimeMs;
    return true;
  }

  /** Keeps only what follows `from`, under a new header. On failure the old log goes on, which is harmless. */
  startAfter(from: number, header: LogHeader): void {
    this.#putRight();
    const tail = withoutLineOf(header, this.#fs.readFileSync(this.path).subarray(from, this.#length));
    this.#replace({ bytes: Buffer.concat([encodeHeader(header), tail]), position: this.#position });
    this.#putRight();
  }

  /** Drops all records. Until that has worked, nothing is appended; `append` tries again. */
  restartAt(header: LogHeader): void {
    this.#restart = header;
    this.#putRight();
  }

  /** Takes room for what is likely to come, in a pause, so that no change has to wait for it. */
  makeRoom(): void {
    try {
      this.#reserve(lengthWithRoom(this.#length + SPARE));
    } catch {
      quietly(() => this.#putRight());
    }
  }

  /** Every record has been flushed by itself, so a close that fails loses nothing. */
  close(): void {
    quietly(() => this.#fs.closeSync(this.#fd));
  }

  #add(bytes: Uint8Array, doing: string): void {
    try {
      this.#putRight();
      this.#guard();
      if (!this.isAsLeft()) throw changedOutside(this.path);
    } catch (error) {
      throw diskProblem(error, doing);
    }
    try {
      // One zero always follows: it shows that the end was not cut off.
      if (this.#size <= this.#length + bytes.length)
        this.#reserve(lengthWithRoom(this.#length + bytes.length));
      this.#dirtyUntil = this.#length + bytes.length;
      writeFully(this.#fs, this.#fd, bytes, this.#length);
      this.#fs.fdatasyncSync(this.#fd);
      this.#refuseLost();
    } catch (error) {
      // What is no longer ours is left alone: whoever took it may be reading it.
      if (!(error instanceof Problem)) quietly(() => this.#putRight());
      throw diskProblem(error, doing);
    }
    this.#dirtyUntil = 0;
    this.#length += bytes.length;
  }

  /** What was just written counts only if the log was ours all the while. */
  #refuseLost(): void {
    const now = this.#stat();
    if (now?.ino !== this.#ino) {
      this.#guard();
      throw changedOutside(this.path);
    }
    this.#guard();
    this.#mtimeMs = now.mtimeMs;
  }

  #stat(): FileFacts | undefined {
    try {
      return this.#fs.statSync(this.path);
    } catch (error) {
      if (isMissing(error)) return undefined;
      throw error;
    }
  }

  /** Whether the log, read again, still leads to where we are. */
  #leadsHere(): boolean {
    try {
      const { header, records, length } = decodeLog(this.#fs.readFileSync(this.path));
      return length === this.#length && (records.at(-1) ?? header).chain === this.#position.chain;
    } catch (error) {
      if (error instanceof Problem) return false;
      throw error;
    }
  }

  #reserve(size: number): void {
    if (size <= this.#size) return;
    this.#growing = true;
    writeZeros(this.#fs, this.#fd, this.#size, size);
    this.#fs.fsyncSync(this.#fd);
    this.#growing = false;
    this.#size = size;
    this.#rememberTime();
  }

  #replace(content: LogContent): void {
    const made = makeBeside(this.#fs, this.path, content);
    try {
      this.#guard();
      this.#away = takeAway(this.#fs, this.path);
      if (this.#away === undefined || this.#fs.statSync(this.#away).ino !== this.#ino)
        throw changedOutside(this.path);
      if (!putInPlace(this.#fs, made.temporary, this.path)) this.#spent.push(made.temporary);
    } catch (error) {
      discard(this.#fs, made);
      const away = this.#away;
      if (away !== undefined) quietly(() => this.#putBack(away));
      throw errorCode(error) === 'EEXIST' ? changedOutside(this.path) : error;
    }
    this.close();
    this.#spent.push(this.#away);
    this.#away = undefined;
    this.#fd = made.fd;
    this.#ino = made.ino;
    this.#length = made.length;
    this.#position = made.position;
    this.#size = made.size;
    this.#dirtyUntil = 0;
    this.#folderUnsynced = true;
    this.#rememberTime();
  }

  /** Not knowing its time only makes the next comparison slower. */
  #rememberTime(): void {
    try {
      this.#mtimeMs = this.#fs.statSync(this.path).mtimeMs;
    } catch {
      this.#mtimeMs = 0;
    }
  }

  /** Restores what `append` relies on: the log in its place, a known end, a folder entry that survives a power cut. */
  #putRight(): void {
    if (this.#away !== undefined) this.#putBack(this.#away);
    const restart = this.#restart;
    if (restart) this.#replace({ bytes: encodeHeader(restart), position: restart });
    this.#restart = undefined;
    if (this.#growing) this.#fs.ftruncateSync(this.#fd, this.#size);
    this.#growing = false;
    if (this.#dirtyUntil > this.#length) {
      writeZeros(this.#fs, this.#fd, this.#length, Math.min(this.#dirtyUntil, this.#size));
      this.#fs.fsyncSync(this.#fd);
      this.#dirtyUntil = 0;
      this.#rememberTime();
    }
    if (this.#folderUnsynced && !syncFolderNow(this.#fs, dirname(this.path)))
      throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
    this.#folderUnsynced = false;
    this.#spent = this.#spent.filter((path) => !removeQuietly(this.#fs, path));
  }

  #putBack(away: string): void {
    try {
      putInPlace(this.#fs, away, this.path);
      this.#away = undefined;
    } catch (error) {
      if (errorCode(error) !== 'EEXIST' && !isMissing(error)) throw error;
      throw changedOutside(this.path);
    }
  }
}

function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // What is not put right stays marked: the next append tries again before it writes anything.
  }
}
