import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import type { FileIdentity } from '../file/whole-file';

// Only what Node holds itself is imported: this thread starts before anything else of Stillroom's is loaded.

export interface ReadingJob {
  path: string;
}
export type ReadingMessage =
  { done: number; of: number } | { memory: SharedArrayBuffer; identity: FileIdentity } | { failed: true };
/** Memory that is going to be filled, for a thread that only sees to it that the system has it ready. */
interface TouchingJob {
  memory: SharedArrayBuffer;
  size: number;
}

const AT_ONCE = 1024 * 1024;
const TOLD_EVERY = 16 * AT_ONCE;
/** Room after the file, so that it can grow in memory without being copied. Memory not touched costs nothing. */
const SPARE_SHARE = 8;
const LEAST_SPARE = 4 * 1024 * 1024;
/** From this size on, in bytes, getting the memory takes longer than reading: a second thread then halves it. */
const LARGE = 32 * 1024 * 1024;
const PAGE = 4096;

function tell(message: ReadingMessage): void {
  parentPort?.postMessage(message);
}

/** Asks the system for every page of the memory, the last first, without changing what stands there. */
function touch({ memory, size }: TouchingJob): void {
  const bytes = new Uint8Array(memory, 0, size);
  for (let at = bytes.length - PAGE; at >= 0; at -= PAGE) Atomics.or(bytes, at, 0);
}

/** Reads and hashes a file piece by piece. A file that changes meanwhile fails: whoever asked reads it anew. */
function read({ path }: ReadingJob): ReadingMessage {
  const fd = openSync(path, 'r');
  try {
    const { size, mtimeMs, ino } = fstatSync(fd);
    const memory = new SharedArrayBuffer(size + Math.max(LEAST_SPARE, Math.ceil(size / SPARE_SHARE)));
    if (size >= LARGE)
      new Worker(new URL(import.meta.url), { workerData: { memory, size } satisfies TouchingJob });
    const bytes = new Uint8Array(memory);
    const hash = createHash('sha256');
    const scratch = new Uint8Array(AT_ONCE);
    for (let at = 0; at < size;) {
      const count = readSync(fd, scratch, 0, Math.min(AT_ONCE, size - at), at);
      if (count <= 0) return { failed: true };
      const piece = scratch.subarray(0, count);
      // Of shared memory Node would take a copy to hash it: the piece is hashed before it goes there.
      hash.update(piece);
      bytes.set(piece, at);
      at += count;
      if (at % TOLD_EVERY === 0 || at === size) tell({ done: at, of: size });
    }
    const after = fstatSync(fd);
    if (after.size !== size || after.mtimeMs !== mtimeMs) return { failed: true };
    return { memory, identity: { size, mtimeMs, ino, sha256: hash.digest('hex') } };
  } finally {
    closeSync(fd);
  }
}

function doJob(job: ReadingJob | TouchingJob): void {
  if ('memory' in job) return touch(job);
  try {
    tell(read(job));
  } catch {
    tell({ failed: true });
  }
}

doJob(workerData as ReadingJob | TouchingJob);
