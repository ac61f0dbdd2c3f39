import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import type { LibraryMemory, Remembered } from '@db/library/opening/remembered';
import { addJar, createSample, fingerprints, newFolder, sampleOptions } from './sample-library';

/** What a computer remembers, as the host keeps it in a folder of its own. */
function memoryOfComputer(): LibraryMemory {
  const kept = new Map<string, Remembered>();
  return { recall: (folder) => kept.get(folder), remember: (folder, state) => void kept.set(folder, state) };
}

const FILES = ['library.sqlite', 'library.log'];

let folder: string;
let memory: LibraryMemory;

beforeEach(async () => {
  folder = newFolder();
  memory = memoryOfComputer();
  const library = await createSample(folder, { memory });
  for (const id of ['a', 'b', 'c']) addJar(library, id);
  await library.close();
});

const open = (): Promise<OpenLibrary> => openLibrary(folder, sampleOptions({ memory }));
const told = (library: OpenLibrary): string[] => library.status().notes.map(({ message }) => message);
const kept = () => FILES.map((name) => readFileSync(join(folder, name)));
const putBack = (files: Buffer[]) =>
  FILES.forEach((name, index) => writeFileSync(join(folder, name), files[index] ?? ''));

async function edit(...ids: string[]): Promise<void> {
  const library = await open();
  for (const id of ids) addJar(library, id);
  await library.close();
}

describe('a library whose files were replaced as a whole while it was closed', () => {
  it('by older ones is opened, and says which changes are not in it any more', async () => {
    const older = kept();
    await edit('d', 'e');
    putBack(older);
    const library = await open();
    expect(told(library)).toEqual([
      expect.stringContaining('Changes 4 to 5 are not in this library any more'),
    ]);
    await library.close();
    const again = await open();
    expect(told(again)).toEqual([]);
    await again.close();
  });

  it('by those of another computer is told, where the last change made here is another one', async () => {
    const before = kept();
    await edit('here');
    putBack(before);
    const elsewhere = await openLibrary(folder, sampleOptions());
    for (const id of ['there', 'there too']) addJar(elsewhere, id);
    // As a synchronising program finds the files while that computer works.
    const theirs = kept();
    await elsewhere.close();
    putBack(theirs);
    const library = await open();
    expect(told(library)).toEqual([expect.stringContaining('change 4 is another one')]);
    await library.close();
  });

  it('by some whose log does not reach back to what was left here is told to have been changed elsewhere', async () => {
    const elsewhere = await openLibrary(folder, sampleOptions());
    addJar(elsewhere, 'there');
    await elsewhere.rewrite();
    addJar(elsewhere, 'there too');
    await elsewhere.close();
    const library = await open();
    expect(told(library)).toEqual([expect.stringContaining('changed elsewhere since')]);
    await library.close();
  });

  it('by its own after a crash, however often it was folded, is no matter for a word', async () => {
    const library = await open();
    for (const id of ['d', 'e']) {
      addJar(library, id);
      await library.rewrite();
    }
    addJar(library, 'f');
    const crashed = kept();
    const remembered = memory.recall(folder);
    await library.close();
    if (remembered) memory.remember(folder, remembered);
    putBack(crashed);
    const again = await open();
    expect(told(again)).toEqual([]);
    await again.close();
  });

  it('by newer ones that show to go on from here is no matter for a word', async () => {
    const elsewhere = await openLibrary(folder, sampleOptions());
    addJar(elsewhere, 'there');
    const theirs = kept();
    await elsewhere.close();
    putBack(theirs);
    const library = await open();
    expect(told(library)).toEqual([]);
    await library.close();
  });
});

describe('a library whose opener was stopped', () => {
  it('and whose log was replaced by another that goes as far, is told', async () => {
    const library = await open();
    const before = kept();
    addJar(library, 'here');
    const lock = JSON.parse(readFileSync(join(folder, 'library.lock'), 'utf8')) as object;
    await library.close();
    putBack(before);
    const elsewhere = await openLibrary(folder, sampleOptions());
    addJar(elsewhere, 'there');
    const theirs = kept();
    await elsewhere.close();
    putBack(theirs);
    writeFileSync(join(folder, 'library.lock'), JSON.stringify({ ...lock, pid: 999_999_999 }));
    const again = await openLibrary(folder, sampleOptions());
    expect(told(again)).toEqual([expect.stringContaining('change 4 is another one')]);
    await again.close();
  });
});

describe('a copy that a synchronising program left beside the library', () => {
  it.each(FILES)('is told where it holds what the library has not, and is left alone: %s', async (name) => {
    const before = kept();
    const library = await open();
    addJar(library, 'only in the copy');
    if (name === 'library.sqlite') await library.rewrite();
    const copy = join(folder, name.replace('.', ' (conflict of another computer).'));
    copyFileSync(join(folder, name), copy);
    await library.close();
    putBack(before);
    const bytes = readFileSync(copy);
    const again = await openLibrary(folder, sampleOptions());
    expect(told(again)).toEqual([expect.stringContaining(' (conflict of another computer).')]);
    await again.close();
    expect(readFileSync(copy).equals(bytes)).toBe(true);
  });

  it('is not told where all of it is in the library, nor any other file', async () => {
    for (const name of FILES) copyFileSync(join(folder, name), join(folder, `old ${name}`));
    writeFileSync(join(folder, 'notes.txt'), 'stillroom-log of nothing');
    const library = await open();
    addJar(library, 'd');
    expect(told(library)).toEqual([]);
    await library.close();
    expect(Object.keys(fingerprints(folder))).toEqual(expect.arrayContaining(['notes.txt']));
  });
});
