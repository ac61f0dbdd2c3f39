import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { Problem } from '@core/problems/problem';
import { nodeFileSystem, type FileSystem } from '@db/library/file/file-system';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import {
  addJar,
  createSample,
  jarIds,
  newFolder,
  quickDisk,
  reopened,
  sampleOptions,
} from './sample-library';

/** A disk that does something before its n-th call, counted from 1. */
function interrupted(at: number, what: () => void): { fs: FileSystem; calls: () => number } {
  let calls = 0;
  const disk = quickDisk();
  const fs = new Proxy(disk, {
    get: (target, name: keyof FileSystem) => {
      const call = target[name] as (...given: unknown[]) => unknown;
      return (...given: unknown[]) => {
        calls += 1;
        if (calls === at) what();
        return call(...given);
      };
    },
  });
  return { fs, calls: () => calls };
}

/** Every call in turn, in three tests, each of which is done in good time. */
const THIRDS = [1, 2, 3];

let folder: string;
let owner: OpenLibrary;
let acknowledged: string[];

/** An edit of the first opener: acknowledged, or refused with a reason. */
function edit(id: string): void {
  try {
    addJar(owner, id);
    acknowledged.push(id);
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    expect((error as Problem).code).toMatch(/^library-(locked|changed-outside|read-only)$/);
  }
}

/** All that was acknowledged is there. */
function expectAll(found: readonly string[], when = ''): void {
  const there = new Set(found);
  expect(
    acknowledged.filter((id) => !there.has(id)),
    when,
  ).toEqual([]);
}

beforeEach(async () => {
  folder = newFolder();
  acknowledged = [];
  owner = await createSample(folder);
  edit('first');
});

async function callsOfTakingOver(): Promise<number> {
  const counting = interrupted(-1, () => undefined);
  const taker = await openLibrary(folder, sampleOptions({ takeOver: true, fileSystem: counting.fs }));
  await taker.close();
  return counting.calls();
}

describe('taking a library over while the first opener goes on', () => {
  it.each(THIRDS)(
    'loses no edit acknowledged before, at or after call %i + 3n of the taker to the disk',
    async (from) => {
      const calls = await callsOfTakingOver();
      expect(calls).toBeGreaterThan(20);
      for (let at = from; at <= calls; at += 3) {
        owner = await openLibrary(folder, sampleOptions());
        const { fs } = interrupted(at, () => edit(`during ${at}`));
        const taker = await openLibrary(folder, sampleOptions({ takeOver: true, fileSystem: fs }));
        expect(taker.readOnly).toBe(false);
        addJar(taker, `taker ${at}`);
        acknowledged.push(`taker ${at}`);
        edit(`after ${at}`);
        addJar(taker, `taker again ${at}`);
        acknowledged.push(`taker again ${at}`);
        expect(owner.readOnly, `call ${at}`).toBe(true);
        expectAll(jarIds(taker), `call ${at}`);
        await owner.close();
        await taker.close();
        const found = await reopened(folder, jarIds, { readOnly: true });
        expectAll(found, `call ${at}`);
      }
    },
  );

  it('loses no edit when the first opener folds at any call of the taker', async () => {
    const calls = await callsOfTakingOver();
    for (let at = 1; at <= calls; at += 3) {
      owner = await openLibrary(folder, sampleOptions());
      edit(`before ${at}`);
      let folding: Promise<unknown> = Promise.resolve();
      const { fs } = interrupted(at, () => (folding = owner.rewrite().catch(() => undefined)));
      const taker = await openLibrary(folder, sampleOptions({ takeOver: true, fileSystem: fs }));
      await folding;
      if (!taker.readOnly) {
        addJar(taker, `taker ${at}`);
        acknowledged.push(`taker ${at}`);
        await taker.rewrite();
      }
      edit(`after ${at}`);
      await owner.close();
      await taker.close();
      const found = await reopened(folder, jarIds);
      expectAll(found, `call ${at}`);
    }
  });

  it.each(THIRDS)(
    'loses no edit when a third takes the log at call %i + 3n of the taker, and puts it back',
    async (from) => {
      const calls = await callsOfTakingOver();
      const log = join(folder, 'library.log');
      const aside = join(folder, '.library.log.1-0123456789ab.taken');
      for (let at = from; at <= calls; at += 3) {
        owner = await openLibrary(folder, sampleOptions());
        edit(`before ${at}`);
        let isOpening = true;
        const { fs } = interrupted(at, () => {
          if (!isOpening) return;
          edit(`during ${at}`);
          if (existsSync(log)) renameSync(log, aside);
        });
        const opening = openLibrary(folder, sampleOptions({ takeOver: true, fileSystem: fs }));
        const taker = await opening.catch((error: unknown) => {
          expect(error).toBeInstanceOf(Problem);
          return undefined;
        });
        isOpening = false;
        if (existsSync(aside) && !existsSync(log)) renameSync(aside, log);
        if (taker) {
          await owner.close();
          owner = taker;
          edit(`by the taker ${at}`);
        }
        await owner.close();
        const found = await reopened(folder, jarIds, { takeOver: true });
        expectAll(found, `call ${at}`);
      }
    },
  );

  it('leaves one writer when several take over at once', async () => {
    await owner.close();
    for (let round = 0; round < 10; round += 1) {
      const openers = await Promise.all(
        [0, 3, 7].map((steps) => {
          const fs = { ...nodeFileSystem, stat: slowed(nodeFileSystem.stat, (round + steps) % 5) };
          return openLibrary(folder, sampleOptions({ takeOver: true, fileSystem: fs }));
        }),
      );
      for (let n = 0; n < 3; n += 1) {
        openers.forEach((opener, index) => {
          owner = opener;
          edit(`round ${round} opener ${index} edit ${n}`);
        });
      }
      expect(openers.filter((opener) => !opener.readOnly).length).toBe(1);
      await Promise.all(openers.map((opener) => opener.close()));
      const found = await reopened(folder, jarIds);
      expectAll(found);
    }
  });
});

