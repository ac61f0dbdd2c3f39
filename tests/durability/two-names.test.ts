import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Remembered } from '@db/library/opening/remembered';
import { openLibrary } from '@db/library/open-library';
import {
  addJar,
  closedSample,
  fingerprints,
  jarIds,
  newFolder,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

// A library that is reached by two names: its folder, or the files in it, by a symbolic link.

let folder: string;
let link: string;

beforeEach(async () => {
  folder = newFolder();
  link = `${folder} by another name`;
  await closedSample(folder, 'a');
});

describe('a folder that is a link', () => {
  beforeEach(() => symlinkSync(folder, link));

  it.each([
    ['by the link first', () => [link, folder]],
    ['by the link second', () => [folder, link]],
    ['by a link to the link', () => [folder, `${link} again`]],
  ])('opened twice, %s, has one lock: the second reads', async (_how, names) => {
    symlinkSync(link, `${link} again`);
    const [one = '', other = ''] = names();
    const first = await openLibrary(one, sampleOptions());
    const second = await openLibrary(other, sampleOptions());
    expect(first.readOnly).toBe(false);
    expect(second.status().readOnlyBecause?.code).toBe('library-locked');
    addJar(first, 'b');
    await problemOf(() => addJar(second, 'c'), 'library-read-only');
    await second.close();
    await first.close();
    expect(await reopened(one, jarIds)).toEqual(['a', 'b']);
    expect(await reopened(other, jarIds)).toEqual(['a', 'b']);
  });

  it('is taken over by the other name, and the first then stops by itself', async () => {
    const first = await openLibrary(folder, sampleOptions());
    addJar(first, 'b');
    const second = await openLibrary(link, sampleOptions({ takeOver: true }));
    addJar(second, 'c');
    await problemOf(() => addJar(first, 'd'), 'library-locked');
    await first.close();
    await second.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c']);
  });

  it('is known, and remembered, by where it really is', async () => {
    const left = new Map<string, Remembered>();
    const memory = {
      recall: (of: string) => left.get(of),
      remember: (of: string, how: Remembered) => void left.set(of, how),
    };
    const library = await openLibrary(link, sampleOptions({ memory }));
    expect(library.folder).toBe(folder);
    addJar(library, 'b');
    await library.backUp();
    await library.close();
    expect([...left.keys()]).toEqual([folder]);
    expect(readdirSync(join(folder, 'backups'))).not.toEqual([]);
  });

  it('turned to another library while it is open: all goes on where it was, and nothing into that one', async () => {
    const stranger = newFolder();
    await closedSample(stranger);
    const before = fingerprints(stranger);
    const library = await openLibrary(link, sampleOptions());
    rmSync(link);
    symlinkSync(stranger, link);
    addJar(library, 'b');
    await library.rewrite();
    await library.backUp();
    const name = await library.attachments.put(Buffer.from('a photo'));
    await library.close();
    expect(fingerprints(stranger)).toEqual(before);
    expect(existsSync(join(folder, 'attachments', name.slice(0, 2), name))).toBe(true);
    expect(readdirSync(folder)).not.toContain('library.lock');
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
  });

  it('to nothing is a library that is missing, and none is made', async () => {
    renameSync(folder, `${folder} away`);
    await problemOf(() => openLibrary(link, sampleOptions()), 'library-missing');
    expect(readdirSync(dirname(folder))).not.toContain('library');
  });
});

it('two folders of links to one file and one log: the second opener has them, and the first acknowledges no more', async () => {
  mkdirSync(link);
  for (const name of ['library.sqlite', 'library.log']) symlinkSync(join(folder, name), join(link, name));
  const first = await openLibrary(folder, sampleOptions());
  addJar(first, 'b');
  const second = await openLibrary(link, sampleOptions());
  expect(jarIds(second)).toEqual(['a', 'b']);
  await problemOf(() => addJar(first, 'c'), 'library-changed-outside');
  addJar(second, 'd');
  await first.close();
  await second.rewrite();
  addJar(second, 'e');
  await second.close();
  expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'd', 'e']);
});
