import { mkdirSync, readFileSync, truncateSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { openLibrary } from '@db/library/open-library';
import { recoverFromBackup } from '@db/library/opening/recovery';
import { FaultyFileSystem } from './faulty-file-system';
import {
  addJar,
  createSample,
  everything,
  fingerprints,
  jarIds,
  newFolder,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

let folder: string;

beforeEach(() => {
  folder = newFolder();
});

describe('backups', () => {
  it('come with the first rewrite of a day, then hourly, and not more often', async () => {
    let time = Date.parse('2026-03-01T09:00:00.000Z');
    const library = await createSample(folder, { now: () => new Date(time) });
    const reasonsAfter = async (minutes: number) => {
      time += minutes * 60_000;
      addJar(library, `at ${time}`);
      await library.rewrite();
      return (await library.listBackups()).map((backup) => backup.reason);
    };
    expect(await reasonsAfter(0)).toEqual(['daily']);
    expect(await reasonsAfter(30)).toEqual(['daily']);
    expect(await reasonsAfter(30)).toEqual(['hourly', 'daily']);
    expect(await reasonsAfter(15 * 60)).toEqual(['daily', 'hourly', 'daily']);
    await library.close();
  });

  it('hold what was there, changes still in the log included', async () => {
    const library = await createSample(folder);
    addJar(library, 'a');
    const backup = await library.backUp();
    expect(backup).toMatchObject({ reason: 'request', sequence: 1, good: true });
    await library.close();
    const copy = newFolder();
    mkdirSync(copy);
    writeFileSync(join(copy, 'library.sqlite'), readFileSync(join(folder, 'backups', backup.name)));
    expect(await reopened(copy, jarIds)).toEqual(['a']);
  });

  it('go where they are told', async () => {
    const backupFolder = newFolder();
    const library = await createSample(folder, { backupFolder });
    const backup = await library.backUp();
    await library.close();
    expect(Object.keys(fingerprints(backupFolder))).toEqual([backup.name]);
  });

  it('that fail are reported on request, and do not keep a rewrite from being done', async () => {
    const blocked = newFolder();
    writeFileSync(blocked, 'a file where the folder should be');
    const library = await createSample(folder, { backupFolder: blocked });
    addJar(library, 'a');
    await problemOf(() => library.backUp(), 'disk-error');
    await library.rewrite();
    expect(library.status().unfolded).toBe(0);
    await library.close();
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });

  it('are rotated', async () => {
    const limits = { latest: 2, days: 0, months: 0, migrationDays: 0, totalBytes: 1e9 };
    const library = await createSample(folder, { backupLimits: limits });
    for (let n = 0; n < 5; n += 1) {
      addJar(library, `${n}`);
      await library.backUp();
    }
    expect((await library.listBackups()).map((backup) => backup.sequence)).toEqual([5, 4]);
    await library.close();
  });
});

describe('restoring a backup', () => {
  it('brings back that state, can itself be undone, and lasts', async () => {
    const library = await createSample(folder);
    addJar(library, 'a');
    const backup = await library.backUp();
    addJar(library, 'b');
    await library.restore(backup.name);
    expect(jarIds(library)).toEqual(['a']);
    addJar(library, 'c');
    const state = everything(library);
    unlinkSync(join(folder, 'library.lock'));
    const again = await openLibrary(folder, sampleOptions());
    expect(everything(again)).toEqual(state);
    const before = (await again.listBackups()).find((one) => one.reason === 'restore');
    await again.restore(before?.name ?? '');
    expect(jarIds(again)).toEqual(['a', 'b']);
    await again.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
  });

  it('refuses names that are not backups, and backups of another library', async () => {
    const library = await createSample(folder);
    for (const name of ['../library.sqlite', 'x', '2026-01-01T00-00-00-000Z change 1 request.sqlite']) {
      await problemOf(() => library.restore(name), 'not-found');
    }
    const other = await createSample(newFolder(), { backupFolder: join(folder, 'backups') });
    const foreign = await other.backUp();
    await other.close();
    await problemOf(() => library.restore(foreign.name), 'library-not-one');
    addJar(library, 'a');
    await library.close();
  });

  it('on a failing disk leaves wholly the one or wholly the other, and the library goes on', async () => {
    const disk = new FaultyFileSystem();
    const library = await createSample(folder, { fileSystem: disk.fs });
    addJar(library, 'a');
    const backup = await library.backUp();
    for (let at = 1; at < 80; at += 1) {
      addJar(library, `b ${at}`);
      const present = jarIds(library);
      disk.arm(at, 'ENOSPC');
      await library.restore(backup.name).catch(() => undefined);
      disk.disarm();
      const now = jarIds(library);
      if (now.length > 1) expect(now).toEqual(present);
      addJar(library, `c ${at}`);
      expect(await reopened(folder, jarIds, { readOnly: true })).toEqual(jarIds(library));
    }
    await library.close();
  });
});

describe('recovering a damaged library', () => {
  it('puts a backup in its place, keeps the damaged file, and replays the log where it follows on', async () => {
    const library = await createSample(folder);
    addJar(library, 'a');
    const backup = await library.backUp();
    addJar(library, 'b');
    unlinkSync(join(folder, 'library.lock'));
    const file = join(folder, 'library.sqlite');
    truncateSync(file, 5000);
    const damaged = readFileSync(file);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    expect(problem.facts.newestBackup).toMatchObject({ name: backup.name });
    const { library: again, log } = await recoverFromBackup(folder, backup.name, sampleOptions());
    expect(log).toBeUndefined();
    expect(jarIds(again)).toEqual(['a', 'b']);
    await again.close();
    const kept = Object.keys(fingerprints(join(folder, 'backups'))).find((name) =>
      name.endsWith('damaged.sqlite'),
    );
    expect(readFileSync(join(folder, 'backups', kept ?? '')).equals(damaged)).toBe(true);
  });

  it('keeps the log aside where it does not follow on that backup', async () => {
    const library = await createSample(folder);
    addJar(library, 'a');
    const backup = await library.backUp();
    addJar(library, 'b');
    await library.rewrite();
    addJar(library, 'c');
    unlinkSync(join(folder, 'library.lock'));
    unlinkSync(join(folder, 'library.sqlite'));
    const whole = readFileSync(join(folder, 'library.log'));
    const { library: again, log } = await recoverFromBackup(folder, backup.name, sampleOptions());
    expect(jarIds(again)).toEqual(['a']);
    expect(log).toMatchObject({ taken: 0, left: 1 });
    expect(readFileSync(log?.keptAs ?? '').equals(whole)).toBe(true);
    await again.close();
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });
});
