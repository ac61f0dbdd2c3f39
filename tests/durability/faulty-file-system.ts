import { nodeFileSystem, type FileHandle, type FileSystem } from '@db/library/file/file-system';

export const DISK_ERRORS = ['ENOSPC', 'EDQUOT', 'EIO', 'EPERM', 'EBUSY', 'EACCES', 'EROFS'] as const;

export function diskError(code: string): Error {
  return Object.assign(new Error(`${code}: injected`), { code });
}

interface Fault {
  /** Counted from 1, over the calls since `arm`. */
  at: number;
  /** The error to throw; 'short' takes half of a write first; 'half-then' writes half, then throws ENOSPC. */
  kind: string;
}

/**
 * The real disk, but for one call that fails. Flushes do nothing here beyond failing when told to: what they are
 * for, a power cut, cannot be had in a test, and hundreds of them take minutes.
 */
export class FaultyFileSystem {
  readonly fs: FileSystem;
  /** The calls since `arm`, in order. */
  calls: string[] = [];
  #fault: Fault | undefined;
  #forGood = false;

  constructor() {
    this.fs = new Proxy(nodeFileSystem, {
      get: (target, name: keyof FileSystem) => {
        if (name === 'pause') return () => Promise.resolve();
        if (name === 'open') return this.#open.bind(this);
        if (name === 'fdatasyncSync' || name === 'fsyncSync') return () => this.#meet(name);
        if (name === 'writeSync') return this.#writeSync.bind(this);
        const call = target[name] as (...given: unknown[]) => unknown;
        const isSync = name.endsWith('Sync');
        return (...given: unknown[]) => {
          if (isSync) this.#meet(name);
          return isSync ? call(...given) : this.#meetLater(name).then(() => call(...given));
        };
      },
    });
  }

  /** Counts from here, and fails the `at`-th call, once. */
  arm(at: number, kind: string): void {
    this.calls = [];
    this.#fault = { at, kind };
  }

  /** Fails every call from the `at`-th on. */
  armForGood(at: number, kind: string): void {
    this.arm(at, kind);
    this.#forGood = true;
  }

  disarm(): void {
    this.#fault = undefined;
    this.#forGood = false;
  }

  #kindNow(name: string): string | undefined {
    this.calls.push(name);
    if (!this.#fault) return undefined;
    const { at, kind } = this.#fault;
    return at === this.calls.length || (this.#forGood && at < this.calls.length) ? kind : undefined;
  }

  #meet(name: string): void {
    const kind = this.#kindNow(name);
    if (kind === undefined || kind === 'short') return;
    throw diskError(kind === 'half-then' ? 'ENOSPC' : kind);
  }

  async #meetLater(name: string): Promise<void> {
    this.#meet(name);
  }

  #writeSync(fd: number, bytes: Uint8Array, offset: number, length: number, position: number): number {
    const kind = this.#kindNow('writeSync');
    if (kind === undefined) return nodeFileSystem.writeSync(fd, bytes, offset, length, position);
    if (kind === 'short' || kind === 'half-then') {
      const half = nodeFileSystem.writeSync(fd, bytes, offset, Math.ceil(length / 2), position);
      if (kind === 'short') return half;
    }
    throw diskError(kind === 'half-then' ? 'ENOSPC' : kind);
  }

  async #open(path: string, flags: string, mode?: number): Promise<FileHandle> {
    await this.#meetLater('open');
    const handle = await nodeFileSystem.open(path, flags, mode);
    return {
      write: async (bytes, offset, length, position) => {
        const kind = this.#kindNow('handle.write');
        if (kind === undefined) return handle.write(bytes, offset, length, position);
        if (kind === 'short' || kind === 'half-then') {
          const half = await handle.write(bytes, offset, Math.ceil(length / 2), position);
          if (kind === 'short') return half;
        }
        throw diskError(kind === 'half-then' ? 'ENOSPC' : kind);
      },
      sync: () => this.#meetLater('handle.sync'),
      close: async () => {
        await handle.close();
        await this.#meetLater('handle.close');
      },
    };
  }
}
