import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { pendingMigrations } from '../../migrations/runner';
import { keepAside } from './aside';
import { readBackup } from '../backups/backups';
import { diskProblem } from '../file/disk-problem';
import { openBytes } from '../file/library-bytes';
import { readIfThere, refuseOtherThanLibrary } from './loading';
import { LibraryLock, lockedProblem } from '../lock/lock';
import { openLibrary, type LibraryOptions, type OpenLibrary } from '../open-library';
import { settle, type Settled } from '../options';
import { followLog } from '../log/replay';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { isAboutLog, salvageLog, type GoodLog, type Salvage } from '../log/salvage';
import { sha256Of, writeWholeFile } from '../file/whole-file';

/** What became of a log that could not be followed: how much of it was taken, and where all of it is kept. */
export interface KeptLog extends GoodLog {
  keptAs: string;
}

export interface Recovered {
  library: OpenLibrary;
  /** Undefined when the log could be followed as it was. */
  log?: KeptLog;
}

/** A log found wanting, and what is to stand in its place. */
interface Mending extends Salvage {
  found: Uint8Array;
}

/**
 * Opens a library whose file is damaged or gone from one of its backups. The damaged file is kept among the backups;
 * changes in the log are replayed where they follow on that backup, and the log is kept aside where they do not.
 * Throws Problem; nothing is lost then, and it can be tried again.
 */
export async function recoverFromBackup(
  folder: string,
  name: string,
  options: LibraryOptions,
): Promise<Recovered> {
  const settled = settle(folder, options);
  const { fileSystem: fs, backupFolder } = settled;
  const log = await underLock(settled, 'restore the backup', async () => {
    const bytes = await readBackup(fs, backupFolder, name);
    const mending = await planMending(settled, bytes);
    const damaged = await readIfThere(fs, join(folder, LIBRARY_FILE));
    if (damaged) await keepAside(settled, damaged, 'damaged.sqlite');
    const keptAs = mending && (await keepAside(settled, mending.found, 'set aside.log'));
    await writeWholeFile(fs, join(folder, LIBRARY_FILE), bytes);
    return mending && keptAs ? mend(settled, mending, keptAs) : undefined;
  });
  return { library: await openLibrary(folder, options), log };
}

/**
 * Opens a library whose file is whole with the part of its damaged or foreign log that holds. All of the log is first
 * kept among the backups; then the good part takes its place. Throws Problem; the log is then as it was.
 */
export async function recoverFromLog(folder: string, options: LibraryOptions): Promise<Recovered> {
  const settled = settle(folder, options);
  const { fileSystem: fs } = settled;
  await refuseOtherThanLibrary(settled);
  const log = await underLock(settled, 'put the change log right', async () => {
    const mending = await planMending(settled, await fs.readFile(join(folder, LIBRARY_FILE)));
    return mending && mend(settled, mending, await keepAside(settled, mending.found, 'set aside.log'));
  });
  return { library: await openLibrary(folder, options), log };
}

async function underLock<T>(settled: Settled, doing: string, work: () => Promise<T>): Promise<T> {
  try {
    const lock = await LibraryLock.take(settled.fileSystem, settled.folder, settled);
    if (!(lock instanceof LibraryLock)) throw lockedProblem(lock);
    try {
      return await work();
    } finally {
      await lock.release();
    }
  } catch (error) {
    throw diskProblem(error, doing);
  }
}

/** What to put in place of a log that does not follow on this file; undefined when it does, or there is none. */
async function planMending(settled: Settled, file: Uint8Array): Promise<Mending | undefined> {
  const { fileSystem: fs, folder, migrations } = settled;
  const { engine, meta } = await openBytes(file, migrations.length);
  try {
    pendingMigrations(engine, migrations);
    const found = await readIfThere(fs, join(folder, LOG_FILE));
    if (!found) return undefined;
    try {
      followLog(engine, meta, found);
      return undefined;
    } catch (error) {
      if (!isAboutLog(error)) throw error;
      return { found, ...salvageLog(engine, meta, found) };
    }
  } finally {
    engine.close();
  }
}

async function mend(settled: Settled, mending: Mending, keptAs: string): Promise<KeptLog> {
  const { fileSystem: fs, folder } = settled;
  const { found, bytes, taken, left } = mending;
  const path = join(folder, LOG_FILE);
  const { durable } = await writeWholeFile(fs, path, bytes, {
    beforeReplace: async () => {
      if (sha256Of(await fs.readFile(path)) !== sha256Of(found)) throw changedMeanwhile(path);
    },
  });
  // Changes are going to be acknowledged by this log: it must not be undone by a power cut.
  if (!durable) throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
  return { taken, left, keptAs };
}

function changedMeanwhile(file: string): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: 'Another program changed the log of this library just now.',
    advice: 'Nothing was overwritten. Open the library again to see how it is.',
    facts: { file },
  });
}
