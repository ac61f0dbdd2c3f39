import { join } from 'node:path';
import { diskProblem } from '../file/disk-problem';
import type { FileSystem } from '../file/file-system';
import { openBytes } from '../file/library-bytes';
import { sha256Of } from '../file/whole-file';
import { LIBRARY_FILE } from './rewrite';

/** What is to be looked through; plain data, so that it can be handed to a worker. */
export interface CheckJob {
  folder: string;
  /** The hashes that the file may have; another file is not looked at. */
  expected: string[];
}

/** Throws Problem library-damaged when the file is not whole. */
export type Checker = (job: CheckJob) => Promise<void>;

/** Reads the library file and has SQLite check every page, index and reference of it. */
export async function performCheck(fs: FileSystem, { folder, expected }: CheckJob): Promise<void> {
  try {
    const bytes = await fs.readFile(join(folder, LIBRARY_FILE));
    if (!expected.includes(sha256Of(bytes))) return;
    const { engine } = await openBytes(bytes, Number.MAX_SAFE_INTEGER);
    engine.close();
  } catch (error) {
    throw diskProblem(error, 'check the library file');
  }
}
