import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { migrate } from '../migrations/runner';
import { diskProblem } from './file/disk-problem';
import { Engine } from './sql/engine';
import { isMissing } from './file/file-system';
import { LiveLibrary, type OpenLibrary } from './live-library';
import { loadFromDisk, migrateOnDisk, openLog, refuseOtherThanLibrary, type Loaded } from './opening/loading';
import { LibraryLock, lockedProblem, processIsRunning, type LockHolder } from './lock/lock';
import { chainAfter } from './log/log-format';
import { createMeta, LIBRARY_FORMAT } from './file/meta';
import { settle, type LibraryOptions, type Settled } from './options';
import { LIBRARY_FILE, LOG_FILE } from './folding/rewrite';
import { sweepTemporaryFiles, syncFolderNow, writeWholeFile } from './file/whole-file';

export type { LibraryOptions } from './options';
export type { LibraryStatus, OpenLibrary } from './live-library';

/**
 * Makes a new library in a folder that has none, and opens it.
 * Throws Problem conflict where there is one already, library-not-one where the folder is a file, or the disk's.
 */
export async function createLibrary(folder: string, options: LibraryOptions): Promise<OpenLibrary> {
  const settled = settle(folder, options);
  const { fileSystem: fs } = settled;
  try {
    await refuseExisting(settled);
    await fs.mkdir(folder);
    syncFolderNow(fs, join(folder, '..'));
    const bytes = await newLibraryBytes(settled);
    const path = join(folder, LIBRARY_FILE);
    await writeWholeFile(fs, path, bytes, { beforeReplace: () => refuseExisting(settled) });
  } catch (error) {
    throw diskProblem(error, 'create the library');
  }
  return openLibrary(folder, options);
}

/**
 * Opens the library in a folder; never creates one. Throws Problem library-missing, -not-one, -newer, -damaged (with
 * `facts.newestBackup`), -changed-outside, -locked or the disk's; the files are then untouched.
 */
export async function openLibrary(folder: string, options: LibraryOptions): Promise<OpenLibrary> {
  const settled = settle(folder, options);
  await refuseOtherThanLibrary(settled);
  const held = settled.readOnly ? undefined : await takeLock(settled);
  if (!(held instanceof LibraryLock)) return openReadOnly(settled, held);
  try {
    await sweepTemporaryFiles(
      settled.fileSystem,
      folder,
      (pid) => pid !== process.pid && processIsRunning(pid),
    );
    const loaded = await loadFromDisk(settled);
    return await openForWriting(settled, loaded, held);
  } catch (error) {
    await held.release();
    throw error;
  }
}

async function openForWriting(settled: Settled, loaded: Loaded, lock: LibraryLock): Promise<OpenLibrary> {
  try {
    await migrateOnDisk(settled, loaded);
    return new LiveLibrary({ settled, loaded, log: openLog(settled, loaded), lock });
  } catch (error) {
    if (error instanceof Problem && error.code === 'library-read-only') {
      await lock.release();
      migrate(loaded.engine, settled.migrations, settled.now());
      return new LiveLibrary({ settled, loaded, readOnlyBecause: error });
    }
    loaded.engine.close();
    throw error;
  }
}

async function openReadOnly(settled: Settled, held: LockHolder | Problem | undefined): Promise<OpenLibrary> {
  const because = held === undefined ? askedFor() : held instanceof Problem ? held : lockedProblem(held);
  if (because.code === 'library-locked' && settled.ifLocked === 'refuse') throw because;
  const loaded = await loadFromDisk(settled);
  migrate(loaded.engine, settled.migrations, settled.now());
  return new LiveLibrary({ settled, loaded, readOnlyBecause: because });
}

/** The lock, who holds it, or why it cannot be written: on a full or read-only disk one can still read. */
async function takeLock(settled: Settled): Promise<LibraryLock | LockHolder | Problem> {
  const { fileSystem, folder, instance, version, now, takeOver } = settled;
  try {
    return await LibraryLock.take(fileSystem, folder, { instance, version, now, takeOver });
  } catch (error) {
    return diskProblem(error, 'open the library for writing');
  }
}

async function newLibraryBytes({ makeId, now, migrations }: Settled): Promise<Uint8Array> {
  const engine = await Engine.open();
  try {
    const id = makeId();
    createMeta(engine, {
      id,
      format: LIBRARY_FORMAT,
      sequence: 0,
      chain: chainAfter('', id),
      revision: 1,
      createdAt: now().toISOString(),
    });
    migrate(engine, migrations, now());
    return engine.exportBytes();
  } finally {
    engine.close();
  }
}

async function refuseExisting({ fileSystem: fs, folder }: Settled): Promise<void> {
  for (const name of [LIBRARY_FILE, LOG_FILE]) {
    try {
      await fs.stat(join(folder, name));
    } catch (error) {
      if (isMissing(error)) continue;
      if (error instanceof Error && 'code' in error && error.code === 'ENOTDIR') throw aFile();
      throw error;
    }
    throw new Problem({
      code: 'conflict',
      title: 'There is a library in this folder already.',
      advice: 'Open that one, or choose an empty folder for the new library. Nothing was changed.',
      facts: { file: name },
    });
  }
}

function aFile(): Problem {
  return new Problem({
    code: 'library-not-one',
    title: 'This is a file; a library is a folder.',
    advice: 'Choose an empty folder for the new library. Nothing was changed.',
  });
}

function askedFor(): Problem {
  return new Problem({
    code: 'library-read-only',
    title: 'This library is open for reading only.',
    advice: 'Open it again for writing to make changes.',
  });
}
