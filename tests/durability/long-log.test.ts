import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { Problem } from '@core/problems/problem';
import type { FileSystem } from '@db/library/file/file-system';
import { chainAfter, decodeLog, encodeRecord } from '@db/library/log/log-format';
import { LONGEST_READ, LONGEST_RECORD } from '@db/library/log/log-limits';
import { openLibrary } from '@db/library/open-library';
import { createInlineRewriter, type Rewriter } from '@db/library/folding/rewrite';
import {
  addJar,
  closedSample,
  createSample,
  fingerprints,
  jarIds,
  newFolder,
  problemOf,
  quickDisk,
  reopened,
  sampleOptions,
} from './sample-library';

// A log is folded long before it is long, unless the library file cannot be written all the while.

const numbered = (count: number) => Array.from({ length: count }, (_, at) => String(at + 1).padStart(6, '0'));

/** Writes the library file only once it is let. */
function heldRewriter(): { rewriter: Rewriter; let: () => void } {
  const real = createInlineRewriter(quickDisk());
  let isLet = false;
  const rewriter: Rewriter = (job, announce) => {
    if (isLet) return real(job, announce);
    throw new Problem({ code: 'disk-full', title: 'The disk is full.', advice: 'Free some space.' });
  };
  return { rewriter, let: () => (isLet = true) };
}

describe('a log that cannot be folded', () => {
  it('takes no more changes once it is full, says why, and takes them again when it was folded', async () => {
    const folder = newFolder();
    const held = heldRewriter();
    const library = await createSample(folder, { longestLogBytes: 4_000, rewriter: held.rewriter });
    const kept: string[] = [];
    const refused = await problemOf(() => {
      for (const id of numbered(100)) {
        addJar(library, id);
        kept.push(id);
      }
    }, 'disk-error');
    expect(refused.message).toContain('change log of this library is full');
    expect(refused.advice).toContain('Everything saved before is safe');
    expect(kept.length).toBeGreaterThan(5);
    expect(library.status().logBytes).toBeLessThanOrEqual(4_000);
    expect(jarIds(library)).toEqual(kept);

    held.let();
    await library.rewrite();
    addJar(library, 'after');
    await library.close();
    expect(await reopened(folder, jarIds)).toEqual([...kept, 'after']);
  });

  it('is full for what is too long for the rest of it, and takes what is not', async () => {
    const library = await createSample(newFolder(), { longestLogBytes: 4_000 });
    await problemOf(() => addJar(library, 'x'.repeat(4_000)), 'disk-error');
    addJar(library, 'short');
    expect(jarIds(library)).toEqual(['short']);
    await library.close();
  });

  it('is opened however much longer than it takes now', async () => {
    const folder = newFolder();
    const library = await createSample(folder, { rewriter: heldRewriter().rewriter });
    for (const id of numbered(60)) addJar(library, id);
    await library.close();
    const again = await openLibrary(folder, sampleOptions({ longestLogBytes: 4_000 }));
    expect(again.status().opening.replayed).toBe(60);
    await problemOf(() => addJar(again, 'more'), 'disk-error');
    await again.rewrite();
    addJar(again, 'more');
    await again.close();
    expect(await reopened(folder, jarIds)).toEqual([...numbered(60), 'more']);
  });
});

describe('a long log', () => {
  it('is repeated in pieces: other work goes on meanwhile, and is told how far it is', async () => {
    const folder = newFolder();
    const library = await createSample(folder, { rewriter: heldRewriter().rewriter });
    for (const id of numbered(4_000)) addJar(library, id);
    await library.close();
    const [file, log] = ['library.sqlite', 'library.log'].map((name) => statSync(join(folder, name)).size);
    const told: [number, number][] = [];
    let others = 0;
    const work = setInterval(() => (others += 1), 0);
    // A clock of the test's own: on a quick machine all of it may take less than the time of one piece.
    let clock = 0;
    const now = vi.spyOn(performance, 'now').mockImplementation(() => (clock += 1));
    const again = await openLibrary(
      folder,
      sampleOptions({ onReading: (done, of) => told.push([done, of]) }),
    );
    now.mockRestore();
    clearInterval(work);
    expect(again.status().opening.replayed).toBe(4_000);
    expect(jarIds(again)).toEqual(numbered(4_000));
    expect(told.length).toBeGreaterThan(0);
    expect(others).toBeGreaterThan(0);
    for (const [done, of] of told) {
      expect(of).toBe((file ?? 0) + (log ?? 0));
      expect(done).toBeGreaterThan(file ?? 0);
      expect(done).toBeLessThanOrEqual(of);
    }
    expect(told.map(([done]) => done)).toEqual(told.map(([done]) => done).sort((a, b) => a - b));
    await again.close();
  });

  it('longer than can be read at all is refused in words, and is left as it is', async () => {
    const folder = newFolder();
    await closedSample(folder, 'a');
    const before = fingerprints(folder);
    const disk = quickDisk();
    const fileSystem: FileSystem = {
      ...disk,
      statSync: (path) => ({
        ...disk.statSync(path),
        ...(path.endsWith('library.log') && { size: LONGEST_READ + 1 }),
      }),
    };
    const refused = await problemOf(() => openLibrary(folder, sampleOptions({ fileSystem })), 'disk-error');
    expect(refused.message).toContain('longer than can be read');
    expect(fingerprints(folder)).toEqual(before);
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });

  it('that ends in one endless line is told as damaged, quickly, and offers what holds', async () => {
    const folder = newFolder();
    const library = await createSample(folder, { rewriter: heldRewriter().rewriter });
    for (const id of numbered(3)) addJar(library, id);
    await library.close();
    const log = readFileSync(join(folder, 'library.log'));
    const whole = log.subarray(0, log.indexOf(0));
    const record = '900000000 0123456789abcdef0123456789abcdef {';
    for (const start of ['7', record]) {
      const tail = Buffer.alloc(LONGEST_RECORD + 1024, start === record ? 'y' : start);
      const bytes = Buffer.concat([whole, Buffer.from(start), tail, Buffer.alloc(512)]);
      expect(() => decodeLog(bytes), start).toThrow(/change 4 was written in full and is broken/);
    }
  });
});

it('one change too large for any text is refused before it is written', () => {
  const start = { sequence: 4, chain: chainAfter('', 'lib-1') };
  const write = () => encodeRecord(start, '2026-01-31T10:20:30.000Z', [['x', 'y'.repeat(LONGEST_RECORD)]]);
  expect(write).toThrow(/too large to be saved at once/);
});
