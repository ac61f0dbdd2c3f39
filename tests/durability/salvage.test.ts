import { existsSync, readFileSync, truncateSync, unlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { openLibrary } from '@db/library/open-library';
import { recoverFromLog } from '@db/library/opening/recovery';
import { DISK_ERRORS, FaultyFileSystem } from './faulty-file-system';
import {
  addJar,
  createSample,
  fingerprints,
  jarIds,
  newFolder,
  newPlaces,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

const NEVER = 1_000_000;

let folder: string;
let log: string;
let lineStarts: number[];

/** A library whose process went away: two jars in the file, `more` in the log only. */
async function abandoned(more: string[]): Promise<void> {
  const library = await createSample(folder);
  addJar(library, 'a');
  addJar(library, 'b');
  await library.rewrite();
  for (const id of more) addJar(library, id);
  unlinkSync(join(folder, 'library.lock'));
  const text = readFileSync(log, 'latin1');
  lineStarts = [...text.matchAll(/^[^\0]/gm)].map((match) => match.index);
}

function flip(at: number): Buffer {
  const bytes = readFileSync(log);
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  writeFileSync(log, bytes);
  return bytes;
}

async function recovered() {
  const { library, log: kept } = await recoverFromLog(folder, sampleOptions());
  const jars = jarIds(library);
  await library.close();
  return { jars, kept };
}

beforeEach(() => void ({ folder, log } = newPlaces()));

describe('a library whose log is damaged', () => {
  it('is refused untouched, saying how many changes hold; nothing is written before it is asked for', async () => {
    await abandoned(['c', 'd', 'e', 'f']);
    flip((lineStarts[3] ?? 0) + 80);
    const before = fingerprints(folder);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    expect(fingerprints(folder)).toEqual(before);
    expect(problem.facts).toMatchObject({ goodLog: { taken: 2, left: 2 } });
    expect(problem.advice).toContain('2 changes');
    expect(problem.advice).toContain(join(folder, 'backups'));
  });

  it('opens with every change before the damage, keeps the whole log, and goes on from there', async () => {
    await abandoned(['c', 'd', 'e', 'f']);
    const damaged = flip((lineStarts[3] ?? 0) + 80);
    const { jars, kept } = await recovered();
    expect(jars).toEqual(['a', 'b', 'c', 'd']);
    expect(kept).toMatchObject({ taken: 2, left: 2 });
    expect(dirname(kept?.keptAs ?? '')).toBe(join(folder, 'backups'));
    expect(readFileSync(kept?.keptAs ?? '').equals(damaged)).toBe(true);
    const again = await openLibrary(folder, sampleOptions());
    addJar(again, 'g');
    unlinkSync(join(folder, 'library.lock'));
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c', 'd', 'g']);
  });

  it('takes exactly the changes before a flip, wherever in the log it is', async () => {
    await abandoned(['c', 'd', 'e']);
    const whole = readFileSync(log);
    for (let at = lineStarts[1] ?? 0; at < whole.indexOf(0); at += 7) {
      writeFileSync(log, whole);
      flip(at);
      const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
      const good = lineStarts.filter((start) => start <= at).length - 2;
      expect(problem.facts.goodLog, `byte ${at}`).toMatchObject({ taken: good });
    }
  });

  it('loses nothing when only its first line is broken: the file itself says what the log continues', async () => {
    await abandoned(['c', 'd']);
    for (const at of [3, 25, 55, 70]) {
      const whole = readFileSync(log);
      flip(at);
      const refused: unknown = await openLibrary(folder, sampleOptions()).catch((error: unknown) => error);
      expect(refused, `byte ${at}`).toMatchObject({ facts: { goodLog: { taken: 2, left: 0 } } });
      writeFileSync(log, whole);
    }
    flip(3);
    expect((await recovered()).jars).toEqual(['a', 'b', 'c', 'd']);
  });

  it('that is empty opens as its file was last written', async () => {
    await abandoned(['c']);
    truncateSync(log, 0);
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    const { jars, kept } = await recovered();
    expect(jars).toEqual(['a', 'b']);
    expect(kept).toMatchObject({ taken: 0, left: 0 });
  });

  it('with a record that follows nothing opens with those that do', async () => {
    await abandoned(['c']);
    const whole = readFileSync(log);
    whole.write(`9 ${'0'.repeat(32)} {"seq":9,"at":""}\n`, whole.indexOf(0));
    writeFileSync(log, whole);
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    expect(await recovered()).toMatchObject({ jars: ['a', 'b', 'c'], kept: { taken: 1, left: 1 } });
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c']);
  });

  it('keeps each damaged log under a name of its own', async () => {
    const sameMoment = sampleOptions({ now: () => new Date('2026-03-01T10:00:00.000Z') });
    await abandoned(['c']);
    const keptAs: string[] = [];
    for (const text of ['junk', 'other junk']) {
      writeFileSync(log, text);
      const { library, log: kept } = await recoverFromLog(folder, sameMoment);
      await library.close();
      keptAs.push(kept?.keptAs ?? '');
    }
    expect(keptAs.map((path) => readFileSync(path, 'utf8'))).toEqual(['junk', 'other junk']);
  });
});

describe('a library with the log of another', () => {
  it('opens without it when asked to; that log is kept', async () => {
    await abandoned(['c']);
    const other = newFolder();
    const library = await createSample(other);
    addJar(library, 'x');
    const foreign = readFileSync(join(other, 'library.log'));
    await library.close();
    writeFileSync(log, foreign);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-changed-outside');
    expect(problem.facts.goodLog).toEqual({ taken: 0, left: 0 });
    const { jars, kept } = await recovered();
    expect(jars).toEqual(['a', 'b']);
    expect(readFileSync(kept?.keptAs ?? '').equals(foreign)).toBe(true);
  });
});

describe('asked for without need', () => {
  it('leaves a good log as it is', async () => {
    await abandoned(['c', 'd']);
    expect(await recovered()).toEqual({ jars: ['a', 'b', 'c', 'd'], kept: undefined });
    expect(Object.keys(fingerprints(folder)).some((name) => name.endsWith('set aside.log'))).toBe(false);
  });

  it('does nothing while somebody else has the library open', async () => {
    const owner = await createSample(folder);
    addJar(owner, 'a');
    await problemOf(() => recoverFromLog(folder, sampleOptions()), 'library-locked');
    addJar(owner, 'b');
    await owner.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
  });

  it('leaves a damaged file alone', async () => {
    await abandoned(['c']);
    truncateSync(join(folder, 'library.sqlite'), 5000);
    const before = fingerprints(folder);
    await problemOf(() => recoverFromLog(folder, sampleOptions()), 'library-damaged');
    expect(fingerprints(folder)).toEqual(before);
  });
});

describe.each([...DISK_ERRORS, 'half-then', 'short'])('a disk that answers %s', (kind) => {
  it('at any call of recovering: the damaged log is still whole somewhere, and it works the next time', async () => {
    await abandoned(['c', 'd', 'e']);
    const damaged = flip((lineStarts[2] ?? 0) + 80);
    const disk = new FaultyFileSystem();
    disk.arm(NEVER, kind);
    await (
      await recoverFromLog(folder, sampleOptions({ fileSystem: disk.fs, readOnly: true }))
    ).library.close();
    const calls = disk.calls.length;
    expect(calls).toBeGreaterThan(20);
    for (let at = 1; at <= calls; at += 1) {
      writeFileSync(log, damaged);
      disk.arm(at, kind);
      const result = await recoverFromLog(folder, sampleOptions({ fileSystem: disk.fs })).catch(
        () => undefined,
      );
      disk.disarm();
      const names = Object.keys(fingerprints(folder)).filter((name) => /\.log$/.test(name));
      expect(names.some((name) => readFileSync(join(folder, name)).equals(damaged))).toBe(true);
      // As though the process died here: nothing is folded into the file.
      if (existsSync(join(folder, 'library.lock'))) unlinkSync(join(folder, 'library.lock'));
      if (result) expect(jarIds(result.library)).toEqual(['a', 'b', 'c']);
      expect((await openedAnyhow()).slice(0, 3)).toEqual(['a', 'b', 'c']);
    }
  });

  /** Read from the disk without changing it. */
  async function openedAnyhow(): Promise<string[]> {
    try {
      return await reopened(folder, jarIds, { readOnly: true });
    } catch {
      const { library } = await recoverFromLog(folder, sampleOptions());
      const jars = jarIds(library);
      unlinkSync(join(folder, 'library.lock'));
      return jars;
    }
  }
});
