import { expect, it } from 'vitest';
import { openLibrary } from '@db/library/open-library';
import { FaultyFileSystem } from './faulty-file-system';
import {
  addJar,
  createSample,
  jarIds,
  newFolder,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

// What a maker is told when the disk refuses: what is in the way, what to do, and what is safe.

it.each([
  ['ENOSPC', 'disk-full', 'the disk is full', 'Free some space'],
  ['EDQUOT', 'disk-full', 'your share of the disk is used up', 'Delete files of yours'],
  ['EROFS', 'library-read-only', 'does not allow writing', 'may be written to'],
  ['EIO', 'disk-error', 'the disk reported an error', 'save a copy on another disk'],
  ['EBUSY', 'disk-error', 'another program is holding the file', 'Wait until'],
] as const)(
  '%s is told in words, for a change, a backup and an attachment',
  async (errno, code, why, advice) => {
    const folder = newFolder();
    const disk = new FaultyFileSystem();
    const library = await createSample(folder, { fileSystem: disk.fs });
    addJar(library, 'a');
    for (const [doing, work] of [
      ['save the change', () => addJar(library, 'b')],
      ['write the library file', () => library.backUp()],
      ['keep the file', () => library.attachments.put(new Uint8Array([1, 2, 3]))],
    ] as const) {
      disk.armForGood(1, errno);
      const problem = await problemOf(work, code);
      disk.disarm();
      expect(problem.message, doing).toContain(why);
      expect(problem.advice, doing).toContain(advice);
      expect(problem.advice, doing).toContain('Everything saved before is safe.');
    }
    addJar(library, 'c');
    await library.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'c']);
  },
);

it.each(['ENOSPC', 'EDQUOT', 'EROFS', 'EACCES'])(
  'a disk that answers %s from the start is read, and says why',
  async (errno) => {
    const folder = newFolder();
    await (await createSample(folder)).close();
    const disk = new FaultyFileSystem();
    const { fs } = disk;
    const refusing = new Proxy(fs, {
      get: (target, name: keyof typeof fs) =>
        ['openSync', 'linkSync', 'renameSync', 'writeSync', 'unlinkSync'].includes(name)
          ? () => {
              throw Object.assign(new Error(errno), { code: errno });
            }
          : target[name],
    });
    const library = await openLibrary(folder, sampleOptions({ fileSystem: refusing }));
    expect(library.readOnly).toBe(true);
    expect(library.status().readOnlyBecause?.message).toMatch(/the disk (is full|does not allow)|used up/);
    await library.close();
  },
);
