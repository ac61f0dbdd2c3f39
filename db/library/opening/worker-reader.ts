import { Worker } from 'node:worker_threads';
import { nodeFileSystem } from '../file/file-system';
import { createInlineReader, type FileReader, type ReadFile, type ReadProgress } from './read-file';
import type { ReadingJob, ReadingMessage } from './reading-worker';

interface Reading {
  result: Promise<ReadFile | undefined>;
  follow(progress: ReadProgress): void;
}

/** Reads files in a thread of its own. */
export interface WorkerReader {
  read: FileReader;
  /** Begins to read a file that is likely to be asked for: what this process loads meanwhile costs no time then. */
  ahead(path: string): void;
}

/** @param workerUrl the built `reading-worker.js` */
export function createWorkerReader(workerUrl: URL): WorkerReader {
  const readHere = createInlineReader(nodeFileSystem);
  const early = new Map<string, Reading>();
  return {
    ahead: (path) => void early.set(path, begin(workerUrl, path)),
    async read(path, progress) {
      const reading = early.get(path) ?? begin(workerUrl, path);
      early.delete(path);
      if (progress) reading.follow(progress);
      const found = await reading.result;
      return found && (await isStill(path, found)) ? found : readHere(path);
    },
  };
}

/** Whether the file is, now that it is asked for, the one that was read before. */
async function isStill(path: string, { identity }: ReadFile): Promise<boolean> {
  const { size, mtimeMs, ino } = await nodeFileSystem.stat(path);
  return size === identity.size && mtimeMs === identity.mtimeMs && ino === identity.ino;
}

function begin(workerUrl: URL, path: string): Reading {
  const followers: ReadProgress[] = [];
  const result = new Promise<ReadFile | undefined>((resolve) => {
    const worker = new Worker(workerUrl, { workerData: { path } satisfies ReadingJob });
    worker.on('message', (message: ReadingMessage) => {
      if ('done' in message) for (const progress of followers) progress(message.done, message.of);
      else resolve('failed' in message ? undefined : readFileOf(message));
    });
    // Whatever went wrong there is met again, and told, when the file is read here.
    worker.once('error', () => resolve(undefined));
    worker.once('exit', () => resolve(undefined));
  });
  return { result, follow: (progress) => void followers.push(progress) };
}

function readFileOf({ memory, identity }: Extract<ReadingMessage, { memory: unknown }>): ReadFile {
  return { bytes: new Uint8Array(memory, 0, identity.size), identity };
}
