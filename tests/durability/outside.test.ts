import {
  appendFileSync,
  chmodSync,
  copyFileSync,
  readFileSync,
  truncateSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
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

let folder: string;
let file: string;
let log: string;
let library: OpenLibrary;

beforeEach(async () => {
  ({ folder, file, log } = newPlaces());
  library = await createSample(folder);
  addJar(library, 'a');
  await library.rewrite();
  addJar(library, 'b');
});

afterEach(() => library.close());

describe('a library file changed from outside', () => {
  it.each([
    ['changed within', () => writeFileSync(file, readFileSync(file).fill(1, 5000, 5001))],
    ['replaced by another', () => copyFileSync(join(folder, 'library.log'), file)],
    ['cut', () => truncateSync(file, 100)],
    ['deleted', () => unlinkSync(file)],
  ])('and %s is noticed, and nothing is overwritten', async (_how, change) => {
    change();
    const before = fingerprints(folder);
    expect(await library.checkOutside()).toBe('changed');
    await problemOf(() => addJar(library, 'c'), 'library-changed-outside');
    expect(library.status()).toMatchObject({ changedOutside: true, readOnly: true });
    await library.close();
    delete before['library.lock'];
    expect(fingerprints(folder)).toEqual(before);
  });

  it('is noticed by a rewrite that nobody warned', async () => {
    writeFileSync(file, readFileSync(file).fill(1, 5000, 5001));
    const before = fingerprints(folder);
    await problemOf(() => library.rewrite(), 'library-changed-outside');
    expect(fingerprints(folder)).toEqual(before);
    expect(library.status().changedOutside).toBe(true);
  });

  it('is not cried over when only its times or rights changed', async () => {
    utimesSync(file, new Date(1000), new Date(2000));
    chmodSync(file, 0o600);
    expect(await library.checkOutside()).toBe('same');
    utimesSync(file, new Date(1000), new Date(3000));
    await library.rewrite();
    expect(library.status()).toMatchObject({ unfolded: 0, changedOutside: false });
  });

  it('leaves a way out: a copy elsewhere with everything, and reopening theirs', async () => {
    const sha256 = await library.attachments.put(Buffer.from('photo'));
    const theirs = readFileSync(file);
    const elsewhere = newFolder();
    writeFileSync(file, theirs.fill(1, 5000, 5001));
    expect(await library.checkOutside()).toBe('changed');
    await library.saveCopyAs(elsewhere);
    await problemOf(() => library.saveCopyAs(elsewhere), 'conflict');
    await library.close();
    const copy = await openLibrary(elsewhere, sampleOptions());
    expect(jarIds(copy)).toEqual(['a', 'b']);
    expect(copy.id).not.toBe(library.id);
    expect(Buffer.from(await copy.attachments.get(sha256)).toString()).toBe('photo');
    addJar(copy, 'c');
    await copy.close();
    expect(await reopened(elsewhere, jarIds)).toEqual(['a', 'b', 'c']);
  });
});

describe('a log changed from outside', () => {
  it.each([
    ['lengthened', () => appendFileSync(log, 'x')],
    ['cut', () => truncateSync(log, 50)],
    ['deleted', () => unlinkSync(log)],
  ])('and %s stops the next change', async (_how, change) => {
    change();
    const before = fingerprints(folder);
    await problemOf(() => addJar(library, 'c'), 'library-changed-outside');
    expect(jarIds(library)).toEqual(['a', 'b']);
    expect(fingerprints(folder)).toEqual(before);
  });

  it('and put back to how it was before is noticed by a fold that nobody warned, and nothing is overwritten', async () => {
    const earlier = readFileSync(log);
    addJar(library, 'c');
    writeFileSync(log, earlier);
    const before = fingerprints(folder);
    await problemOf(() => library.rewrite(), 'library-changed-outside');
    expect(library.status()).toMatchObject({ changedOutside: true, readOnly: true });
    await problemOf(() => addJar(library, 'd'), 'library-changed-outside');
    expect(fingerprints(folder)).toEqual(before);
    expect(jarIds(library)).toEqual(['a', 'b', 'c']);
  });

  it('at the same length is noticed by looking', async () => {
    const bytes = readFileSync(log);
    const end = bytes.indexOf(0);
    writeFileSync(log, bytes.fill('X', end - 4, end - 3));
    utimesSync(log, new Date(1000), new Date(2000));
    expect(await library.checkOutside()).toBe('changed');
  });

  it('but only touched is still the same', async () => {
    utimesSync(log, new Date(1000), new Date(2000));
    expect(await library.checkOutside()).toBe('same');
  });
});
