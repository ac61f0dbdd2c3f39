import { createHash, randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import type { LibraryDocument } from '@core/exchange/document';
import { blankMaterial } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import type { OpenLibrary } from '@db/library/open-library';
import { Engine } from '@db/library/sql/engine';
import { migrations } from '@db/migrations/list';
import { writePack } from '@db/packs/write-pack';
import { stateOf } from '@db/record/state';
import type { ServiceContext } from '@service/context';
import { Meetings } from '@service/meeting/meetings';
import { describe, expect, it } from 'vitest';
import { FaultyFileSystem } from './faulty-file-system';
import { createSample, fingerprints, newFolder, reopened } from './sample-library';

/* A disk that fails while two libraries are merged: all of it came, or nothing did. */

const AT = '2026-06-01T10:00:00.000Z';
const NEVER = 1_000_000;
const FEW_BACKUPS = { latest: 2, days: 0, months: 0, migrationDays: 0, totalBytes: 1e9 };
const NO_DECISIONS = { rules: {}, records: {}, fields: {} };
const COUNT = 12;

/** A data sheet that one material of the pack shows. */
const SHEET = new TextEncoder().encode('%PDF-1.4\nan invented data sheet\n%%EOF');
const SHEET_SHA = createHash('sha256').update(SHEET).digest('hex');

/** A pack of new materials, one of them with its data sheet. */
function pack(): Uint8Array {
  const records = Array.from({ length: COUNT }, (_, at): LibraryDocument['records'][number] => {
    const id = randomUUID();
    const sheet = { kind: 'specification' as const, title: 'Sheet', dated: '', validUntil: '' };
    const documents = [{ ...sheet, sha256: SHEET_SHA, mediaType: 'application/pdf', bytes: SHEET.length }];
    const content = {
      ...blankMaterial(`Larkspur ${at}`, 'Cetyl Alcohol'),
      ...(at === 0 && { documents }),
    };
    const { hash, format } = stateOf(MATERIAL, id, MATERIAL.read(content));
    const times = { createdAt: AT, updatedAt: AT };
    return { kind: 'material', id, revision: 1, ...times, format, state: hash, past: [], content };
  });
  const document: LibraryDocument = {
    ...{ stillroom: 'library', format: 1, writtenAt: AT, withheld: {}, settings: null },
    library: { id: randomUUID(), name: 'North Bench' },
    ...{ records, history: [], states: [], versions: [], batches: [], issues: [], numbers: [] },
    attachments: [{ sha256: SHEET_SHA, of: 'Larkspur 0' }],
  };
  return writePack({ document, title: 'Spring', by: '', attachments: new Map([[SHEET_SHA, SHEET]]) });
}

function meetingsOf(library: OpenLibrary): Meetings {
  const session = { current: () => ({ library }), refreshLists: () => undefined };
  return new Meetings({ session, now: () => new Date(), newId: randomUUID } as unknown as ServiceContext);
}

async function met(meetings: Meetings): Promise<string> {
  const { id, relations } = await meetings.withFile(pack(), 'Spring.zip', new AbortController().signal);
  expect(relations).toMatchObject({ new: COUNT });
  return id;
}

const countOf = (library: Pick<OpenLibrary, 'get'>): number =>
  library.get<{ n: number }>('SELECT count(*) AS n FROM material')?.n ?? -1;
/** What SQLite itself says of a closed library's file. */
async function integrityOf(folder: string): Promise<string> {
  const engine = await Engine.open(readFileSync(join(folder, 'library.sqlite')));
  try {
    return String(engine.pragma('integrity_check'));
  } finally {
    engine.close();
  }
}

describe.each([
  ['is full', 'ENOSPC'],
  ['becomes full in the middle of a write', 'half-then'],
])('a disk that %s during a merge', (_, kind) => {
  it('leaves the library as it was, whichever call fails; once it works again, all comes in, and goes back', async () => {
    const disk = new FaultyFileSystem();
    const folder = newFolder();
    const options = { fileSystem: disk.fs, migrations, backupLimits: FEW_BACKUPS };
    const library = await createSample(folder, options);
    const meetings = meetingsOf(library);
    const whole = await met(meetings);
    disk.arm(NEVER, kind);
    expect(await meetings.apply(whole, NO_DECISIONS)).toMatchObject({
      ...{ written: true, merged: { added: COUNT, changed: 0 } },
    });
    const calls = disk.calls.length;
    await meetings.takeBack();
    const sheet = join(folder, 'attachments', SHEET_SHA.slice(0, 2), SHEET_SHA);
    expect(countOf(library)).toBe(0);
    const told = new Set<string>();
    for (let at = 1; at <= calls; at += 1) {
      // Each time its files have to come too.
      rmSync(sheet, { force: true });
      const id = await met(meetings);
      disk.arm(at, kind);
      const wentIn = await meetings.apply(id, NO_DECISIONS).then(
        () => true,
        (error: { code?: string; advice?: string }) => {
          told.add(String(error.code));
          expect(error.advice).toMatch(/\S/);
          return false;
        },
      );
      disk.arm(NEVER, kind);
      expect(countOf(library), `call ${at}`).toBe(wentIn ? COUNT : 0);
      if (wentIn) {
        // What a record shows is there as soon as the record is.
        expect(new Uint8Array(await library.attachments.get(SHEET_SHA))).toEqual(SHEET);
        await meetings.takeBack();
      }
      expect(library.status().changedOutside, `call ${at}`).toBe(false);
    }
    // A folder that could not be flushed is a fault of the disk, whatever it lacked.
    expect(told).toContain('disk-full');
    expect([...told].filter((code) => code !== 'disk-full' && code !== 'disk-error')).toEqual([]);

    // It goes on: another edit, the merge once more, and all of it is there after closing.
    expect(await meetings.apply(await met(meetings), NO_DECISIONS)).toMatchObject({ written: true });
    await library.close();
    const lock = join(folder, 'library.lock');
    if (existsSync(lock)) unlinkSync(lock);
    expect(await reopened(folder, countOf, { migrations })).toBe(COUNT);
    expect(await integrityOf(folder)).toBe('ok');
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('a disk without any room left during a merge', () => {
  it('leaves a library that is read, and merged once there is room', async () => {
    const disk = new FaultyFileSystem();
    const folder = newFolder();
    const library = await createSample(folder, { fileSystem: disk.fs, migrations });
    const meetings = meetingsOf(library);
    const id = await met(meetings);
    const before = fingerprints(folder);
    disk.armForGood(1, 'ENOSPC');
    await expect(meetings.apply(id, NO_DECISIONS)).rejects.toMatchObject({ code: 'disk-full' });
    expect(countOf(library)).toBe(0);
    const { 'library.sqlite': file } = fingerprints(folder);
    expect(file).toBe(before['library.sqlite']);
    disk.disarm();
    // What was compared is gone with the try: it says so, and what to do.
    await expect(meetings.apply(id, NO_DECISIONS)).rejects.toMatchObject({
      message: 'What was compared is no longer held here.',
      advice: 'Choose it once more. Nothing was changed.',
    });
    expect(await meetings.apply(await met(meetings), NO_DECISIONS)).toMatchObject({ written: true });
    await library.close();
    expect(await reopened(folder, countOf, { migrations })).toBe(COUNT);
  });
});
