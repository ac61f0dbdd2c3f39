import { join } from 'node:path';
import { readBackup } from './backups';
import { diskProblem } from './disk-problem';
import { isMissing } from './file-system';
import { openBytes } from './library-bytes';
import { LibraryLock, lockedProblem } from './lock';
import { openLibrary, type LibraryOptions, type OpenLibrary } from './open-library';
import { settle, type Settled } from './options';
import { LIBRARY_FILE } from './rewrite';
import { writeWholeFile } from './whole-file';

/**
 * Opens a library whose file is damaged or gone from one of its backups. The damaged file is kept among the backups;
 * changes in the log are replayed where they follow on that backup, and the log is kept aside where they do not.
 * Throws Problem; the files are then as they were.
 */
export async function recoverFromBackup(
  folder: string,
  name: string,
  options: LibraryOptions,
): Promise<OpenLibrary> {
  const settled = settle(folder, options);
  try {
    await putBackupInPlace(settled, name);
  } catch (error) {
    throw diskProblem(error, 'restore the backup');
  }
  return openLibrary(folder, { ...options, ifLogDiffers: 'set-aside' });
}

async function putBackupInPlace(settled: Settled, name: string): Promise<void> {
  const { fileSystem: fs, folder, backupFolder, migrations } = settled;
  const bytes = await readBackup(fs, backupFolder, name);
  (await openBytes(bytes, migrations.length)).engine.close();
  const lock = await LibraryLock.take(fs, folder, settled);
  if (!(lock instanceof LibraryLock)) throw lockedProblem(lock);
  try {
    await keepDamagedFile(settled);
    await writeWholeFile(fs, join(folder, LIBRARY_FILE), bytes);
  } finally {
    await lock.release();
  }
}

async function keepDamagedFile({ fileSystem: fs, folder, backupFolder, now }: Settled): Promise<void> {
  let damaged: Uint8Array;
  try {
    damaged = await fs.readFile(join(folder, LIBRARY_FILE));
  } catch (error) {
    if (isMissing(error)) return;
    throw error;
  }
  const name = `${now().toISOString().replaceAll(/[:.]/g, '-')} damaged.sqlite`;
  await writeWholeFile(fs, join(backupFolder, name), damaged);
}
