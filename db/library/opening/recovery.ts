import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { keepAside } from './aside';
import { readBackup } from '../backups/backups';
import { diskProblem } from '../file/disk-problem';
import { openBytes } from '../file/library-bytes';
import type { LibraryMeta } from '../file/meta';
import { readLog } from '../log/read-log';
import { readIfThere, refuseOtherThanLibrary } from './loading';
import { LibraryLock } from '../lock/lock';
import { lockedProblem, takenOverProblem } from '../lock/lock-holder';
import { decodeLog } from '../log/log-format';
import { removeQuietly, takenAway } from '../log/log-place';
import { withRoom } from '../log/log-room';
import { openLibrary, type LibraryOptions, type OpenLibrary } from '../open-library';
import { settle, type Settled } from '../options';
import { recordsBeyond } from '../log/replay';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { isAboutLog, salvageLog, type GoodLog, type Salvage } from '../log/salvage';
import { sha256Of, writeWholeFile } from '../file/whole-file';
import { refuseAlteredSchema } from './schema';

/** What became of a log that could not be followed: how much of it was taken, and where all of it is kept. */
export interface KeptLog extends GoodLog {
  keptAs: string;
}

export interface Recovered {
  library: OpenLibrary;
  /** Undefined when the log could be followed as it was. */
  log?: KeptLog;
}

/** What is to stand in place of the log as found; `found` is undefined where there was none. */
interface Mending extends Salvage {
  found: Uint8Array | undefined;
  /** Whether the log could be followed on the file, so that nothing of it is missing. */
  followed: boolean;
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
  const log = await underLock(settled, 'restore the backup', async (lock) => {
    const bytes = await readBackup(fs, backupFolder, name);
    const mending = await planMending(settled, bytes);
    const damaged = await readIfThere(fs, join(folder, LIBRARY_FILE));
    if (damaged) await keepAside(settled, damaged, 'damaged.sqlite');
    const keptAs = await keepLog(settled, mending);
    const beforeReplace = async () => refuseTakenOver(lock);
    await writeWholeFile(fs, join(folder, LIBRARY_FILE), bytes, { beforeReplace });
    return mend(settled, lock, mending, keptAs);
  });
  return { library: await openLibrary(folder, options), log };
}

/**
 * Opens a library with its file as it is, and the part of the log beside it that holds: where the log is damaged or
 * foreign, or does not know the file. All of the log, and a file that it does not know, are first kept among the
 * backups. Throws Problem; file and log are then as they were.
 */
export async function recoverFromLog(folder: string, options: LibraryOptions): Promise<Recovered> {
  const settled = settle(folder, options);
  const { fileSystem: fs } = settled;
  await refuseOtherThanLibrary(settled);
  const log = await underLock(settled, 'put the change log right', async (lock) => {
    const file = await fs.readFile(join(folder, LIBRARY_FILE));
    const mending = await planMending(settled, file);
    const known = filesKnownTo(mending.found);
    const isKnown = known?.includes(sha256Of(file));
    if (mending.followed && isKnown && mending.left === 0) return undefined;
    if (known && !isKnown) await keepAside(settled, file, 'as it was.sqlite');
    return mend(settled, lock, mending, await keepLog(settled, mending));
  });
  return { library: await openLibrary(folder, options), log };
}

/** The hashes that a log says the library file may have; undefined where it says nothing that can be read. */
function filesKnownTo(log: Uint8Array | undefined): string[] | undefined {
  try {
    return decodeLog(log ?? new Uint8Array()).files;
  } catch (error) {
    if (isAboutLog(error)) return undefined;
    throw error;
  }
}

async function underLock<T>(
  settled: Settled,
  doing: string,
  work: (lock: LibraryLock) => Promise<T>,
): Promise<T> {
  try {
    const lock = await LibraryLock.take(settled.fileSystem, settled.folder, settled);
    if (!(lock instanceof LibraryLock)) throw lockedProblem(lock, settled.now());
    try {
      return await work(lock);
    } finally {
      lock.release();
    }
  } catch (error) {
    throw diskProblem(error, doing);
  }
}

/** Somebody may have taken the library while this was being prepared. */
function refuseTakenOver(lock: LibraryLock): void {
  const holder = lock.heldByOther();
  if (holder) throw takenOverProblem(holder);
}

/** What the log of this file has to be. */
async function planMending(settled: Settled, file: Uint8Array): Promise<Mending> {
  const { fileSystem: fs, folder, migrations } = settled;
  const { engine, meta } = await openBytes(file, migrations.length);
  try {
    await refuseAlteredSchema(engine, migrations);
    const found = readLog(fs, folder);
    const followed = found !== undefined && canBeFollowed(meta, found);
    return { found, followed, ...salvageLog(engine, meta, found ?? new Uint8Array(), sha256Of(file)) };
  } finally {
    engine.close();
  }
}

function canBeFollowed(meta: LibraryMeta, log: Uint8Array): boolean {
  try {
    recordsBeyond(meta, decodeLog(log));
    return true;
  } catch (error) {
    if (isAboutLog(error)) return false;
    throw error;
  }
}

function keepLog(settled: Settled, { found }: Mending): Promise<string | undefined> {
  return found ? keepAside(settled, found, 'set aside.log') : Promise.resolve(undefined);
}

/** Puts the log in place. Answers what of it is missing, if anything. */
async function mend(
  settled: Settled,
  lock: LibraryLock,
  { found, followed, bytes, taken, left }: Mending,
  keptAs: string | undefined,
): Promise<KeptLog | undefined> {
  const { fileSystem: fs, folder } = settled;
  const path = join(folder, LOG_FILE);
  const { durable } = await writeWholeFile(fs, path, withRoom(bytes), {
    beforeReplace: async () => {
      refuseTakenOver(lock);
      const now = readLog(fs, folder);
      if ((now && sha256Of(now)) !== (found && sha256Of(found))) throw changedMeanwhile(path);
    },
  });
  for (const left of takenAway(fs, path)) removeQuietly(fs, left);
  // Changes are going to be acknowledged by this log: it must not be undone by a power cut.
  if (!durable) throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
  return (followed && left === 0) || keptAs === undefined ? undefined : { taken, left, keptAs };
}

function changedMeanwhile(file: string): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: 'Another program changed the log of this library just now.',
    advice: 'Nothing was overwritten. Open the library again to see how it is.',
    facts: { file },
  });
}
