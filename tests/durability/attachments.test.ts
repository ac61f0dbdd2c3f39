import { existsSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openLibrary } from '@db/library/open-library';
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

  it('are all looked through once a week, and damaged ones told by name', async () => {
    const folder = newFolder();
    let now = new Date('2026-03-01T08:00:00.000Z');
    const library = await createSample(folder, { now: () => now });
    const name = await library.attachments.put(PHOTO);
    const damage = (text: string) => writeFileSync(join(folder, 'attachments', name.slice(0, 2), name), text);
    const found = async () => {
      await library.checkAttachments();
      return library.status().notes.map(({ facts }) => facts.attachments);
    };
    expect(await found()).toEqual([]);
    damage('b photo');
    now = new Date('2026-03-07T08:00:00.000Z');
    expect(await found()).toEqual([]);
    now = new Date('2026-03-08T08:00:01.000Z');
    expect(await found()).toEqual([[name]]);
    damage('a photo');
    now = new Date('2026-03-16T08:00:00.000Z');
    expect(await found()).toEqual([]);
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
