import fc from 'fast-check';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import type { FileSystem } from '@db/library/file/file-system';
import { LibraryLock, LOCK_FILE, processIsRunning, type LockOptions } from '@db/library/lock/lock';
import {
  encodeHolder,
  lockedProblem,
  NO_CHAIN,
  readHolder,
  takenOverProblem,
  type LockHolder,
} from '@db/library/lock/lock-holder';
import { FaultyFileSystem } from './faulty-file-system';
import { quickDisk } from './sample-library';

/* The lock file by itself: who has a library open, and how far they came. */

const base = mkdtempSync(join(tmpdir(), 'stillroom-lock-'));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let folders = 0;
let folder: string;
let path: string;
let clock: number;
beforeEach(() => {
  folder = join(base, String((folders += 1)));
  mkdirSync(folder);
  path = join(folder, LOCK_FILE);
  clock = Date.parse('2026-03-01T08:00:00.000Z');
});

const fs = quickDisk();
const options = (instance: string, over: Partial<LockOptions> = {}): LockOptions => ({
  ...{ instance, version: '1.0', now: () => new Date(clock), takeOver: false },
  ...{ host: 'bench', pid: 7, isRunning: () => true, ...over },
});
const take = (instance: string, over: Partial<LockOptions> = {}, disk: FileSystem = fs) =>
  LibraryLock.take(disk, folder, options(instance, over));
async function taken(instance: string, over: Partial<LockOptions> = {}): Promise<LibraryLock> {
  const lock = await take(instance, over);
  if (!(lock instanceof LibraryLock)) throw new Error(`It is held by ${lock.instance}.`);
  return lock;
}
const holder = (): LockHolder | undefined => readHolder(fs, path);

