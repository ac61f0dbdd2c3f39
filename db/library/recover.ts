import { cp, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { newestGoodBackup, readBackup } from './backups';
import { nodeFileSystem } from './file-system';
import { openBytes } from './library-bytes';
import { LIBRARY_FILE } from './rewrite';
import { writeWholeFile } from './whole-file';

/**
 * Makes a new library folder beside a damaged one, from its newest good backup, with its attachments. The damaged
 * folder is not touched.
 * @param folder the damaged library's folder
 * @param target a folder that does not exist yet
 * @param migrationCount how many migrations this version knows, to refuse a newer backup
 * @throws Problem `library-damaged` when there is no good backup
 */
export async function recoverFromBackup(
  folder: string,
  target: string,
  migrationCount: number,
): Promise<void> {
  const backups = join(folder, 'backups');
  const newest = await newestGoodBackup(nodeFileSystem, backups);
  if (!newest)
    throw new Problem({
      code: 'library-damaged',
      title: 'There is no good backup of this library.',
      advice: 'Look for a copy of its folder on another disk; nothing here was changed.',
    });
  const bytes = await readBackup(nodeFileSystem, backups, newest.name);
  (await openBytes(bytes, migrationCount)).engine.close();
  await mkdir(target);
  await writeWholeFile(nodeFileSystem, join(target, LIBRARY_FILE), bytes);
  await cp(join(folder, 'attachments'), join(target, 'attachments'), { recursive: true }).catch(
    (error: NodeJS.ErrnoException) => {
      // A library without photos or documents has no such folder.
      if (error.code !== 'ENOENT') throw error;
    },
  );
}
