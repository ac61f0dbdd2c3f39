import fc from 'fast-check';
import { mkdirSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  BACKUP_REASONS,
  backupName,
  parseBackupName,
  refuseAltered,
  writeBackup,
} from '@db/library/backups/backup-file';
import { listBackups, newestGoodBackup, readBackup, rotateBackups } from '@db/library/backups/backups';
import type { FileSystem } from '@db/library/file/file-system';
import { FaultyFileSystem } from './faulty-file-system';
import { addJar, createSample, newFolder, problemOf, quickDisk, sampleOptions } from './sample-library';

/* Backups as files: told by their names, trusted by their content. */

const fs = quickDisk();
const at = (day: number): string => `2026-03-${String(day).padStart(2, '0')}T09:00:00.000Z`;

let bytes: Uint8Array;
let folder: string;
beforeAll(async () => {
  const library = await createSample();
  addJar(library, 'a');
  ({ bytes } = await library.snapshot());
  await library.close();
});
beforeEach(() => {
  folder = newFolder();
  mkdirSync(folder);
});
const put = (day: number, sequence = day) =>
  writeBackup(fs, { folder, reason: 'daily', at: at(day) }, sequence, bytes);

describe('the name of a backup', () => {
  it('tells when, why and up to which change it was made, and can be a name on any disk', () => {
    const moment = fc
      .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
      .map((when) => when.toISOString());
    fc.assert(
      fc.property(
        moment,
        fc.constantFrom(...BACKUP_REASONS),
        fc.nat(),
        fc.uint8Array(),
        (madeAt, reason, sequence, of) => {
          const name = backupName({ folder, reason, at: madeAt }, sequence, of);
          expect(parseBackupName(name)).toEqual({ name, madeAt, reason, sequence });
          expect(name).not.toMatch(/[<>:"/\\|?*]/);
          expect(() => refuseAltered(name, of)).not.toThrow();
          expect(() => refuseAltered(name, Uint8Array.of(...of, 0))).toThrow(/damaged/);
        },
      ),
    );
  });

  it.each([
    'library.sqlite',
    '2026-03-01T09-00-00-000Z change 1 yearly.sqlite',
    '2026-03-01T09-00-00-000Z change one daily.sqlite',
    '2026-03-01T09-00-00-000Z change 1 daily abc.sqlite',
    'copy of 2026-03-01T09-00-00-000Z change 1 daily.sqlite',
    '../2026-03-01T09-00-00-000Z change 1 daily.sqlite',
    '2026-03-01T09-00-00-000Z change 1 daily.sqlite.part',
    '',
  ])('is not “%s”, which is left alone and never read', async (name) => {
    expect(parseBackupName(name)).toBeUndefined();
    await problemOf(() => readBackup(fs, folder, name), 'not-found');
  });

  it('of before names had a check is still one, and believed as it is', async () => {
    const name = '2026-03-01T09-00-00-000Z change 1 daily.sqlite';
    writeFileSync(join(folder, name), bytes);
    expect(await readBackup(fs, folder, name)).toEqual(Buffer.from(bytes));
  });
});

describe('the backups in a folder', () => {
  it('are listed newest first, of two of one moment the one with more changes, and nothing else that is there', async () => {
    for (const [day, sequence] of [
      [2, 2],
      [1, 1],
      [3, 3],
      [3, 4],
    ] as const)
      await put(day, sequence);
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    mkdirSync(join(folder, 'older'));
    expect((await listBackups(fs, folder)).map(({ sequence }) => sequence)).toEqual([4, 3, 2, 1]);
    expect(await listBackups(fs, join(folder, 'nowhere'))).toEqual([]);
  });

  it('that were cut short or overwritten are told to be no good, and the newest good one is found behind them', async () => {
    const made = [await put(1), await put(2), await put(3), await put(4)];
    truncateSync(join(folder, made[3]!.name), 1000);
    writeFileSync(join(folder, made[2]!.name), 'a letter');
    // Its length and its marks are right: only its content tells.
    const bent = Uint8Array.from(bytes);
    bent[bent.length - 20] = bent[bent.length - 20]! ^ 1;
    writeFileSync(join(folder, made[1]!.name), bent);
    expect((await listBackups(fs, folder)).map(({ good }) => good)).toEqual([false, false, true, true]);
    expect((await newestGoodBackup(fs, folder))?.name).toBe(made[0]!.name);
    await problemOf(() => readBackup(fs, folder, made[1]!.name), 'library-damaged');
    rmSync(join(folder, made[0]!.name));
    expect(await newestGoodBackup(fs, folder)).toBeUndefined();
  });

  it('are whole or not there, at whichever call the disk fails while one is made', async () => {
    let read = false;
    for (let call = 1; call <= 14; call += 1)
      for (const kind of ['ENOSPC', 'EIO', 'half-then']) {
        const disk = new FaultyFileSystem();
        disk.arm(call, kind);
        const order = { folder, reason: 'request' as const, at: at(5) };
        const made = await writeBackup(disk.fs, order, 5, bytes).catch((error: unknown) => error);
        disk.disarm();
        for (const { name } of await listBackups(fs, folder))
          expect(readFileSync(join(folder, name)), `${kind} at ${call}`).toEqual(Buffer.from(bytes));
        if (!(made instanceof Error)) continue;
        // What could not be read again is not counted, nor left there.
        const isRead = disk.calls[call - 1] === 'readFile';
        if (isRead) expect(await listBackups(fs, folder), `${kind} at ${call}`).toEqual([]);
        read ||= isRead;
        for (const name of readdirSync(folder)) rmSync(join(folder, name));
      }
    expect(read).toBe(true);
  });

  it('that cannot be removed are tried again, and are no reason to keep others', async () => {
    for (const day of [1, 2, 3, 4]) await put(day);
    const limits = { latest: 2, days: 0, months: 0, migrationDays: 0, totalBytes: 1e9 };
    const disk = new FaultyFileSystem();
    const stuck: FileSystem = new Proxy(disk.fs, {
      get: (held, name: keyof FileSystem) =>
        name === 'unlink'
          ? (path: string) =>
              path.includes('2026-03-01') ? Promise.reject(new Error('busy')) : held.unlink(path)
          : held[name],
    });
    const kept = await rotateBackups(stuck, folder, new Date(at(10)), limits);
    expect(kept.map(({ sequence }) => sequence)).toEqual([4, 3]);
    expect((await listBackups(fs, folder)).map(({ sequence }) => sequence)).toEqual([4, 3, 1]);
    await rotateBackups(fs, folder, new Date(at(10)), limits);
    expect((await listBackups(fs, folder)).map(({ sequence }) => sequence)).toEqual([4, 3]);
  });
});

describe('the second place of backups', () => {
  it('holds what the first holds; where it cannot be had, that is told and the first stands', async () => {
    const second = newFolder();
    const library = await createSample(newFolder(), { backupCopies: second });
    addJar(library, 'a');
    const { name } = await library.backUp();
    expect(readdirSync(second)).toEqual([name]);
    expect(readFileSync(join(second, name))).toEqual(Buffer.from(await library.readBackup(name)));
    rmSync(second, { recursive: true });
    writeFileSync(second, 'a file in its way');
    addJar(library, 'b');
    const next = await library.backUp();
    expect(library.status().rewriteProblem).toMatchObject({ code: 'disk-error', facts: { folder: second } });
    expect((await library.listBackups()).map((backup) => backup.name)).toContain(next.name);
    rmSync(second);
    await library.backUp();
    expect(library.status().rewriteProblem).toBeUndefined();
    await library.close();
    expect(sampleOptions().backupCopies).toBeUndefined();
  });
});
