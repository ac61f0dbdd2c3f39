import type { FileSystem } from '../file/file-system';
import { sha256Of, type FileIdentity } from '../file/whole-file';

/** A library file as it was read: all that follows is about these very bytes. */
export interface ReadFile {
  /** For the engine to keep, with all the memory behind them: nobody else has them. */
  bytes: Uint8Array;
  identity: FileIdentity;
}

/** How much of a file has been read, in bytes. */
export type ReadProgress = (done: number, of: number) => void;

/** Reads a file and knows it by its hash. Throws what the disk says. */
export type FileReader = (path: string, progress?: ReadProgress) => Promise<ReadFile>;

/** Reads in this process; for tests, and where no worker can be had. */
export function createInlineReader(fs: FileSystem): FileReader {
  return async (path) => {
    const { size, mtimeMs, ino } = await fs.stat(path);
    const bytes = ownMemory(await fs.readFile(path));
    return { bytes, identity: { size, mtimeMs, ino, sha256: sha256Of(bytes) } };
  };
}

/** A small file may come in memory that it shares with others, and what lies behind it would not be ours. */
function ownMemory(bytes: Uint8Array): Uint8Array {
  return bytes.byteLength === bytes.buffer.byteLength ? bytes : Uint8Array.from(bytes);
}
