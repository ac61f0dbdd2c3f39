import type { Backup, BackupReason } from './backup-file';

const HOUR_MS = 3_600_000;

/**
 * Whether a rewrite should leave a backup too: the first of a (UTC) day, and once an hour while work goes on. One from
 * the future was made by a clock gone wrong, and does not count.
 */
export function dueBackup(newestFirst: readonly Backup[], now: Date): BackupReason | undefined {
  const newest = newestFirst.find(({ madeAt }) => Date.parse(madeAt) <= now.getTime());
  if (newest?.madeAt.slice(0, 10) !== now.toISOString().slice(0, 10)) return 'daily';
  return now.getTime() - Date.parse(newest.madeAt) >= HOUR_MS ? 'hourly' : undefined;
}
