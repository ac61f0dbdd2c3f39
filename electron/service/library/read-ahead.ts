import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FileReader } from '@db/library/opening/read-file';
export type { FileReader } from '@db/library/opening/read-file';
import { createWorkerReader } from '@db/library/opening/worker-reader';
import { loadSqlJs } from '@db/library/sql/load-sql-js';
import { builtWorker } from '../threads/built-worker';
import { PLACES_FILE } from './places-file';
import { realFolder } from './real-folder';

const LIBRARY_FILE = 'library.sqlite';

export interface LikelyLibrary {
  /** The folder asked for, absolute; undefined for the one that was open last. */
  library: string | undefined;
  /** A new one is going to be made: there is nothing to read. */
  demo: boolean;
  config: string;
}

/**
 * Begins to read the library that is going to be opened, and to load SQLite, while the service itself is being loaded:
 * a host calls it before it imports anything large. Gives the reader that has what was read.
 */
export function readAhead(workersFolder: string, likely: LikelyLibrary): FileReader | undefined {
  // Whoever needs it meets what may be wrong with it.
  loadSqlJs().catch(() => undefined);
  const worker = builtWorker(workersFolder, 'reading');
  if (!worker) return undefined;
  const reader = createWorkerReader(worker);
  const folder = likely.demo ? undefined : (likely.library ?? openLast(likely.config));
  if (folder !== undefined) reader.ahead(join(realFolder(folder), LIBRARY_FILE));
  return reader.read;
}

/** A guess, and no more: what cannot be read tells of no library. */
function openLast(config: string): string | undefined {
  try {
    const { recent } = JSON.parse(readFileSync(join(config, PLACES_FILE), 'utf8')) as {
      recent?: { folder?: unknown }[];
    };
    const folder = recent?.[0]?.folder;
    return typeof folder === 'string' ? folder : undefined;
  } catch {
    return undefined;
  }
}
