import { readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import { FaultyFileSystem } from './faulty-file-system';
import { addJar, createSample, jarIds, newFolder, problemOf, sampleOptions } from './sample-library';

let folder: string;
let owner: OpenLibrary;
let lock: string;

beforeEach(async () => {
  folder = newFolder();
  lock = join(folder, 'library.lock');
  owner = await createSample(folder);
  addJar(owner, 'a');
});

afterEach(async () => {
  vi.useRealTimers();
  await owner.close();
});

/** Leaves the lock as some other program would have it. */
function lockAs(over: Record<string, unknown>): void {
  const held = JSON.parse(readFileSync(lock, 'utf8')) as Record<string, unknown>;
  writeFileSync(lock, `${JSON.stringify({ ...held, instance: 'someone else', ...over })}\n`);
}

const DEAD_PROCESS = 999_999_999;
const secondsAgo = (seconds: number) => new Date(Date.now() - seconds * 1000).toISOString();

describe('a second opener', () => {
  it('reads, sees what the first has logged, changes nothing, and learns who has it', async () => {
    const second = await openLibrary(folder, sampleOptions());
    expect(second.readOnly).toBe(true);
    expect(jarIds(second)).toEqual(['a']);
    expect(second.status().readOnlyBecause).toMatchObject({
      code: 'library-locked',
      facts: { holder: { host: hostname(), pid: process.pid } },
    });
    await problemOf(() => addJar(second, 'b'), 'library-read-only');
    await problemOf(() => second.backUp(), 'library-read-only');
    await second.close();
    addJar(owner, 'b');
    expect(jarIds(owner)).toEqual(['a', 'b']);
  });

  it('is refused when it asked to be', async () => {
    await problemOf(() => openLibrary(folder, sampleOptions({ ifLocked: 'refuse' })), 'library-locked');
  });

  it('notices that the first has gone on', async () => {
    const second = await openLibrary(folder, sampleOptions());
    expect(await second.checkOutside()).toBe('same');
    addJar(owner, 'b');
    expect(await second.checkOutside()).toBe('changed');
    await second.close();
  });

  it('takes over when told to; the first then stops instead of writing on', async () => {
    const second = await openLibrary(folder, sampleOptions({ takeOver: true }));
    expect(second.readOnly).toBe(false);
    addJar(second, 'b');
    const problem = await problemOf(() => addJar(owner, 'c'), 'library-locked');
    expect(problem.message).toContain('taken over');
    await second.rewrite();
    await owner.close();
    expect(jarIds(second)).toEqual(['a', 'b']);
    await second.close();
    const again = await openLibrary(folder, sampleOptions());
    expect(jarIds(again)).toEqual(['a', 'b']);
    await again.close();
  });

  it('makes the first read-only at its next rewrite, even before it has written anything', async () => {
    const second = await openLibrary(folder, sampleOptions({ takeOver: true }));
    await problemOf(() => owner.rewrite(), 'library-locked');
    expect(owner.readOnly).toBe(true);
    await second.close();
  });
});

describe('a lock left behind', () => {
  it.each([
    ['by a process of this machine that is gone', { pid: DEAD_PROCESS }],
    [
      'by such a process just now, by a clock that runs ahead',
      { pid: DEAD_PROCESS, refreshed: secondsAgo(-600) },
    ],
  ])('%s is taken', async (_how, over) => {
    lockAs(over);
    const second = await openLibrary(folder, sampleOptions());
    expect(second.readOnly).toBe(false);
    await second.close();
  });

  it.each([
    ['another machine that is there', { host: 'elsewhere', pid: DEAD_PROCESS, refreshed: secondsAgo(60) }],
    ['another machine whose clock runs ahead', { host: 'elsewhere', pid: 1, refreshed: secondsAgo(-86_400) }],
    // Its clock may be behind: whether it is still there is for the maker to judge, who can take it over.
    ['another machine long silent', { host: 'elsewhere', pid: 1, refreshed: secondsAgo(86_400) }],
    ['a living process of this machine, whatever its clock says', { refreshed: secondsAgo(86_400) }],
  ])('by %s holds', async (_how, over) => {
    lockAs(over);
    const second = await openLibrary(folder, sampleOptions());
    expect(second.readOnly).toBe(true);
    await second.close();
  });

  it('that cannot be read holds nobody off', async () => {
    writeFileSync(lock, '{"instance":');
    const second = await openLibrary(folder, sampleOptions());
    expect(second.readOnly).toBe(false);
    await second.close();
  });
});

describe('a lock that the disk did not let its opener remove', () => {
  it('holds nobody off in the same process, once the disk works again', async () => {
    await owner.close();
    const disk = new FaultyFileSystem();
    const library = await openLibrary(folder, sampleOptions({ fileSystem: disk.fs }));
    disk.armForGood(1, 'EIO');
    await library.close();
    disk.disarm();
    const again = await openLibrary(folder, sampleOptions({ fileSystem: disk.fs }));
    expect(again.readOnly).toBe(false);
    await again.close();
  });
});

describe('the lock of an open library', () => {
  it('is removed on closing, but never someone else’s', async () => {
    lockAs({ host: 'elsewhere' });
    await owner.close();
    expect(readFileSync(lock, 'utf8')).toContain('someone else');
    unlinkSync(lock);
  });

  it('is put back when it was deleted', async () => {
    unlinkSync(lock);
    await owner.rewrite();
    expect(readFileSync(lock, 'utf8')).toContain(hostname());
  });
});
