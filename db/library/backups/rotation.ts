import type { Backup } from './backup-file';

export interface RotationLimits {
  /** How many of the newest stay, whatever their age. */
  latest: number;
  /** For how many days one a day stays, and for how many months one a month. */
  days: number;
  months: number;
  /** How long a copy made before a migration stays, in days. */
  migrationDays: number;
  /** The size of all together, in bytes. */
  totalBytes: number;
}

export const USUAL_LIMITS: RotationLimits = {
  latest: 10,
  days: 30,
  months: 12,
  migrationDays: 90,
  totalBytes: 2_000_000_000,
};

const DAY_MS = 86_400_000;

/**
 * Which backups stay. The newest good one always does, even alone over the size limit; a backup that is not good
 * is no reason to drop a good one. Within the size, newer ones go before older ones.
 */
export function planRotation(
  list: readonly Backup[],
  now: Date,
  limits: RotationLimits = USUAL_LIMITS,
): { keep: Backup[]; drop: Backup[] } {
  const newestFirst = [...list].sort((a, b) => b.madeAt.localeCompare(a.madeAt) || b.sequence - a.sequence);
  // One from the future was made by a clock gone wrong: it stays, and takes no other's place.
  const good = newestFirst.filter((backup) => backup.good && Date.parse(backup.madeAt) <= now.getTime());
  const wanted = new Set<Backup>([
    ...good.slice(0, limits.latest),
    ...onePer(good, 10, now.getTime() - limits.days * DAY_MS),
    ...onePer(good, 7, monthsBefore(now, limits.months)),
    ...good.filter(
      (backup) =>
        backup.reason === 'migration' &&
        Date.parse(backup.madeAt) >= now.getTime() - limits.migrationDays * DAY_MS,
    ),
  ]);
  const keep: Backup[] = [];
  let total = 0;
  for (const backup of newestFirst.filter((candidate) => wanted.has(candidate))) {
    if (keep.length > 0 && total + backup.bytes > limits.totalBytes) break;
    keep.push(backup);
    total += backup.bytes;
  }
  return { keep, drop: newestFirst.filter((backup) => !keep.includes(backup) && mayGo(backup, keep[0])) };
}

/** Nothing is dropped that a kept, good and newer one does not replace; a future date is a clock gone wrong. */
function mayGo(backup: Backup, newestGood: Backup | undefined): boolean {
  return newestGood !== undefined && backup.madeAt <= newestGood.madeAt;
}

/** The newest of each day or month, told apart by the first characters of the time. */
function onePer(newestFirst: readonly Backup[], characters: number, since: number): Backup[] {
  const seen = new Map<string, Backup>();
  for (const backup of newestFirst) {
    const period = backup.madeAt.slice(0, characters);
    if (Date.parse(backup.madeAt) >= since && !seen.has(period)) seen.set(period, backup);
  }
  return [...seen.values()];
}

function monthsBefore(now: Date, months: number): number {
  return Date.UTC(now.getUTCFullYear(), now.getUTCMonth() - months, now.getUTCDate());
}
