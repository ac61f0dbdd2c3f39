import { hostname } from 'node:os';
import { join } from 'node:path';
import { errorCode, isMissing, type FileSystem } from '../file/file-system';
import { temporaryPath } from '../file/whole-file';
import { putInPlace, removeQuietly, takeAway } from '../log/log-place';
import type { Position } from '../log/log-format';
import { encodeHolder, NO_CHAIN, readHolder, unknownHolder, type LockHolder } from './lock-holder';

export const LOCK_FILE = 'library.lock';
export const LOCK_REFRESH_MS = 30_000;
const ATTEMPTS = 5;
/** How long a lock that cannot be read is given to become one that can, on a disk that writes it in steps. */
const HALF_WRITTEN_MS = 50;

export interface LockOptions {
  instance: string;
  version: string;
  now: () => Date;
  takeOver: boolean;
  host?: string;
  pid?: number;
  isRunning?: (pid: number) => boolean;
}

/** Whether a process of this machine is alive; one that we may not signal is. */
export function processIsRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}

/** Openers of this process that are done, and whose lock the disk did not let them remove. */
const givenUp = new Set<string>();

/**
 * The lock file beside a library: who works in it, and how far. It informs; what protects the library is that a log
 * has one owner (log-place.ts), and that no file is replaced that is not as we left it.
 */
export class LibraryLock {
  readonly #fs: FileSystem;
  readonly #path: string;
  readonly #options: LockOptions;
  readonly #since: string;
  #fd: number | undefined;
  #ino = 0;
  #acknowledged: Position = { sequence: 0, chain: NO_CHAIN };
  /** Whose lock this was before, and left behind or taken over. */
  before: LockHolder | undefined;
  #bytesBefore: Uint8Array | undefined;

  private constructor(fs: FileSystem, path: string, options: LockOptions) {
    this.#fs = fs;
    this.#path = path;
    this.#options = options;
    this.#since = options.now().toISOString();
  }

  /**
   * Takes the lock, or tells who holds it. Without `takeOver`, only a lock of this machine whose process is gone is
   * taken from anybody: no clock is asked. Throws the disk's error when it cannot be written.
   */
  static async take(fs: FileSystem, folder: string, options: LockOptions): Promise<LibraryLock | LockHolder> {
    const path = join(folder, LOCK_FILE);
    const lock = new LibraryLock(fs, path, options);
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      if (lock.#create()) return lock;
      let holder = readHolder(fs, path);
      if (!holder) {
        await fs.pause(HALF_WRITTEN_MS);
        holder = readHolder(fs, path);
      }
      if (holder && !options.takeOver && !isLeftBehind(holder, options)) return holder;
      lock.#removeIfStill(holder);
    }
    return readHolder(fs, path) ?? unknownHolder(options.now());
  }

