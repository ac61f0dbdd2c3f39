import { existsSync, readdirSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Problem } from '@core/problems/problem';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import { DISK_ERRORS, FaultyFileSystem } from './faulty-file-system';
import {
  addJar,
  createSample,
  everything,
  jarIds,
  newFolder,
  reopened,
  sampleOptions,
} from './sample-library';

const KINDS = [...DISK_ERRORS, 'half-then', 'short'];
const NEVER = 1_000_000;

function leftovers(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.part'));
}

/** What the library would hold if the process died now. */
async function afterCrash(folder: string): Promise<unknown> {
  const lock = join(folder, 'library.lock');
  if (existsSync(lock)) unlinkSync(lock);
  return reopened(folder, everything, { readOnly: true });
}

async function isProblem(work: () => unknown): Promise<boolean> {
  try {
    await work();
    return false;
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    expect((error as Problem).code).toMatch(/^(disk-full|disk-error|library-read-only)$/);
    return true;
  }
}

async function libraryOn(disk: FaultyFileSystem): Promise<{ folder: string; library: OpenLibrary }> {
  const folder = newFolder();
  const library = await createSample(folder, { fileSystem: disk.fs });
  addJar(library, 'a');
  return { folder, library };
}

describe.each(KINDS)('a disk that answers %s', (kind) => {
  it('at any call of a transaction: memory and disk agree, and the next change works', async () => {
    const disk = new FaultyFileSystem();
    const { folder, library } = await libraryOn(disk);
    disk.arm(NEVER, kind);
    addJar(library, 'counted');
    const calls = disk.calls.length;
    expect(calls).toBeGreaterThanOrEqual(3);
    for (let at = 1; at <= calls; at += 1) {
      const before = everything(library);
      disk.arm(at, kind);
      const failed = await isProblem(() => addJar(library, `jar ${at}`));
      disk.disarm();
      if (failed) expect(everything(library)).toEqual(before);
      else expect(jarIds(library)).toContain(`jar ${at}`);
      expect(await afterCrash(folder)).toEqual(everything(library));
      addJar(library, `after ${at}`);
      expect(await afterCrash(folder)).toEqual(everything(library));
    }
    await library.close();
  });

  it('at any call of a rewrite: the file is wholly old or wholly new, nothing is lost, the next rewrite works', async () => {
    const disk = new FaultyFileSystem();
    const { folder, library } = await libraryOn(disk);
    await library.rewrite();
    addJar(library, 'counted');
    disk.arm(NEVER, kind);
    await library.rewrite();
    const calls = disk.calls.length;
    expect(calls).toBeGreaterThan(20);
    for (let at = 1; at <= calls; at += 1) {
      addJar(library, `jar ${at}`);
      disk.arm(at, kind);
      await isProblem(() => library.rewrite());
      disk.disarm();
      const state = everything(library);
      expect(await afterCrash(folder)).toEqual(state);
      addJar(library, `after ${at}`);
      await library.rewrite();
      expect(library.status()).toMatchObject({ unfolded: 0, rewriteProblem: undefined });
      expect(await afterCrash(folder)).toEqual(everything(library));
      expect(leftovers(folder)).toEqual([]);
    }
    await library.close();
  });

  it('at any call of opening: the library opens, or says why not and can be opened next time', async () => {
    const disk = new FaultyFileSystem();
    const { folder, library } = await libraryOn(disk);
    const state = everything(library);
    await library.close();
    disk.arm(NEVER, kind);
    const counted = await openLibrary(folder, sampleOptions({ fileSystem: disk.fs }));
    const calls = disk.calls.length;
    await counted.close();
    for (let at = 1; at <= calls; at += 1) {
      disk.arm(at, kind);
      await isProblem(async () => {
        const opened = await openLibrary(folder, sampleOptions({ fileSystem: disk.fs }));
        expect(everything(opened)).toEqual(state);
        disk.disarm();
        await opened.close();
      });
      disk.disarm();
      expect(await afterCrash(folder)).toEqual(state);
    }
  });
});

describe('a disk that stays full', () => {
  it('takes no change, loses none, and goes on when there is room again', async () => {
    const disk = new FaultyFileSystem();
    const { folder, library } = await libraryOn(disk);
    for (let attempt = 0; attempt < 5; attempt += 1) {
      disk.arm(3, 'half-then');
      expect(await isProblem(() => addJar(library, 'b'))).toBe(true);
    }
    disk.disarm();
    addJar(library, 'b');
    await library.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
  });

  it('lets the library close: the log holds everything', async () => {
    const disk = new FaultyFileSystem();
    const problems: Problem[] = [];
    const folder = newFolder();
    const library = await createSample(folder, {
      fileSystem: disk.fs,
      onProblem: (problem) => problems.push(problem),
    });
    addJar(library, 'a');
    disk.armForGood(1, 'ENOSPC');
    await library.close();
    disk.disarm();
    expect(problems.map((problem) => problem.code)).toEqual(['disk-full']);
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });
});
