import {
  lstatSync,
  mkdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { openLibrary } from '@db/library/open-library';
import { recoverFromLog } from '@db/library/opening/recovery';
import { leaveLock } from './attack/sample';
import {
  addJar,
  closedSample,
  fingerprints,
  jarIds,
  newPlaces,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

// A log that was put on another disk, with a link in its place.

let folder: string;
let link: string;
let target: string;

beforeEach(async () => {
  ({ folder, log: link } = newPlaces());
  await closedSample(folder, 'a');
  mkdirSync(join(folder, '../elsewhere'));
  target = join(folder, '../elsewhere/changes.log');
  renameSync(link, target);
});

describe.each([
  ['by its whole path', () => target],
  ['by a path from the folder', () => '../elsewhere/changes.log'],
])('a linked log, linked %s', (_how, points) => {
  beforeEach(() => symlinkSync(points(), link));

  function isLink(): boolean {
    return lstatSync(link).isSymbolicLink() && readlinkSync(link) === points();
  }

  it('is written where it really is, and stays a link', async () => {
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'b');
    expect(readFileSync(target, 'latin1')).toContain('jar b');
    await library.rewrite();
    addJar(library, 'c');
    await library.close();
    expect(isLink()).toBe(true);
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c']);
    expect(Object.keys(fingerprints(join(folder, '../elsewhere')))).toEqual(['changes.log']);
  });

  it('keeps what was acknowledged when its process goes away', async () => {
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'b');
    leaveLock(folder, JSON.parse(readFileSync(join(folder, 'library.lock'), 'utf8')) as object);
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
    expect(isLink()).toBe(true);
  });

  it('that is damaged is kept whole and mended where it is', async () => {
    const damaged = Buffer.from(readFileSync(target));
    damaged.writeUInt8(damaged.readUInt8(30) ^ 1, 30);
    writeFileSync(target, damaged);
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    const { library, log } = await recoverFromLog(folder, sampleOptions());
    expect(readFileSync(log?.keptAs ?? '').equals(damaged)).toBe(true);
    await library.close();
    expect(isLink()).toBe(true);
  });

  it('whose disk is not there is told as such, and nothing is put in its place', async () => {
    renameSync(target, `${target} away`);
    const before = Object.keys(fingerprints(join(folder, 'backups')));
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-missing');
    expect(problem.message).toContain('link to a file that is not there');
    expect(problem.advice).toContain('Connect the disk');
    expect(isLink()).toBe(true);
    expect(Object.keys(fingerprints(join(folder, 'backups')))).toEqual(before);
    renameSync(`${target} away`, target);
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });

  it('whose disk goes away while it is open: nothing more is acknowledged, and nothing is put in its place', async () => {
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'b');
    renameSync(join(folder, '../elsewhere'), join(folder, '../gone'));
    await problemOf(() => addJar(library, 'c'), 'library-changed-outside');
    await library.close();
    expect(isLink()).toBe(true);
    renameSync(join(folder, '../gone'), join(folder, '../elsewhere'));
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
  });
});

it('a log replaced by a link while the library is open is not written to', async () => {
  renameSync(target, link);
  const library = await openLibrary(folder, sampleOptions());
  addJar(library, 'b');
  renameSync(link, target);
  symlinkSync(target, link);
  addJar(library, 'c');
  unlinkSync(link);
  symlinkSync(join(folder, 'library.sqlite'), link);
  const file = readFileSync(join(folder, 'library.sqlite'));
  await problemOf(() => addJar(library, 'd'), 'library-changed-outside');
  await library.close();
  expect(readFileSync(join(folder, 'library.sqlite')).equals(file)).toBe(true);
  expect(lstatSync(link).isSymbolicLink()).toBe(true);
});
