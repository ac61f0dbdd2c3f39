import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Problem } from '@core/problems/problem';
import { foldAfter } from '@db/library/folding/fold-after';
import { RewriteSchedule } from '@db/library/folding/rewrite-schedule';

/* When the log is folded into the file: told by a clock of the test's own. */

const MINUTE = 60_000;
const DAY = 86_400_000;
const LONG = 1000;
const IDLE = 2000;

let folds: number;
let fails: boolean;
let failures: Problem[];
let schedule: RewriteSchedule;
beforeEach(() => {
  vi.useFakeTimers();
  [folds, fails, failures] = [0, false, []];
  schedule = new RewriteSchedule(
    () => {
      folds += 1;
      return fails ? Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' })) : Promise.resolve();
    },
    { idleMs: IDLE, logBytes: () => LONG },
    (problem) => failures.push(problem),
  );
});
afterEach(async () => {
  await schedule.stop();
  vi.useRealTimers();
});
const pass = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms);

describe('a rewrite', () => {
  it('waits for a pause once the log is long, and begins anew to wait with each change', async () => {
    schedule.changed(LONG);
    await pass(IDLE - 1);
    schedule.changed(LONG + 1);
    await pass(IDLE - 1);
    expect(folds).toBe(0);
    await pass(1);
    expect(folds).toBe(1);
  });

  it('waits for no pause where the log is twice as long', async () => {
    schedule.changed(2 * LONG - 1);
    await pass(0);
    expect(folds).toBe(0);
    schedule.changed(2 * LONG);
    await pass(0);
    expect(folds).toBe(1);
  });

  it('of a short log comes a day after its first change, and once', async () => {
    schedule.changed(1);
    await pass(DAY / 2);
    schedule.changed(2);
    await pass(DAY / 2 - 1);
    expect(folds).toBe(0);
    await pass(1);
    expect(folds).toBe(1);
    await pass(5 * DAY);
    expect(folds).toBe(1);
  });

  it('that failed is told, and tried again in a minute, however much is changed meanwhile', async () => {
    fails = true;
    schedule.changed(2 * LONG);
    await pass(0);
    expect(failures).toMatchObject([{ code: 'disk-full' }]);
    for (let n = 0; n < 20; n += 1) schedule.changed(5 * LONG);
    await pass(MINUTE - 1);
    expect(folds).toBe(1);
    fails = false;
    await pass(1);
    expect([folds, failures.length]).toEqual([2, 1]);
    schedule.changed(2 * LONG);
    await pass(0);
    expect(folds).toBe(3);
  });

  it('asked for while one runs is shared by all who ask, and follows it', async () => {
    const held: (() => void)[] = [];
    let runs = 0;
    const slow = new RewriteSchedule(
      () => {
        runs += 1;
        return new Promise<void>((done) => held.push(done));
      },
      { idleMs: IDLE, logBytes: () => LONG },
      () => undefined,
    );
    const first = slow.rewrite();
    await pass(0);
    expect(slow.busy).toBe(true);
    const later = [slow.rewrite(), slow.rewrite(), slow.rewrite()];
    await pass(0);
    expect([runs, new Set(later).size]).toEqual([1, 1]);
    held[0]!();
    await first;
    await pass(0);
    expect(runs).toBe(2);
    held[1]!();
    await Promise.all(later);
    expect(slow.busy).toBe(false);
  });

  it('that fails for whoever asked fails for them, and holds up nothing after it', async () => {
    fails = true;
    await expect(schedule.rewrite()).rejects.toThrow('full');
    await expect(schedule.exclusive(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
    fails = false;
    await schedule.rewrite();
    expect([folds, failures.length]).toEqual([2, 0]);
  });

  it('comes no more of its own accord once it was stopped, but when it is asked for', async () => {
    schedule.changed(LONG);
    await schedule.stop();
    schedule.changed(5 * LONG);
    await pass(2 * DAY);
    expect(folds).toBe(0);
    await schedule.rewrite();
    expect(folds).toBe(1);
  });
});

describe('work on the library file', () => {
  it('is done one after another, in the order in which it was asked for', async () => {
    const done: string[] = [];
    const work = (name: string, ms: number) => () =>
      new Promise<void>((end) => setTimeout(() => (done.push(name), end()), ms));
    const all = [
      schedule.exclusive(work('slow', 500)),
      schedule.exclusive(work('quick', 1)),
      schedule.rewrite(),
    ];
    await pass(1000);
    await Promise.all(all);
    expect([done, folds]).toEqual([['slow', 'quick'], 1]);
  });
});

describe('how long a log may grow', () => {
  it('is an eighth of its file, between a quarter of a megabyte and thirty-two', () => {
    expect(foldAfter(0)).toBe(262_144);
    expect(foldAfter(8 * 262_144)).toBe(262_144);
    expect(foldAfter(80_000_000)).toBe(10_000_000);
    expect(foldAfter(2_000_000_000)).toBe(33_554_432);
  });
});
