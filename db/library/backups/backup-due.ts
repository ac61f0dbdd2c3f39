import type { Backup, BackupReason } from './backup-file';

const HOUR_MS = 3_600_000;

/** Whether a rewrite should leave a backup too: the first of a (UTC) day, and once an hour while work goes on. */
export function dueBackup(newest: Backup | undefined, now: Date): BackupReason | undefined {
  if (newest?.madeAt.slice(0, 10) !== now.toISOString().slice(0, 10)) return 'daily';
  return now.getTime() - Date.parse(newest.madeAt) >= HOUR_MS ? 'hourly' : undefined;
}