describe('the lock of a library', () => {
  it('says who has it, since when, and how far they came; and is gone once it is let go', async () => {
    const lock = await taken('one');
    const since = new Date(clock).toISOString();
    expect(holder()).toEqual({
      ...{ instance: 'one', host: 'bench', pid: 7, version: '1.0', since, refreshed: since },
      ...{ acknowledged: 0, chain: NO_CHAIN },
    });
    clock += 5000;
    lock.acknowledge({ sequence: 12, chain: 'c'.repeat(32) });
    expect(holder()).toMatchObject({ acknowledged: 12, chain: 'c'.repeat(32), since });
    clock += 5000;
    lock.refresh();
    expect(holder()).toMatchObject({ acknowledged: 12, refreshed: new Date(clock).toISOString() });
    lock.release();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is told to whoever comes next, and stays where it was', async () => {
    await taken('one');
    const before = readFileSync(path, 'utf8');
    expect(await take('two')).toMatchObject({ instance: 'one', host: 'bench' });
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(readdirSync(folder)).toEqual([LOCK_FILE]);
  });

  it('of a process of this machine that is gone is taken, with what it had come to; no clock is asked', async () => {
    const first = await taken('one');
    first.acknowledge({ sequence: 9, chain: 'd'.repeat(32) });
    // However long ago, and however lately, it gave a sign.
    clock += 10 * 365 * 86_400_000;
    expect(await take('two')).toMatchObject({ instance: 'one' });
    const second = await taken('two', { isRunning: (pid) => pid !== 7 });
    expect(second.before).toMatchObject({ instance: 'one', acknowledged: 9, chain: 'd'.repeat(32) });
    // What it knows of the one before it says itself, should it be stopped before it has looked.
    expect(holder()).toMatchObject({ instance: 'two', acknowledged: 9 });
  });

  it('of another machine is never taken without being told to, whatever runs there', async () => {
    await taken('one', { host: 'elsewhere' });
    expect(await take('two', { isRunning: () => false })).toMatchObject({ instance: 'one' });
    const second = await taken('two', { takeOver: true });
    expect(second.before?.host).toBe('elsewhere');
  });

  it('that was taken over is known to whoever had it, who leaves it alone from then on', async () => {
    const first = await taken('one');
    const second = await taken('two', { takeOver: true });
    second.acknowledge({ sequence: 3, chain: 'e'.repeat(32) });
    const before = readFileSync(path, 'utf8');
    expect(first.heldByOther()).toMatchObject({ instance: 'two', acknowledged: 3 });
    first.acknowledge({ sequence: 99, chain: 'f'.repeat(32) });
    first.refresh();
    first.release();
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(second.heldByOther()).toBeUndefined();
  });

  it('that was deleted, or put back as a new file, is still ours', async () => {
    const lock = await taken('one');
    rmSync(path);
    expect(lock.heldByOther()).toBeUndefined();
    expect(holder()?.instance).toBe('one');
    const same = readFileSync(path);
    rmSync(path);
    writeFileSync(path, same);
    expect(lock.heldByOther()).toBeUndefined();
    expect(lock.heldByOther()).toBeUndefined();
  });

  it('given back after nothing came of it stands as it was left, so that its loss can still be told', async () => {
    const left = await taken('one');
    left.acknowledge({ sequence: 9, chain: 'd'.repeat(32) });
    const before = readFileSync(path, 'utf8');
    const second = await taken('two', { isRunning: () => false });
    second.giveBack();
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(readdirSync(folder)).toEqual([LOCK_FILE]);
    // One that was the first gives back nothing.
    rmSync(path);
    (await taken('three')).giveBack();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('goes to one of those who come at once', async () => {
    const all = await Promise.all(['a', 'b', 'c', 'd'].map((name) => take(name)));
    expect(all.filter((one) => one instanceof LibraryLock)).toHaveLength(1);
    expect(readdirSync(folder)).toEqual([LOCK_FILE]);
  });

  it('is whole or not there, at whichever call the disk fails; and stands in nobody’s way afterwards', async () => {
    for (let at = 1; at <= 8; at += 1)
      for (const kind of ['EIO', 'ENOSPC', 'short', 'half-then']) {
        rmSync(path, { force: true });
        const disk = new FaultyFileSystem();
        disk.arm(at, kind);
        const got = await take('one', {}, disk.fs).catch((error: unknown) => error);
        disk.disarm();
        if (got instanceof LibraryLock) expect(holder()?.instance, `${kind} at ${at}`).toBe('one');
        else expect(got, `${kind} at ${at}`).toBeInstanceOf(Error);
        const second = await take('two', { takeOver: true }, disk.fs);
        expect(second, `${kind} at ${at}`).toBeInstanceOf(LibraryLock);
        expect(holder()?.instance).toBe('two');
        if (second instanceof LibraryLock) second.release();
      }
  });
});

describe('what a lock file says', () => {
  const someone = fc.record({
    instance: fc.string({ minLength: 1 }),
    host: fc.string({ minLength: 1 }),
    pid: fc.integer({ min: 1, max: 4_000_000 }),
    version: fc.string({ minLength: 1 }),
    since: fc.constant('2026-03-01T08:00:00.000Z'),
    refreshed: fc.constant('2026-03-01T08:30:00.000Z'),
    acknowledged: fc.nat(999_999_999_999_999),
    chain: fc.constantFrom(NO_CHAIN, 'a'.repeat(32)),
  });

  it('is read as it was written, in one length whatever the number of the last change', () => {
    fc.assert(
      fc.property(someone, fc.nat(999_999_999_999_999), (held, other) => {
        writeFileSync(path, encodeHolder(held));
        expect(holder()).toEqual(held);
        expect(encodeHolder({ ...held, acknowledged: other })).toHaveLength(encodeHolder(held).length);
      }),
    );
  });

  it('cut off, written over or by somebody else is nobody’s, and no error', () => {
    const bytes = encodeHolder({
      ...{ instance: 'one', host: 'bench', pid: 7, version: '1.0', acknowledged: 1, chain: NO_CHAIN },
      ...{ since: '2026-03-01T08:00:00.000Z', refreshed: '2026-03-01T08:00:00.000Z' },
    });
    for (let end = 0; end < bytes.length - 1; end += 1) {
      writeFileSync(path, bytes.subarray(0, end));
      expect(holder(), `${end} bytes`).toBeUndefined();
    }
    const held = JSON.parse(Buffer.from(bytes).toString()) as object;
    for (const odd of [
      null,
      [],
      7,
      'x',
      {},
      { ...held, refreshed: 'soon' },
      { ...held, acknowledged: 'x' },
      { ...held, pid: 0 },
      { ...held, acknowledged: -1 },
    ]) {
      writeFileSync(path, JSON.stringify(odd));
      expect(holder(), JSON.stringify(odd)).toBeUndefined();
    }
    rmSync(path);
    expect(holder()).toBeUndefined();
  });

  it('from before changes were counted says that none were', () => {
    const old = {
      instance: 'one',
      host: 'bench',
      pid: 7,
      version: '0.9',
      since: 'x',
      refreshed: '2026-03-01',
    };
    writeFileSync(path, JSON.stringify(old));
    expect(holder()).toMatchObject({ acknowledged: 0, chain: NO_CHAIN });
  });

  it('is told in words: on this computer or another, and whether there was a sign of life', () => {
    const at = '2026-03-01T08:00:00.000Z';
    const one: LockHolder = {
      ...{ instance: 'one', host: 'elsewhere', pid: 7, version: '1.0', since: at, refreshed: at },
      ...{ acknowledged: 0, chain: NO_CHAIN },
    };
    const after = (seconds: number): Date => new Date(Date.parse(at) + seconds * 1000);
    expect(lockedProblem(one, after(120))).toMatchObject({ code: 'library-locked', facts: { holder: one } });
    expect(lockedProblem(one, after(120)).message).toContain('on elsewhere');
    expect(lockedProblem(one, after(120)).advice).not.toContain('no sign of life');
    expect(lockedProblem(one, after(121)).advice).toContain('no sign of life');
    // Of this one it is known whether it runs: a clock says nothing.
    const here = lockedProblem({ ...one, host: hostname() }, after(1e6));
    expect(here.message).toContain('in another window on this computer');
    expect(here.advice).not.toContain('no sign of life');
    expect(takenOverProblem(one)).toMatchObject({ facts: { takenOver: true, holder: one } });
  });
});

describe('a process', () => {
  it('is known to run or not', () => {
    expect(processIsRunning(process.pid)).toBe(true);
    expect(processIsRunning(999_999_999)).toBe(false);
  });
});
