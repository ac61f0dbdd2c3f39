import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { nodeFileSystem, type FileSystem } from '@db/library/file/file-system';
import { writeWholeFile } from '@db/library/file/whole-file';
import { diskError, FaultyFileSystem } from './faulty-file-system';

let folder: string;
let target: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillroom-whole-'));
  target = join(folder, 'file');
  writeFileSync(target, 'old', { mode: 0o640 });
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A disk on which someone holds the target for the first `times` renames. */
function held(times: number, code: string): { fs: FileSystem; waited: number[] } {
  const waited: number[] = [];
  let left = times;
  const fs: FileSystem = {
    ...nodeFileSystem,
    pause: async (ms) => void waited.push(ms),
    rename: async (from, to) => {
      left -= 1;
      if (left >= 0) throw diskError(code);
      await nodeFileSystem.rename(from, to);
    },
  };
  return { fs, waited };
}

describe('writing a whole file', () => {
  it.each(['EPERM', 'EACCES', 'EBUSY'])(
    'waits on Windows while another program holds it (%s)',
    async (code) => {
      const { fs, waited } = held(7, code);
      await writeWholeFile(fs, target, Buffer.from('new'), { platform: 'win32' });
      expect(readFileSync(target, 'utf8')).toBe('new');
      expect(waited).toEqual([20, 40, 80, 160, 320, 500, 500]);
    },
  );

  it('gives up on Windows after fifteen seconds, the old file in place', async () => {
    const { fs, waited } = held(Infinity, 'EPERM');
    await expect(writeWholeFile(fs, target, Buffer.from('new'), { platform: 'win32' })).rejects.toThrow(
      'EPERM',
    );
    const total = waited.reduce((sum, ms) => sum + ms, 0);
    expect(total).toBeGreaterThanOrEqual(15_000);
    expect(total).toBeLessThan(16_000);
    expect(readFileSync(target, 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(['file']);
  });

  it('fails at once elsewhere, and for any other error', async () => {
    for (const [code, platform] of [
      ['EPERM', 'linux'],
      ['ENOSPC', 'win32'],
    ] as const) {
      const { fs, waited } = held(1, code);
      await expect(writeWholeFile(fs, target, Buffer.from('new'), { platform })).rejects.toThrow(code);
      expect(waited).toEqual([]);
    }
  });

  it('says so when the folder could not be flushed: the file is in place all the same', async () => {
    const disk = new FaultyFileSystem();
    disk.arm(9, 'EIO');
    const written = await writeWholeFile(disk.fs, target, Buffer.from('new'), { platform: 'linux' });
    expect(disk.calls.slice(6, 9)).toEqual(['stat', 'rename', 'open']);
    expect(written.durable).toBe(false);
    expect(readFileSync(target, 'utf8')).toBe('new');
  });

  it('keeps the file’s mode', async () => {
    await writeWholeFile(nodeFileSystem, target, Buffer.from('new'));
    expect(statSync(target).mode & 0o777).toBe(0o640);
  });

  it('replaces what a link points at, not the link', async () => {
    mkdirSync(join(folder, 'links'));
    const link = join(folder, 'links', 'link');
    symlinkSync(target, link);
    await writeWholeFile(nodeFileSystem, link, Buffer.from('new'));
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(target, 'utf8')).toBe('new');
  });
});
