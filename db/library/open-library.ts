import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { migrate } from '../migrations/runner';
import { listBackups } from './backups/backups';
import { diskProblem } from './file/disk-problem';
import { Engine } from './sql/engine';
import { isMissing } from './file/file-system';
import { LiveLibrary, type OpenLibrary } from './live-library';
import { claimLog } from './opening/claiming';
import { copiesBeside } from './opening/copies-beside';
import { differsFromLock, differsFromMemory } from './opening/memory';
import { loadFromDisk, refuseOtherThanLibrary, type Loaded } from './opening/loading';
import { backupGoesFurther, busyElsewhere, lostChanges } from './opening/opening-problems';
import { migrateOnDisk } from './opening/upgrading';
import { LibraryLock, processIsRunning } from './lock/lock';
import { lockedProblem, takenOverProblem, type LockHolder } from './lock/lock-holder';
import type { ChangeLog } from './log/log';
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
    await sweep(settled);
    const { loaded, log } = await loadAndClaim(settled, held);
    return await openForWriting(settled, loaded, log, held);
  } catch (error) {
    held.giveBack();
    throw diskProblem(error, 'open the library');
  }
}

/** Removes what stopped processes left half-written, wherever we write. */
async function sweep({ fileSystem: fs, folder, backupFolder }: Settled): Promise<void> {
  const attachments = join(folder, 'attachments');
  const groups = await fs.readdir(attachments).catch(() => []);
  for (const place of [folder, backupFolder, ...groups.map((group) => join(attachments, group))])
    await sweepTemporaryFiles(fs, place, (pid) => pid !== process.pid && processIsRunning(pid));
}

const CLAIMS = 5;

/** Reads the library, then makes its log ours; again where it has changed in between. Without a log: read only. */
async function loadAndClaim(
  settled: Settled,
  lock: LibraryLock,
): Promise<{ loaded: Loaded; log: ChangeLog | Problem }> {
  for (let attempt = 0; attempt < CLAIMS; attempt += 1) {
    const loaded = await loadFromDisk(settled);
    try {
      const log = claimOrReadOnly(settled, loaded, lock);
      if (!log) {
        loaded.engine.close();
        continue;
      }
      await noteOutside(settled, loaded, lock.before);
      return { loaded, log };
    } catch (error) {
      loaded.engine.close();
      throw error;
    }
  }
  throw busyElsewhere();
}

function claimOrReadOnly(
  settled: Settled,
  loaded: Loaded,
  lock: LibraryLock,
): ChangeLog | Problem | undefined {
  try {
    return claimLog(settled, loaded, {
      guard: guardOf(lock),
      // Once nobody adds to the log any more, and before it is made ours: that drops what was not finished in it, which
      // may be all there is of those changes.
      beforeInstall: () => refuseLost(loaded, lock),
    });
  } catch (error) {
    if (error instanceof Problem && isForReading(error)) return error;
    throw error;
  }
}

/** What still lets the library be read: a disk that takes no changes, somebody who was quicker. */
function isForReading({ code }: Problem): boolean {
  return code === 'library-read-only' || code === 'library-locked';
}

function guardOf(lock: LibraryLock): () => void {
  return () => {
    const holder = lock.heldByOther();
    if (holder) throw takenOverProblem(holder);
  };
}

/** Whoever had the lock before may have acknowledged changes that are in none of the files any more. */
function refuseLost({ meta, replayed }: Loaded, { before }: LibraryLock): void {
  if (before && before.acknowledged > meta.sequence) throw lostChanges(before, meta.sequence, replayed);
}

/** Tells what shows that changes are not in here which were acknowledged somewhere. */
async function noteOutside(settled: Settled, loaded: Loaded, before?: LockHolder): Promise<void> {
  const { fileSystem, backupFolder, folder, memory } = settled;
  const differs = differsFromLock(loaded, before) ?? differsFromMemory(loaded, memory?.recall(folder));
  if (differs) loaded.notes.push(differs);
  const backups = await listBackups(fileSystem, backupFolder).catch(() => []);
  const further = backups.find(({ good, sequence }) => good && sequence > loaded.meta.sequence);
  if (further) loaded.notes.push(backupGoesFurther(further, loaded.meta.sequence));
  loaded.notes.push(...(await copiesBeside(settled, loaded)));
}

async function openForWriting(
  settled: Settled,
  loaded: Loaded,
  log: ChangeLog | Problem,
  lock: LibraryLock,
): Promise<OpenLibrary> {
  try {
    if (log instanceof Problem) throw log;
    await migrateOnDisk(settled, loaded, log);
    lock.acknowledge({ sequence: loaded.meta.sequence, chain: loaded.meta.chain });
    return new LiveLibrary({ settled, loaded, log, lock });
  } catch (error) {
    if (!(log instanceof Problem)) log.close();
    if (error instanceof Problem && isForReading(error)) {
      lock.giveBack();
      migrate(loaded.engine, settled.migrations, settled.now());
      return new LiveLibrary({ settled, loaded, readOnlyBecause: error });
    }
    loaded.engine.close();
    throw error;
  }
}

async function openReadOnly(settled: Settled, held: LockHolder | Problem | undefined): Promise<OpenLibrary> {
  const because =
    held === undefined ? askedFor() : held instanceof Problem ? held : lockedProblem(held, settled.now());
  if (because.code === 'library-locked' && settled.ifLocked === 'refuse') throw because;
  const loaded = await loadFromDisk(settled);
  await noteOutside(settled, loaded);
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
