import { beginReading } from '@core/imports/begin-reading';
import { readRows } from '@core/imports/read-rows';
import { readCsv } from '@core/tables/csv';
import type { OpenLibrary } from '@db/library/open-library';
import { migrations } from '@db/migrations/list';
import type { ServiceContext } from '@service/context';
import { Imports } from '@service/imports/imports';
import { randomUUID } from 'node:crypto';
import { existsSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FaultyFileSystem } from './faulty-file-system';
import { createSample, newFolder, reopened } from './sample-library';

const tableOf = (count: number): string =>
  ['Name;INCI;HLB', ...Array.from({ length: count }, (_, at) => `Larkspur ${at};Cetearyl Glucoside;11`)].join(
    '\n',
  );
const NEVER = 1_000_000;
const FEW_BACKUPS = { latest: 2, days: 0, months: 0, migrationDays: 0, totalBytes: 1e9 };
const countOf = (library: Pick<OpenLibrary, 'get'>): number =>
  library.get<{ n: number }>('SELECT count(*) AS n FROM material')?.n ?? -1;

function contextOf(library: OpenLibrary): ServiceContext {
  const lists = { changed: () => undefined };
  const changes = { tell: () => undefined, tellLibrary: () => undefined };
  const session = { current: () => ({ library, lists }), changes, refreshLists: () => undefined };
  return { session, now: () => new Date(), newId: randomUUID } as unknown as ServiceContext;
}

const planned = (library: OpenLibrary, count: number) => plannedBy(new Imports(contextOf(library)), count);

async function plannedBy(imports: Imports, count: number) {
  const sheet = readCsv(tableOf(count), 't.csv');
  const { head, columns, ways } = beginReading(sheet, {});
  const id = await imports.begin('materials', 'tradeName', 't.csv');
  const rows = readRows(sheet.rows.slice(head + 1), columns, ways);
  for (let at = 0; at < rows.length; at += 200) await imports.plan(id, at, rows.slice(at, at + 200));
  return { imports, id };
}

const editNames = (library: OpenLibrary, name: string): void =>
  library.transaction((tx) =>
    tx.run(
      'INSERT INTO sequence (name, last) VALUES (?, 1) ON CONFLICT (name) DO UPDATE SET last = last + 1',
      name,
    ),
  );

// A short table goes into the log; of a long one a copy takes the library's place.
describe.each([
  ['a short table', 20],
  ['a long table', 250],
])('a disk that is full while %s is taken in', (_, count) => {
  it('leaves the library as it was, whichever write fails; once there is room, all of it comes in, and goes back', async () => {
    const disk = new FaultyFileSystem();
    const folder = newFolder();
    const library = await createSample(folder, {
      fileSystem: disk.fs,
      migrations,
      backupLimits: FEW_BACKUPS,
    });
    const { imports, id } = await planned(library, count);
    disk.arm(NEVER, 'ENOSPC');
    await imports.takeIn(id);
    const calls = disk.calls.length;
    expect(countOf(library)).toBe(count);
    const reasons = (await library.listBackups()).map(({ reason }) => reason);
    expect(reasons.includes('import')).toBe(count > 100);
    await imports.takeBack(id);
    let failed = 0;
    for (let at = 1; at <= calls; at += 1) {
      disk.arm(at, 'ENOSPC');
      const wentIn = await imports.takeIn(id).then(
        () => true,
        (error: unknown) => {
          failed += 1;
          expect(error).toMatchObject({ code: 'disk-full' });
          return false;
        },
      );
      disk.arm(NEVER, 'ENOSPC');
      expect(countOf(library)).toBe(wentIn ? count : 0);
      if (wentIn) await imports.takeBack(id);
      expect(countOf(library)).toBe(0);
    }
    expect(failed).toBeGreaterThan(0);
    expect(await imports.takeIn(id)).toEqual({ added: count, changed: 0 });
    await library.close();
    const lock = join(folder, 'library.lock');
    if (existsSync(lock)) unlinkSync(lock);
    expect(await reopened(folder, countOf, { migrations })).toBe(count);
  });
});

describe('a change while a long table is taken in', () => {
  it('is kept: what was taken in is written anew over it', async () => {
    const folder = newFolder();
    const library = await createSample(folder, { migrations });
    const { imports, id } = await planned(library, 400);
    let edits = 0;
    const goOn = setInterval(() => {
      if (edits >= 2) return;
      editNames(library, 'kept');
      edits += 1;
    }, 1);
    expect(await imports.takeIn(id)).toEqual({ added: 400, changed: 0 });
    clearInterval(goOn);
    expect(edits).toBeGreaterThan(0);
    await library.close();
    const kept = await reopened(
      folder,
      (again) => ({
        materials: countOf(again),
        edits: again.get<{ last: number }>("SELECT last FROM sequence WHERE name = 'kept'")?.last,
      }),
      { migrations },
    );
    expect(kept).toEqual({ materials: 400, edits });
  });
});

describe('another library that is opened while a table is taken in', () => {
  it.each([
    ['a short table', 20],
    ['a long table', 250],
  ])('gets nothing of %s, though it stands at the same change', async (_, count) => {
    const asked = await createSample(newFolder(), { migrations });
    const other = await createSample(newFolder(), { migrations });
    expect(other.sequence).toBe(asked.sequence);
    let open = asked;
    const { session, ...rest } = contextOf(asked);
    const current = () => ({ ...session.current(), library: open });
    const imports = new Imports({ ...rest, session: { ...session, current } } as unknown as ServiceContext);
    const { id } = await plannedBy(imports, count);
    const done = imports.takeIn(id);
    open = other;
    await expect(done).rejects.toMatchObject({ code: 'not-found' });
    expect([countOf(asked), countOf(other)]).toEqual([0, 0]);
    await Promise.all([asked.close(), other.close()]);
  });
});
