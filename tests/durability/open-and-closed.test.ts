import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ProblemCode } from '@core/problems/problem';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import { Engine } from '@db/library/sql/engine';
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

/* Everything that an open library can be asked, where it can be had, and where it is refused. */

let folder: string;
let library: OpenLibrary;
beforeEach(async () => {
  folder = newFolder();
  library = await createSample(folder);
  addJar(library, 'a');
});
afterEach(() => library.close());

type Asked = [what: string, ask: (of: OpenLibrary) => unknown];
const CHANGES: Asked[] = [
  ['a change', (of) => addJar(of, 'z')],
  ['an attachment', (of) => of.attachments.put(Buffer.from('a photo'))],
  ['a backup', (of) => of.backUp()],
  ['a return to a backup', (of) => of.restore('2026-03-01T09-00-00-000Z change 1 daily.sqlite')],
  ['another state', (of) => of.takeState(new Uint8Array(512), of.sequence, 'merge')],
];
const READINGS: Asked[] = [
  ['rows', (of) => of.all('SELECT 1')],
  ['a row', (of) => of.get('SELECT 1')],
  ['a look at the disk', (of) => of.checkOutside()],
  ['a copy', (of) => of.saveCopyAs(newFolder())],
  ['to be kept aside', (of) => of.keepAside()],
  ['a snapshot', (of) => of.snapshot()],
];

/** The code that asking ends in; null where it is answered. */
async function codeOf(ask: () => unknown): Promise<ProblemCode | null> {
  try {
    await ask();
    return null;
  } catch (error) {
    return (error as { code: ProblemCode }).code;
  }
}

describe('a library that was closed', () => {
  it.each([...CHANGES, ...READINGS])(
    'is asked in vain for %s, and its folder stays as it was',
    async (_, ask) => {
      await library.close();
      const before = fingerprints(folder);
      expect(await codeOf(() => ask(library))).toBe('no-library');
      expect(fingerprints(folder)).toEqual(before);
    },
  );

  it('is closed once, however often it is told to be, and leaves no lock', async () => {
    await Promise.all([library.close(), library.close()]);
    await library.close();
    expect(existsSync(join(folder, 'library.lock'))).toBe(false);
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });
});

describe('a library that is open for reading', () => {
  it.each(CHANGES)('is asked in vain for %s, and nothing is written', async (_, ask) => {
    await library.close();
    const before = fingerprints(folder);
    const reader = await openLibrary(folder, sampleOptions({ readOnly: true }));
    expect(await codeOf(() => ask(reader))).toBe('library-read-only');
    // To fold what is not there is no fault.
    await reader.rewrite();
    await reader.close();
    expect(fingerprints(folder)).toEqual(before);
  });

  it.each(READINGS)('answers %s', async (_, ask) => {
    await library.close();
    const reader = await openLibrary(folder, sampleOptions({ readOnly: true }));
    expect(await codeOf(() => ask(reader))).toBeNull();
    await reader.close();
  });
});

