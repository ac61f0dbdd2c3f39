import { readRows } from '@core/imports/read-rows';
import { beginReading } from '@core/imports/begin-reading';
import { readCsv } from '@core/tables/csv';
import { migrations } from '@db/migrations/list';
import type { ServiceContext } from '@service/context';
import { materialsTaker } from '@service/imports/subjects/materials';
import { TableImport } from '@service/imports/table-import';
import { takeBack, takeIn } from '@service/imports/take-in';
import { randomUUID } from 'node:crypto';
import { existsSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { OpenLibrary } from '@db/library/open-library';
import { FaultyFileSystem } from './faulty-file-system';
import { createSample, newFolder, reopened } from './sample-library';

const TABLE = [
  'Name;INCI;HLB',
  ...Array.from({ length: 400 }, (_, at) => `Larkspur ${at};Cetearyl Glucoside;11`),
].join('\n');
const NEVER = 1_000_000;
const countOf = (library: Pick<OpenLibrary, 'get'>): number =>
  library.get<{ n: number }>('SELECT count(*) AS n FROM material')?.n ?? -1;

function contextOf(library: OpenLibrary): ServiceContext {
  const lists = { changed: () => undefined };
  const changes = { tell: () => undefined, tellLibrary: () => undefined };
  const session = { current: () => ({ library, lists }), changes };
  return { session, now: () => new Date(), newId: randomUUID } as unknown as ServiceContext;
}

async function planned(context: ServiceContext, library: OpenLibrary) {
  const sheet = readCsv(TABLE, 't.csv');
  const { head, columns, ways } = beginReading(sheet, {});
  const taking = { source: 't.csv', today: '2026-01-01', currency: 'EUR' } as const;
  const parts = { key: 'tradeName', file: 't.csv', region: 'en-GB', taking } as const;
  const table = new TableImport(library.id, 't.csv', materialsTaker(library, parts));
  await table.plan(context, readRows(sheet.rows.slice(head + 1), columns, ways));
  return table;
}

describe('a disk that is full while a table is taken in', () => {
  it('leaves the library as it was, whichever write fails; once there is room, all of it comes in, and goes back', async () => {
    const disk = new FaultyFileSystem();
    const folder = newFolder();
    const library = await createSample(folder, { fileSystem: disk.fs, migrations });
    const context = contextOf(library);
    const table = await planned(context, library);
    disk.arm(NEVER, 'ENOSPC');
    takeIn(context, table);
    const calls = disk.calls.length;
    expect(countOf(library)).toBe(400);
    takeBack(context, table);
    let failed = 0;
    for (let at = 1; at <= calls; at += 1) {
      disk.arm(at, 'ENOSPC');
      try {
        takeIn(context, table);
        takeBack(context, table);
      } catch (error) {
        failed += 1;
        expect(error).toMatchObject({ code: 'disk-full' });
        // All of it stands, or none: where taking back failed, it is taken back again.
        expect(countOf(library)).toBe(table.written ? 400 : 0);
        if (table.written) takeBack(context, table);
      }
      expect(countOf(library)).toBe(0);
    }
    expect(failed).toBeGreaterThan(0);
    disk.arm(NEVER, 'ENOSPC');
    expect(takeIn(context, table)).toEqual({ added: 400, changed: 0 });
    await library.close();
    const lock = join(folder, 'library.lock');
    if (existsSync(lock)) unlinkSync(lock);
    expect(await reopened(folder, countOf, { migrations })).toBe(400);
  });
});