function slowed<Given extends unknown[], T>(call: (...given: Given) => Promise<T>, ms: number) {
  return async (...given: Given): Promise<T> => {
    await new Promise((done) => setTimeout(done, ms));
    return call(...given);
  };
}

describe('clocks that do not agree', () => {
  it('let nobody in unasked, and take-over loses nothing', async () => {
    for (const minutes of [-60, -3, 3, 60]) {
      const now = () => new Date(Date.now() + minutes * 60_000);
      const second = await openLibrary(folder, sampleOptions({ now }));
      expect(second.readOnly).toBe(true);
      edit(`by the first, ${minutes}`);
      await second.close();
      const taker = await openLibrary(folder, sampleOptions({ now, takeOver: true }));
      expect(jarIds(taker).sort()).toEqual([...acknowledged].sort());
      await owner.close();
      await taker.close();
      owner = await openLibrary(folder, sampleOptions());
    }
  });
});

describe('whoever was taken over', () => {
  it('becomes read-only by itself, says what could not be saved, and keeps it in a copy', async () => {
    const taker = await openLibrary(folder, sampleOptions({ takeOver: true }));
    edit('too late');
    expect(acknowledged).not.toContain('too late');
    expect(owner.status()).toMatchObject({
      readOnly: true,
      readOnlyBecause: { code: 'library-locked', facts: { takenOver: true } },
      unsaved: true,
    });
    const elsewhere = newFolder();
    await owner.saveCopyAs(elsewhere);
    expect(await reopened(elsewhere, jarIds)).toEqual(['first', 'too late']);
    expect(jarIds(taker)).toEqual(['first']);
    await taker.close();
  });

  it('keeps the very change during which it happened', async () => {
    const lock = join(folder, 'library.lock');
    const disk = quickDisk();
    let taken = false;
    const fs: FileSystem = {
      ...disk,
      fdatasyncSync: (fd) => {
        disk.fdatasyncSync(fd);
        if (!taken) return;
        const held = JSON.parse(readFileSync(lock, 'utf8')) as object;
        disk.unlinkSync(lock);
        writeFileSync(lock, JSON.stringify({ ...held, instance: 'another' }));
      },
    };
    await owner.close();
    owner = await openLibrary(folder, sampleOptions({ fileSystem: fs }));
    taken = true;
    edit('just then');
    taken = false;
    expect(acknowledged).not.toContain('just then');
    expect(jarIds(owner)).toEqual(['first']);
    expect(owner.status().unsaved).toBe(true);
    const elsewhere = newFolder();
    await owner.saveCopyAs(elsewhere);
    expect(await reopened(elsewhere, jarIds)).toEqual(['first', 'just then']);
  });
});
