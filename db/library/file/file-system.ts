import fs from 'node:fs';
import { open, mkdir, readdir, readFile, realpath, rename, rm, stat } from 'node:fs/promises';

/** What a file is, as far as telling "the same as before" needs it. */
export interface FileFacts {
  size: number;
  mtimeMs: number;
  ino: number;
  mode: number;
  isFile: boolean;
  isDirectory: boolean;
}

export interface FileHandle {
  write(bytes: Uint8Array, offset: number, length: number, position: number): Promise<number>;
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** The disk, as the library uses it. Synchronous calls serve the log; the others, whole files. */
export interface FileSystem {
  openSync(path: string, flags: string): number;
  writeSync(fd: number, bytes: Uint8Array, offset: number, length: number, position: number): number;
  fdatasyncSync(fd: number): void;
  fsyncSync(fd: number): void;
  ftruncateSync(fd: number, length: number): void;
  closeSync(fd: number): void;
  statSync(path: string): FileFacts;
  readFileSync(path: string): Uint8Array;
  renameSync(from: string, to: string): void;
  /** Gives a file a second name; fails with EEXIST where there is one of that name. */
  linkSync(from: string, to: string): void;
  unlinkSync(path: string): void;
  readdirSync(path: string): string[];
  realpathSync(path: string): string;

  open(path: string, flags: string, mode?: number): Promise<FileHandle>;
  stat(path: string): Promise<FileFacts>;
  readFile(path: string): Promise<Uint8Array>;
  /** At most the first `length` bytes. */
  readStart(path: string, length: number): Promise<Uint8Array>;
  readdir(path: string): Promise<string[]>;
  mkdir(path: string): Promise<void>;
  realpath(path: string): Promise<string>;
  rename(from: string, to: string): Promise<void>;
  unlink(path: string): Promise<void>;
  /** Waits; here so that a test need not. */
  pause(ms: number): Promise<void>;
}

function facts(stats: fs.Stats): FileFacts {
  const { size, mtimeMs, ino, mode } = stats;
  return { size, mtimeMs, ino, mode, isFile: stats.isFile(), isDirectory: stats.isDirectory() };
}

export const nodeFileSystem: FileSystem = {
  openSync: (path, flags) => fs.openSync(path, flags),
  writeSync: (fd, bytes, offset, length, position) => fs.writeSync(fd, bytes, offset, length, position),
  fdatasyncSync: (fd) => fs.fdatasyncSync(fd),
  fsyncSync: (fd) => fs.fsyncSync(fd),
  ftruncateSync: (fd, length) => fs.ftruncateSync(fd, length),
  closeSync: (fd) => fs.closeSync(fd),
  statSync: (path) => facts(fs.statSync(path)),
  readFileSync: (path) => fs.readFileSync(path),
  renameSync: (from, to) => fs.renameSync(from, to),
  linkSync: (from, to) => fs.linkSync(from, to),
  unlinkSync: (path) => fs.unlinkSync(path),
  readdirSync: (path) => fs.readdirSync(path),
  realpathSync: (path) => fs.realpathSync(path),

  async open(path, flags, mode) {
    const handle = await open(path, flags, mode);
    return {
      write: async (bytes, offset, length, position) =>
        (await handle.write(bytes, offset, length, position)).bytesWritten,
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  stat: async (path) => facts(await stat(path)),
  readFile: (path) => readFile(path),
  async readStart(path, length) {
    const handle = await open(path, 'r');
    try {
      const { bytesRead, buffer } = await handle.read(Buffer.alloc(length), 0, length, 0);
      return buffer.subarray(0, bytesRead);
    } finally {
      await handle.close();
    }
  },
  readdir: (path) => readdir(path),
  mkdir: async (path) => void (await mkdir(path, { recursive: true })),
  realpath: (path) => realpath(path),
  rename: (from, to) => rename(from, to),
  unlink: (path) => rm(path),
  pause: (ms) => new Promise((done) => setTimeout(done, ms)),
};

/** The operating system's code of a failed call, such as ENOSPC; undefined for any other error. */
export function errorCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

/** Whether the error says that there is no such file. */
export function isMissing(error: unknown): boolean {
  return errorCode(error) === 'ENOENT';
}
