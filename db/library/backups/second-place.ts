import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { writeWholeFile } from '../file/whole-file';
import type { Settled } from '../options';
import { readBackup, rotateBackups } from './backups';

/**
 * Copies a backup to the second place, where one is set, and lets old ones go there. Returns why that failed: the backup
 * itself stands.
 */
export async function copyToSecondPlace(settled: Settled, name: string): Promise<Problem | undefined> {
  const { fileSystem: fs, backupFolder, backupCopies, backupLimits, now } = settled;
  if (backupCopies === undefined || backupCopies === backupFolder) return undefined;
  try {
    await fs.mkdir(backupCopies);
    await writeWholeFile(fs, join(backupCopies, name), await readBackup(fs, backupFolder, name));
    await rotateBackups(fs, backupCopies, now(), backupLimits);
    return undefined;
  } catch (cause) {
    return new Problem(
      {
        code: 'disk-error',
        title: 'A backup could not be copied to its second place.',
        advice: `It is kept in the first place. See that ${backupCopies} can be reached and has room, or choose another second place on the library’s page.`,
        facts: { folder: backupCopies },
      },
      { cause },
    );
  }
}