  /**
   * Who has the lock now, if it is not us any more. A lock that was deleted is put back: nobody else has it.
   * Throws when the disk does not answer.
   */
  heldByOther(): LockHolder | undefined {
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      const ino = this.#inoNow();
      if (ino !== undefined && ino === this.#ino) return undefined;
      if (ino !== undefined) {
        const holder = readHolder(this.#fs, this.#path) ?? unknownHolder(this.#options.now());
        if (holder.instance !== this.#options.instance) return holder;
        // A synchronising program put our own lock back as a new file.
        this.#ino = ino;
        return undefined;
      }
      if (this.#create()) return undefined;
    }
    return unknownHolder(this.#options.now());
  }

  /** Notes how far changes have been acknowledged: what a later opener does not find is then known to be lost. */
  acknowledge(position: Position): void {
    this.#acknowledged = position;
    this.#writeQuietly();
  }

  /** Tells others that we are alive. */
  refresh(): void {
    this.#writeQuietly();
  }

  /** Removes the lock, if it is still ours. A failure leaves a lock that we know to be given up. */
  release(): void {
    try {
      if (readHolder(this.#fs, this.#path)?.instance === this.#options.instance)
        this.#fs.unlinkSync(this.#path);
    } catch {
      // Another process sees that ours is gone, when it is.
      givenUp.add(this.#options.instance);
    }
    this.#close();
  }

  /** As `release`, but a lock that was left behind stands again: what it says of lost changes is still to be told. */
  giveBack(): void {
    this.release();
    if (!this.#bytesBefore) return;
    try {
      const made = this.#makeBeside(this.#bytesBefore);
      this.#fs.closeSync(made.fd);
      putInPlace(this.#fs, made.temporary, this.#path);
    } catch {
      // Only what it told is lost with it.
    }
  }

  #inoNow(): number | undefined {
    try {
      return this.#fs.statSync(this.#path).ino;
    } catch (error) {
      if (isMissing(error)) return undefined;
      throw error;
    }
  }

  /** Puts the lock in place, whole from the first moment on, where nobody has one. */
  #create(): boolean {
    const made = this.#makeBeside(this.#encoded());
    try {
      putInPlace(this.#fs, made.temporary, this.#path);
    } catch (error) {
      this.#fs.closeSync(made.fd);
      removeQuietly(this.#fs, made.temporary);
      if (errorCode(error) === 'EEXIST') return false;
      throw error;
    }
    this.#close();
    this.#fd = made.fd;
    this.#ino = made.ino;
    return true;
  }

  #makeBeside(bytes: Uint8Array): { temporary: string; fd: number; ino: number } {
    const temporary = temporaryPath(this.#path);
    try {
      const fd = this.#fs.openSync(temporary, 'wx+');
      try {
        if (this.#fs.writeSync(fd, bytes, 0, bytes.length, 0) !== bytes.length)
          throw Object.assign(new Error('The disk took no more bytes.'), { code: 'ENOSPC' });
        return { temporary, fd, ino: this.#fs.statSync(temporary).ino };
      } catch (error) {
        this.#fs.closeSync(fd);
        throw error;
      }
    } catch (error) {
      removeQuietly(this.#fs, temporary);
      throw error;
    }
  }

  /** Removes the lock that was judged; should another opener have been quicker, its lock is put back. */
  #removeIfStill(judged: LockHolder | undefined): void {
    const away = takeAway(this.#fs, this.#path);
    if (away === undefined) return;
    const found = readHolder(this.#fs, away);
    if (found?.instance === judged?.instance) {
      this.before = found ?? this.before;
      // Not lost sight of should we be stopped before we know.
      if (found) this.#acknowledged = { sequence: found.acknowledged, chain: found.chain };
      this.#bytesBefore = found ? this.#fs.readFileSync(away) : this.#bytesBefore;
      removeQuietly(this.#fs, away);
      return;
    }
    try {
      putInPlace(this.#fs, away, this.#path);
    } catch (error) {
      removeQuietly(this.#fs, away);
      if (errorCode(error) !== 'EEXIST') throw error;
    }
  }

  #encoded(): Uint8Array {
    const { instance, version, host = hostname(), pid = process.pid, now } = this.#options;
    const refreshed = now().toISOString();
    return encodeHolder({
      instance,
      host,
      pid,
      version,
      since: this.#since,
      refreshed,
      acknowledged: this.#acknowledged.sequence,
      chain: this.#acknowledged.chain,
    });
  }

  /** In place: all that changes in it has one length. It informs, so a disk that does not take it stops nothing. */
  #writeQuietly(): void {
    if (this.#fd === undefined) return;
    try {
      const bytes = this.#encoded();
      this.#fs.writeSync(this.#fd, bytes, 0, bytes.length, 0);
    } catch {
      // The next one is soon.
    }
  }

  #close(): void {
    const fd = this.#fd;
    this.#fd = undefined;
    this.#ino = 0;
    try {
      if (fd !== undefined) this.#fs.closeSync(fd);
    } catch {
      // The descriptor is gone either way.
    }
  }
}

/** Whether its process is known to be gone: on this machine only, and never by a clock; or it is one that we gave up. */
function isLeftBehind(holder: LockHolder, options: LockOptions): boolean {
  const { host = hostname(), isRunning = processIsRunning } = options;
  return givenUp.has(holder.instance) || (holder.host === host && !isRunning(holder.pid));
}
