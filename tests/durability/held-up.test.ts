import { beforeEach, describe, expect, it } from 'vitest';
import type { FileSystem } from '@db/library/file/file-system';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import {
  addJar,
  createSample,
  jarIds,
  newFolder,
  quickDisk,
  reopened,
  sampleOptions,
} from './sample-library';

/** The name as the process that never ends, number 1, would have given it: another process, and alive. */
const ofAnother = (path: string): string => path.replace(`.${process.pid}-`, '.1-');

/** A disk whose next renaming onto the library file waits until it is let go, as in a process that was suspended. */
function heldUp(): { fs: FileSystem; atRename: Promise<void>; letGo: () => void; hold: () => void } {
  const disk = quickDisk();
  let isHeld = false;
  let letGo = (): void => undefined;
  let arrived = (): void => undefined;
  const going = new Promise<void>((done) => (letGo = done));
  const atRename = new Promise<void>((done) => (arrived = done));
  const fs: FileSystem = {
    ...disk,
    open: (path, flags, mode) => disk.open(ofAnother(path), flags, mode),
    stat: (path) => disk.stat(ofAnother(path)),
    unlink: (path) => disk.unlink(ofAnother(path)),
    rename: async (from, to) => {
      if (isHeld && to.endsWith('library.sqlite')) {
        arrived();
        await going;
      }
      return disk.rename(ofAnother(from), to);
    },
  };
  return { fs, atRename, letGo, hold: () => (isHeld = true) };
}

let folder: string;
let owner: OpenLibrary;
let held: ReturnType<typeof heldUp>;

beforeEach(async () => {
  folder = newFolder();
  held = heldUp();
  owner = await createSample(folder, { fileSystem: held.fs });
  addJar(owner, 'by the owner');
});

/** Another takes over while the owner hangs; then the owner goes on. */
async function takeOverMeanwhile(pending: Promise<unknown>, closes: boolean): Promise<void> {
  await held.atRename;
  const taker = await openLibrary(folder, sampleOptions({ takeOver: true }));
  addJar(taker, 'by the taker');
  await taker.rewrite();
  addJar(taker, 'after its fold');
  if (closes) await taker.close();
  held.letGo();
  await pending;
  if (!closes) {
    addJar(taker, 'at last');
    await taker.close();
  }
  await owner.close();
  const ids = await reopened(folder, jarIds);
  expect(ids).toEqual(expect.arrayContaining(['by the owner', 'by the taker', 'after its fold']));
  if (!closes) expect(ids).toContain('at last');
}

describe.each([true, false])('a process suspended just before it replaces the library file', (closes) => {
  it(`does not put its own over that of whoever took over and ${closes ? 'closed' : 'goes on'}: folding`, async () => {
    held.hold();
    const folding = owner.rewrite().catch(() => undefined);
    await takeOverMeanwhile(folding, closes);
  });

  it(`does not put its own over that of whoever took over and ${closes ? 'closed' : 'goes on'}: going back to a backup`, async () => {
    const backup = await owner.backUp();
    held.hold();
    const restoring = owner.restore(backup.name).catch(() => undefined);
    await takeOverMeanwhile(restoring, closes);
  });
});