describe('a state that is to take the place of the present one', () => {
  const withJar = async (
    bytes: Uint8Array,
    id: string,
    change: (other: Engine) => void = () => undefined,
  ) => {
    const other = await Engine.open(bytes);
    other.run('INSERT INTO jar (id, name) VALUES (?, ?)', id, 'merged');
    change(other);
    const made = other.exportBytes();
    other.close();
    return made;
  };

  it('stands from then on, is one change more, and what was there before is among the backups', async () => {
    const { bytes, sequence } = await library.snapshot();
    const made = await withJar(bytes, 'merged');
    const backup = await library.takeState(made, sequence, 'merge');
    expect(backup).toMatchObject({ reason: 'merge', sequence, good: true });
    expect([jarIds(library), library.sequence]).toEqual([['a', 'merged'], sequence + 1]);
    addJar(library, 'after');
    const seen = everything(library);
    await library.close();
    expect(await reopened(folder, everything)).toEqual(seen);
    await reopened(folder, () => undefined);
    library = await openLibrary(folder, sampleOptions());
    await library.restore(backup.name);
    expect(jarIds(library)).toEqual(['a']);
  });

  it('is refused where something was changed since it was begun, and all of that stands', async () => {
    const { bytes, sequence } = await library.snapshot();
    const made = await withJar(bytes, 'merged');
    addJar(library, 'b');
    await problemOf(() => library.takeState(made, sequence, 'import'), 'conflict');
    expect(jarIds(library)).toEqual(['a', 'b']);
    addJar(library, 'c');
  });

  it.each<[string, ProblemCode, (bytes: Uint8Array) => Promise<Uint8Array> | Uint8Array]>([
    [
      'of another library',
      'library-not-one',
      (bytes) =>
        withJar(bytes, 'x', (other) =>
          other.run('UPDATE library_meta SET id = ?', '0195c7a0-0000-7000-8000-000000000009'),
        ),
    ],
    ['that is cut short', 'library-damaged', (bytes) => bytes.slice(0, bytes.length - 512)],
    ['that is no library', 'library-not-one', () => new TextEncoder().encode('a letter'.repeat(200))],
    ['that is nothing', 'library-damaged', () => new Uint8Array()],
    [
      'whose records name what is gone',
      'library-damaged',
      (bytes) =>
        withJar(bytes, 'x', (other) => {
          other.script('PRAGMA foreign_keys = OFF');
          other.run('INSERT INTO label (id, jar_id, text) VALUES (1, ?, ?)', 'nowhere', 'lost');
        }),
    ],
  ])('is refused where it is one %s, and the library goes on', async (_, code, make) => {
    const { bytes, sequence } = await library.snapshot();
    const made = await make(bytes);
    await problemOf(() => library.takeState(made, sequence, 'merge'), code);
    addJar(library, 'b');
    expect(jarIds(library)).toEqual(['a', 'b']);
    await library.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b']);
  });
});

describe('a copy of a library', () => {
  it('is one of its own: another id, all changes and attachments, and neither knows of the other’s further changes', async () => {
    const photo = await library.attachments.put(Buffer.from('a photo'));
    const target = newFolder();
    await library.saveCopyAs(target);
    addJar(library, 'here only');
    const seen = await reopened(target, (copy) => {
      addJar(copy, 'there only');
      return { id: copy.id, jars: jarIds(copy), status: copy.status() };
    });
    expect(seen.id).not.toBe(library.id);
    expect(seen.jars).toEqual(['a', 'there only']);
    expect(seen.status).toMatchObject({ readOnly: false, changedOutside: false, notes: [] });
    expect(readFileSync(join(target, 'attachments', photo.slice(0, 2), photo), 'utf8')).toBe('a photo');
    expect(jarIds(library)).toEqual(['a', 'here only']);
  });

  it.each(['library.sqlite', 'library.log'])(
    'is never put over another: a folder with a %s is refused as it is',
    async (name) => {
      const target = newFolder();
      mkdirSync(target);
      writeFileSync(join(target, name), 'somebody’s');
      await problemOf(() => library.saveCopyAs(target), 'conflict');
      const { bytes } = await library.snapshot();
      await problemOf(() => library.saveStateAs(bytes, target), 'conflict');
      expect(readdirSync(target)).toEqual([name]);
      expect(readFileSync(join(target, name), 'utf8')).toBe('somebody’s');
    },
  );

  it('of another state holds that, and not what is here', async () => {
    const { bytes } = await library.snapshot();
    addJar(library, 'later');
    const target = newFolder();
    await library.saveStateAs(bytes, target);
    expect(await reopened(target, jarIds)).toEqual(['a']);
  });
});

describe('what a library says of itself', () => {
  it('counts what the file does not hold yet, and the rewrites', async () => {
    const first = library.status();
    addJar(library, 'b');
    addJar(library, 'c');
    expect(library.status()).toMatchObject({
      sequence: 3,
      unfolded: first.unfolded + 2,
      readOnly: false,
      unsaved: false,
    });
    await library.rewrite();
    const after = library.status();
    expect(after).toMatchObject({ unfolded: 0, revision: first.revision + 1, rewriting: false });
    expect(after.logBytes).toBeLessThan(first.logBytes);
    await library.rewrite();
    expect(library.status().revision).toBe(after.revision);
  });
});
