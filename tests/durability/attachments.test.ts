import { existsSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AttachmentInUse } from '@db/library/attachments/weekly-check';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import { FaultyFileSystem } from './faulty-file-system';
import { createSample, newFolder, problemOf, sampleOptions } from './sample-library';

const PHOTO = Buffer.from('a photo');

describe('attachments', () => {
  it('come back byte for byte, and a damaged one is told when it is used and mended by adding it again', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    const name = await library.attachments.put(PHOTO);
    expect(Buffer.from(await library.attachments.get(name))).toEqual(PHOTO);
    writeFileSync(join(folder, 'attachments', name.slice(0, 2), name), 'b photo');
    await problemOf(() => library.attachments.get(name), 'library-damaged');
    expect(await library.attachments.put(PHOTO)).toBe(name);
    expect(Buffer.from(await library.attachments.get(name))).toEqual(PHOTO);
    await library.close();
  });

  it('are refused where nothing can be changed, and after the library was closed', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    const reader = await openLibrary(folder, sampleOptions());
    await problemOf(() => reader.attachments.put(PHOTO), 'library-read-only');
    await reader.close();
    await library.close();
    await problemOf(() => library.attachments.put(PHOTO), 'no-library');
  });

  it('do not make anew a folder that was moved away', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    renameSync(folder, `${folder} moved`);
    await problemOf(() => library.attachments.put(PHOTO), 'library-missing');
    expect(existsSync(folder)).toBe(false);
    renameSync(`${folder} moved`, folder);
    await library.close();
  });

  it('are not told as kept before their folders are known to be on the disk', async () => {
    const disk = new FaultyFileSystem();
    const library = await createSample(newFolder(), { fileSystem: disk.fs });
    disk.arm(1_000_000, 'EIO');
    await library.attachments.put(PHOTO);
    const flushes = disk.calls.filter((call) => call === 'fsyncSync' || call === 'handle.sync').length;
    // The bytes, their folder, and the two above it that may be new.
    expect(flushes).toBe(4);
    await library.close();
  });
});

describe('the weekly check of attachments', () => {
  let folder: string;
  let now: Date;
  let inUse: AttachmentInUse[];
  let told: number;
  let library: OpenLibrary;

  const open = async () =>
    openLibrary(
      folder,
      sampleOptions({ now: () => now, attachmentsInUse: () => inUse, onNote: () => (told += 1) }),
    );
  const pathOf = (name: string) => join(folder, 'attachments', name.slice(0, 2), name);
  const notes = async () => {
    await library.checkAttachments();
    return library.status().notes;
  };

  beforeEach(async () => {
    folder = newFolder();
    now = new Date('2026-03-01T08:00:00.000Z');
    inUse = [];
    told = 0;
    await (await createSample(folder)).close();
    library = await open();
  });
  afterEach(() => library.close());

  it('finds nothing where all is whole, tells nobody, and is due again after seven days', async () => {
    const name = await library.attachments.put(PHOTO);
    expect(await notes()).toEqual([]);
    expect(told).toBe(0);
    writeFileSync(pathOf(name), 'b photo');
    now = new Date('2026-03-07T08:00:00.000Z');
    expect(await notes()).toEqual([]);
    now = new Date('2026-03-08T08:00:01.000Z');
    expect((await notes()).map(({ facts }) => facts.attachments)).toEqual([[name]]);
    expect(told).toBe(1);
  });

  it('tells what is damaged and what is missing by what shows it, in words', async () => {
    const photo = await library.attachments.put(PHOTO);
    const sheet = await library.attachments.put(Buffer.from('a data sheet'));
    inUse = [
      { sha256: photo, words: 'the photo of Moorland Wax' },
      { sha256: sheet, words: '“Data sheet” of Moorland Wax' },
      { sha256: sheet, words: '“Data sheet” of Hedgerow Oil' },
    ];
    writeFileSync(pathOf(photo), 'b photo');
    rmSync(pathOf(sheet));
    const [note] = await notes();
    expect(note?.message).toBe('2 attachments of this library are damaged or missing.');
    expect(note?.advice).toContain(
      'The photo of Moorland Wax (damaged); “Data sheet” of Moorland Wax (missing); “Data sheet” of Hedgerow Oil (missing).',
    );
    expect(note?.advice).toContain('Add the original files again');
  });

  it('is not stopped by what somebody else put beside the attachments', async () => {
    const name = await library.attachments.put(PHOTO);
    for (const odd of ['ab', 'Thumbs.db', '..a']) writeFileSync(join(folder, 'attachments', odd), 'odd');
    writeFileSync(`${pathOf(name)}.tmp`, 'odd');
    writeFileSync(pathOf(name), 'b photo');
    expect((await notes()).map(({ facts }) => facts.attachments)).toEqual([[name]]);
    expect(library.status().rewriteProblem).toBeUndefined();
  });

  it('misses the one attachment that a record shows where the folder of attachments is gone', async () => {
    inUse = [{ sha256: 'ab'.repeat(32), words: 'the photo of Moorland Wax' }];
    const [note] = await notes();
    expect(note?.message).toBe('One attachment of this library is missing.');
    expect(note?.advice).toContain('The photo of Moorland Wax (missing). Add the original file again');
    expect(existsSync(join(folder, 'attachments'))).toBe(false);
  });

  it('is due again at the next opening as long as anything is wrong, whatever the day', async () => {
    const name = await library.attachments.put(PHOTO);
    writeFileSync(pathOf(name), 'b photo');
    expect(await notes()).toHaveLength(1);
    await library.close();
    library = await open();
    expect(await notes()).toHaveLength(1);
    writeFileSync(pathOf(name), PHOTO);
    expect(await notes()).toEqual([]);
    expect(told).toBe(3);
  });

  it('takes back what it said once the original was added again', async () => {
    const name = await library.attachments.put(PHOTO);
    inUse = [{ sha256: name, words: 'the photo of Moorland Wax' }];
    rmSync(pathOf(name));
    expect(await notes()).toHaveLength(1);
    await library.attachments.put(PHOTO);
    expect(library.status().notes).toEqual([]);
    expect(told).toBe(2);
  });

  it('names a few of many, and counts those that only earlier states show', async () => {
    inUse = Array.from({ length: 11 }, (_, at) => ({
      sha256: String(at).padStart(64, '0'),
      words: `the photo of Jar ${at}`,
    }));
    const earlier = await library.attachments.put(PHOTO);
    writeFileSync(pathOf(earlier), 'b photo');
    const [note] = await notes();
    expect(note?.message).toBe('12 attachments of this library are damaged or missing.');
    expect(note?.advice).toContain('Jar 7 (missing); 3 more; 1 that only earlier states of records show.');
    expect(note?.advice).not.toContain('Jar 8');
  });

  it('is not made where nothing may be written', async () => {
    inUse = [{ sha256: 'ab'.repeat(32), words: 'the photo of Moorland Wax' }];
    const reader = await open();
    await reader.checkAttachments();
    expect(reader.status().notes).toEqual([]);
    await reader.close();
  });

  it('believes no day of a clock gone wrong', async () => {
    const name = await library.attachments.put(PHOTO);
    now = new Date('2030-01-01T00:00:00.000Z');
    expect(await notes()).toEqual([]);
    writeFileSync(pathOf(name), 'b photo');
    now = new Date('2026-03-02T08:00:00.000Z');
    expect(await notes()).toHaveLength(1);
  });
});
