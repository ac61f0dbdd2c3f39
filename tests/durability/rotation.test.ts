import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BACKUP_REASONS, type Backup } from '@db/library/backups/backup-file';
import { dueBackup } from '@db/library/backups/backup-due';
import { planRotation, USUAL_LIMITS } from '@db/library/backups/rotation';

const NOW = new Date('2026-06-15T12:00:00.000Z');
const DAY_MS = 86_400_000;

const backup: fc.Arbitrary<Backup> = fc
  .record({
    age: fc.oneof(fc.integer({ min: 0, max: 2 * DAY_MS }), fc.integer({ min: -DAY_MS, max: 500 * DAY_MS })),
    sequence: fc.nat(100_000),
    reason: fc.constantFrom(...BACKUP_REASONS),
    bytes: fc.integer({ min: 1, max: 900_000_000 }),
    good: fc.boolean(),
  })
  .map(({ age, ...rest }) => ({
    ...rest,
    name: `${age}`,
    madeAt: new Date(NOW.getTime() - age).toISOString(),
  }));
const history = fc.uniqueArray(backup, { selector: (one) => one.madeAt, maxLength: 120 });

/** One from the future was made by a clock gone wrong: it counts for nothing, and stays. */
const isPast = ({ madeAt }: Backup) => Date.parse(madeAt) <= NOW.getTime();

const newestGood = (list: readonly Backup[]) =>
  list
    .filter((one) => one.good)
    .reduce<Backup | undefined>((a, b) => (a && a.madeAt > b.madeAt ? a : b), undefined);

function daily(days: number, bytes = 1000): Backup[] {
  return Array.from({ length: days }, (_, ago) => ({
    name: `${ago}`,
    madeAt: new Date(NOW.getTime() - ago * DAY_MS).toISOString(),
    sequence: days - ago,
    reason: 'daily' as const,
    bytes,
    good: true,
  }));
}

describe('the rotation of backups', () => {
  it('parts the list in two, always keeps the newest good one, and drops nothing when there is no good one', () => {
    fc.assert(
      fc.property(history, (list) => {
        const { keep, drop } = planRotation(list, NOW);
        expect(keep.filter((one) => drop.includes(one))).toEqual([]);
        const best = newestGood(list.filter(isPast));
        if (best) expect(keep).toContain(best);
        else expect(drop).toEqual([]);
        for (const one of drop) expect(one.madeAt < (best?.madeAt ?? '')).toBe(true);
      }),
    );
  });

  it('keeps the size of all together within its bound, but for a single one that is larger', () => {
    fc.assert(
      fc.property(history, (list) => {
        const { keep } = planRotation(list, NOW);
        const total = keep.reduce((sum, one) => sum + one.bytes, 0);
        expect(total <= USUAL_LIMITS.totalBytes || keep.length === 1).toBe(true);
      }),
    );
  });

  it('keeps the last ten good ones and recent copies from before a migration, where there is room', () => {
    fc.assert(
      fc.property(history, (list) => {
        const { keep } = planRotation(list, NOW, { ...USUAL_LIMITS, totalBytes: Infinity });
        const good = list
          .filter((one) => one.good && isPast(one))
          .sort((a, b) => b.madeAt.localeCompare(a.madeAt));
        for (const one of good.slice(0, 10)) expect(keep).toContain(one);
        for (const one of good) {
          const young = NOW.getTime() - Date.parse(one.madeAt) <= 90 * DAY_MS;
          if (one.reason === 'migration' && young) expect(keep).toContain(one);
        }
      }),
    );
  });

  it('settles: what it kept, it keeps', () => {
    fc.assert(
      fc.property(history, (list) => {
        const { keep } = planRotation(list, NOW);
        expect(planRotation(keep, NOW).drop).toEqual([]);
      }),
    );
  });

  it('of two years of daily backups keeps thirty days and a year of months', () => {
    const { keep } = planRotation(daily(730), NOW);
    const ages = keep.map((one) => Number(one.name));
    expect(ages.slice(0, 31)).toEqual(Array.from({ length: 31 }, (_, age) => age));
    // After those: the last day of each month, back to June of the year before.
    expect(keep.slice(31).map((one) => one.madeAt.slice(0, 10))).toEqual([
      '2026-04-30',
      '2026-03-31',
      '2026-02-28',
      '2026-01-31',
      '2025-12-31',
      '2025-11-30',
      '2025-10-31',
      '2025-09-30',
      '2025-08-31',
      '2025-07-31',
      '2025-06-30',
    ]);
  });

  it('of backups made every minute keeps ten, and the newest of each day', () => {
    const minutes = daily(3000).map((one, ago) => ({
      ...one,
      madeAt: new Date(NOW.getTime() - ago * 60_000).toISOString(),
    }));
    const { keep } = planRotation(minutes, NOW);
    expect(keep.map((one) => Number(one.name))).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 721, 2161]);
  });
});

describe('a backup dated in the future', () => {
  const now = new Date('2026-03-10T12:00:00.000Z');
  const future = backup('2027-01-01T00:00:00.000Z');

  it('does not make a backup due at every rewrite', () => {
    const today = backup('2026-03-10T11:50:00.000Z');
    expect(dueBackup([future, today], now)).toBeUndefined();
    expect(dueBackup([future], now)).toBe('daily');
  });

  it('stays, and pushes out no other', () => {
    const others = Array.from({ length: USUAL_LIMITS.latest }, (_, day) =>
      backup(`2026-03-0${Math.max(1, 9 - day)}T0${day % 10}:00:00.000Z`),
    );
    const { drop } = planRotation([future, ...others], now);
    expect(drop).toEqual([]);
  });

  function backup(madeAt: string): Backup {
    return { name: madeAt, madeAt, sequence: 1, reason: 'daily', bytes: 1, good: true };
  }
});
