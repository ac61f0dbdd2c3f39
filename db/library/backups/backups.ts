import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { parseBackupName, refuseAltered, type Backup } from './backup-file';
import { isMissing, type FileSystem } from '../file/file-system';
import { headerProblem, openBytes } from '../file/library-bytes';
import { planRotation, type RotationLimits } from './rotation';

/** The backups in a folder, newest first. `good` says that the file has the length and marks of a library. */
export async function listBackups(fs: FileSystem, folder: string): Promise<Backup[]> {
  const backups: Backup[] = [];
  for (const name of await namesIn(fs, folder)) {
    const parsed = parseBackupName(name);
    if (parsed) backups.push({ ...parsed, ...(await look(fs, join(folder, name))) });
  }
  return backups.sort((a, b) => b.madeAt.localeCompare(a.madeAt) || b.sequence - a.sequence);
}

/** The newest backup that opens and passes SQLite's checks, or undefined. Reads only what it must. */
export async function newestGoodBackup(fs: FileSystem, folder: string): Promise<Backup | undefined> {
  for (const backup of await listBackups(fs, folder)) {
    if (!backup.good) continue;
    try {
      const bytes = await readBackup(fs, folder, backup.name);
      (await openBytes(bytes, Number.MAX_SAFE_INTEGER)).engine.close();
      return backup;
    } catch {
      // Not this one then: an older one may be whole.
    }
  }
  return undefined;
}

/** Removes what the rotation lets go. One that cannot be removed now is tried again next time. */
export async function rotateBackups(
  fs: FileSystem,
  folder: string,
  now: Date,
  limits?: RotationLimits,
): Promise<Backup[]> {
  const { keep, drop } = planRotation(await listBackups(fs, folder), now, limits);
  for (const backup of drop) await fs.unlink(join(folder, backup.name)).catch(() => undefined);
  return keep;
}

/** The bytes of a backup by its name, as they were written. Throws Problem not-found, library-damaged; a name is never a path. */
export async function readBackup(fs: FileSystem, folder: string, name: string): Promise<Uint8Array> {
  const missing = new Problem({
    code: 'not-found',
    title: 'There is no such backup.',
    advice: 'Choose one from the list of backups.',
    facts: { name },
  });
  if (!parseBackupName(name)) throw missing;
  try {
    const bytes = await fs.readFile(join(folder, name));
    refuseAltered(name, bytes);
    return bytes;
  } catch (error) {
    throw isMissing(error) ? missing : error;
  }
}

async function namesIn(fs: FileSystem, folder: string): Promise<string[]> {
  try {
    return await fs.readdir(folder);
  } catch (error) {
    if (isMissing(error)) return [];
    throw error;
  }
}

async function look(fs: FileSystem, path: string): Promise<Pick<Backup, 'bytes' | 'good'>> {
  try {
    const { size } = await fs.stat(path);
    const header = await fs.readStart(path, 100);
    return { bytes: size, good: headerProblem(header, size, Number.MAX_SAFE_INTEGER) === undefined };
  } catch {
    return { bytes: 0, good: false };
  }
}
