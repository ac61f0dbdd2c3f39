import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { FileSystem } from '@db/library/file/file-system';
import { openLibrary } from '@db/library/open-library';
import {
  addJar,
  createSample,
  everything,
  newFolder,
  quickDisk,
  reopened,
  sampleOptions,
} from './sample-library';

/** A disk that keeps a copy of the folder as it stands before every call, as a process that ends there leaves it. */
function watchedDisk(folder: () => string) {
  const base = mkdtempSync(join(tmpdir(), 'stillroom-steps-'));
  const copies: { call: string; folder: string }[] = [];
  let watching = false;
  const keep = (call: string): void => {
    if (!watching) return;
    const copy = join(base, String(copies.length), 'library');
    cpSync(folder(), copy, { recursive: true });
    copies.push({ call, folder: copy });
  };
  const disk = quickDisk();
  const fs = new Proxy(disk, {
    get: (target, name: keyof FileSystem) => {
      const call = target[name] as (...given: unknown[]) => unknown;
      if (name !== 'open')
        return (...given: unknown[]) => {
          keep(name);
          return call(...given);
        };
      return async (...given: Parameters<FileSystem['open']>) => {
        keep(name);
        const handle = await target.open(...given);
        return {
          write: (...piece: Parameters<typeof handle.write>) => (keep('write'), handle.write(...piece)),
          sync: () => (keep('sync'), handle.sync()),
          close: () => (keep('close'), handle.close()),
        };
      };
    },
  });
  return {
    fs,
    copies,
    watch: (on: boolean) => void (watching = on),
    discard: () => rmSync(base, { recursive: true, force: true }),
  };
}

describe('a fold that ends at any of its steps', () => {
  it('leaves a library that opens with every change, takes another, and can be folded', async () => {
    const folder = newFolder();
    const disk = watchedDisk(() => folder);
    const library = await createSample(folder, { fileSystem: disk.fs });
    for (const id of ['a', 'b', 'c']) addJar(library, id);
    const state = everything(library);
    disk.watch(true);
    await library.rewrite();
    disk.watch(false);
    await library.close();

    expect(new Set(disk.copies.map(({ call }) => call))).toContain('rename');
    expect(disk.copies.length).toBeGreaterThan(20);
    for (const { call, folder: left } of disk.copies) {
      // The process that held it is this one, which is still there: its maker would say so.
      const again = await openLibrary(left, { ...sampleOptions(), takeOver: true });
      expect(everything(again), `ended before ${call}`).toEqual(state);
      expect(again.status().notes, `ended before ${call}`).toEqual([]);
      addJar(again, 'after');
      await again.rewrite();
      const after = everything(again);
      await again.close();
      expect(await reopened(left, everything), `ended before ${call}`).toEqual(after);
    }
    disk.discard();
  }, 60_000);
});

describe('a clock that jumps back', () => {
  it('between two edits, a fold and an opening loses nothing and keeps nothing from being written', async () => {
    const folder = newFolder();
    let time = Date.parse('2026-06-01T10:00:00.000Z');
    const now = () => new Date(time);
    const options = { ...sampleOptions(), now };
    const library = await createSample(folder, options);
    addJar(library, 'a');
    time = Date.parse('2024-02-29T23:59:59.000Z');
    addJar(library, 'b');
    await library.rewrite();
    time = Date.parse('2026-06-01T10:00:01.000Z');
    addJar(library, 'c');
    time = Date.parse('1999-12-31T00:00:00.000Z');
    addJar(library, 'd');
    const state = everything(library);
    await library.close();

    const again = await openLibrary(folder, options);
    expect(everything(again)).toEqual(state);
    expect(again.status()).toMatchObject({ readOnly: false, notes: [], changedOutside: false });
    addJar(again, 'e');
    await again.rewrite();
    // Each day by its own clock has its backup, the earlier one not being taken for the newer.
    const made = (await again.listBackups()).map(({ madeAt }) => madeAt.slice(0, 4));
    expect(made).toEqual(['2024', '1999']);
    await again.close();
    expect(await reopened(folder, (one) => one.sequence)).toBe(5);
  });
});
