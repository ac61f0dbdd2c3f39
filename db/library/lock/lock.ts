import { hostname } from 'node:os';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { errorCode, isMissing, type FileSystem } from '../file/file-system';

export const LOCK_FILE = 'library.lock';
export const LOCK_REFRESH_MS = 30_000;
export const LOCK_STALE_MS = 120_000;

/** Who has a library open for writing, as the lock file says. */
export interface LockHolder {
  instance: string;
  host: string;
  pid: number;
  version: string;
  /** ISO 8601 UTC. */
  since: string;
  refreshed: string;
}

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

/**
 * The lock file beside a library. It only informs: synchronising programs delay and copy it. What protects the
 * library is that nothing is replaced that is not as we left it.
 */
export class LibraryLock {
  readonly #fs: FileSystem;
  readonly #path: string;
  readonly #options: LockOptions;
  readonly #since: string;

  private constructor(fs: FileSystem, path: string, options: LockOptions) {
    this.#fs = fs;
    this.#path = path;
    this.#options = options;
    this.#since = options.now().toISOString();
  }

  /**
   * Takes the lock, or tells who holds it. A lock is stale, and taken, when its process on this machine is gone
   * or when nobody has refreshed it for two minutes. Throws the disk's error when it cannot be written.
   */
  static async take(fs: FileSystem, folder: string, options: LockOptions): Promise<LibraryLock | LockHolder> {
    const path = join(folder, LOCK_FILE);
    const lock = new LibraryLock(fs, path, options);
    for (let attempt = 0; attempt < 3; attempt += 1) {
      if (await lock.#create()) return lock;
      const holder = await readHolder(fs, path);
      if (holder && !options.takeOver && !isStale(holder, options)) return holder;
      // Only the lock that was judged is removed; should another opener have been quicker, its lock stays.
      if ((await readHolder(fs, path))?.instance === holder?.instance) await removeIfThere(fs, path);
    }
    return (await readHolder(fs, path)) ?? unknownHolder(options);
  }

  /**
   * Who has the lock now, if it is not us any more. A lock that was deleted is put back: nobody else has it, and
   * before anything is replaced the files are compared anyway.
   */
  async holderIfNotUs(): Promise<LockHolder | undefined> {
    const holder = await readHolder(this.#fs, this.#path);
    if (!holder) await this.#create();
    return holder && holder.instance !== this.#options.instance ? holder : undefined;
  }

  /** Tells others that we are alive. False when the lock has passed to someone else: it is not taken back. */
  async refresh(): Promise<boolean> {
    if (await this.holderIfNotUs()) return false;
    await this.#write('r+');
    return true;
  }

  /** Removes the lock, if it is still ours. A failure leaves a lock that goes stale. */
  async release(): Promise<void> {
    try {
      const holder = await readHolder(this.#fs, this.#path);
      if (holder?.instance === this.#options.instance) await this.#fs.unlink(this.#path);
    } catch {
      // A lock whose process is gone counts as stale at once.
    }
  }

  async #create(): Promise<boolean> {
    try {
      await this.#write('wx');
      return true;
    } catch (error) {
      if (errorCode(error) === 'EEXIST') return false;
      throw error;
    }
  }

  async #write(flags: string): Promise<void> {
    const { instance, version, host = hostname(), pid = process.pid, now } = this.#options;
    const holder: LockHolder = {
      instance,
      host,
      pid,
      version,
      since: this.#since,
      refreshed: now().toISOString(),
    };
    const bytes = Buffer.from(`${JSON.stringify(holder)}\n`);
    const handle = await this.#fs.open(this.#path, flags);
    try {
      // ISO times have one length, so a refresh overwrites exactly what stood there.
      const count = await handle.write(bytes, 0, bytes.length, 0).finally(() => handle.close());
      if (count !== bytes.length) {
        throw Object.assign(new Error('The disk took no more bytes.'), { code: 'ENOSPC' });
      }
    } catch (error) {
      // Half a lock, or one that we do not know we hold, would keep ourselves out.
      if (flags === 'wx') await removeIfThere(this.#fs, this.#path);
      throw error;
    }
  }
}

function isStale(holder: LockHolder, options: LockOptions): boolean {
  const { host = hostname(), isRunning = processIsRunning } = options;
  if (holder.host === host && !isRunning(holder.pid)) return true;
  // A time in the future is another machine's clock running ahead, not a stale lock.
  return options.now().getTime() - Date.parse(holder.refreshed) > LOCK_STALE_MS;
}

/** The holder, or undefined where there is no lock or one that cannot be read, which holds nobody off. */
async function readHolder(fs: FileSystem, path: string): Promise<LockHolder | undefined> {
  try {
    const holder = JSON.parse(Buffer.from(await fs.readFile(path)).toString('utf8')) as Partial<LockHolder>;
    const { instance, host, pid, version, since, refreshed } = holder;
    if (
      !instance ||
      !host ||
      !pid ||
      !version ||
      !since ||
      !refreshed ||
      Number.isNaN(Date.parse(refreshed))
    ) {
      return undefined;
    }
    return { instance, host, pid, version, since, refreshed };
  } catch (error) {
    if (error instanceof SyntaxError || isMissing(error)) return undefined;
    throw error;
  }
}

async function removeIfThere(fs: FileSystem, path: string): Promise<void> {
  try {
    await fs.unlink(path);
  } catch (error) {
    if (!isMissing(error)) throw error;
  }
}

function unknownHolder(options: LockOptions): LockHolder {
  const at = options.now().toISOString();
  return {
    instance: 'unknown',
    host: 'another computer',
    pid: 0,
    version: 'unknown',
    since: at,
    refreshed: at,
  };
}

/** Says who has the library open. Since when is a fact: a screen writes it as its reader does. */
export function lockedProblem(holder: LockHolder): Problem {
  const where = holder.host === hostname() ? 'in another window on this computer' : `on ${holder.host}`;
  return new Problem({
    code: 'library-locked',
    title: `This library is open ${where}.`,
    advice:
      'You can read it here. Close it there to work on it here. Taking it over cuts that window ' +
      'off: what is typed there and not saved yet is lost.',
    facts: { holder },
  });
}
