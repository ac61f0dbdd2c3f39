import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeFileSystem } from '@db/library/file/file-system';
import { createInlineRewriter, type Rewriter } from '@db/library/folding/rewrite';
import { createWorkerRewriter } from '@db/library/folding/worker-rewriter';
import {
  addJar,
  createSample,
  everything,
  jarIds,
  newFolder,
  problemOf,
  quickDisk,
  reopened,
} from './sample-library';

/** Counts rewrites, and how many ran at once. */
function counting(): { rewriter: Rewriter; count: () => { all: number; atOnce: number } } {
  const inline = createInlineRewriter(quickDisk());
  let all = 0;
  let running = 0;
  let atOnce = 0;
  return {
    count: () => ({ all, atOnce }),
    rewriter: async (job, announce) => {
      all += 1;
      running += 1;
      atOnce = Math.max(atOnce, running);
      try {
        return await inline(job, announce);
      } finally {
        running -= 1;
      }
    },
  };
}

describe('rewriting the library file', () => {
  it('asked for a hundred times runs one at a time, twice in all, and loses nothing', async () => {
    const folder = newFolder();
    const { rewriter, count } = counting();
    const library = await createSample(folder, { rewriter });
    const asked: Promise<void>[] = [];
    for (let n = 0; n < 100; n += 1) {
      addJar(library, `${n}`);
      asked.push(library.rewrite());
      if (n === 10) await Promise.resolve();
    }
    await Promise.all(asked);
    expect(count().atOnce).toBe(1);
    expect(count().all).toBeLessThanOrEqual(2);
    expect(library.status().unfolded).toBe(0);
    await library.close();
    expect(await reopened(folder, jarIds)).toHaveLength(100);
  });

  it('keeps changes made while it runs, before and after the file is read', async () => {
    const folder = newFolder();
    const inline = createInlineRewriter(quickDisk());
    let during: () => void = () => undefined;
    const rewriter: Rewriter = async (job, announce) => {
      during();
      const result = await inline(job, announce);
      during();
      return result;
    };
    const library = await createSample(folder, { rewriter });
    for (let round = 0; round < 3; round += 1) {
      let n = 0;
      during = () => addJar(library, `during ${round} ${(n += 1)}`);
      addJar(library, `before ${round}`);
      await library.rewrite();
      expect(library.status().unfolded).toBe(2);
    }
    const state = everything(library);
    expect(await reopened(folder, everything, { readOnly: true })).toEqual(state);
    during = () => undefined;
    await library.close();
    expect(await reopened(folder, everything)).toEqual(state);
  });

  it('without a change writes nothing', async () => {
    const { rewriter, count } = counting();
    const library = await createSample(newFolder(), { rewriter });
    addJar(library, 'a');
    await library.rewrite();
    await library.rewrite();
    await library.close();
    expect(count().all).toBe(1);
  });

  it('follows in a pause once the log is long, at once when it is twice that, and not before', async () => {
    const short = await createSample(newFolder(), { rewriteAfterIdleMs: 1 });
    addJar(short, 'a');
    await new Promise((done) => setTimeout(done, 50));
    expect(short.status().unfolded).toBe(1);
    await short.close();
    const idle = await createSample(newFolder(), { rewriteAfterIdleMs: 1, rewriteAfterLogBytes: 300 });
    addJar(idle, 'a');
    await expect.poll(() => idle.status().unfolded).toBe(0);
    await idle.close();
    const long = await createSample(newFolder(), { rewriteAfterLogBytes: 10 });
    addJar(long, 'a');
    await expect.poll(() => long.status().unfolded).toBe(0);
    await long.close();
  });

  it('leaves a file that the sqlite3 program reads', async ({ skip }) => {
    if (spawnSync('sqlite3', ['-version']).error) return skip('!! the sqlite3 program is not installed !!');
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'a');
    await library.close();
    const found = execFileSync('sqlite3', [
      join(folder, 'library.sqlite'),
      'PRAGMA integrity_check; SELECT id FROM jar',
    ]);
    expect(found.toString()).toBe('ok\na\n');
  });
});

describe('rewriting in a worker thread', () => {
  const cache = resolve(import.meta.dirname, '../../node_modules/.cache');
  let out = '';
  let rewriter: Rewriter;

  beforeAll(async () => {
    const root = resolve(import.meta.dirname, '../..');
    mkdirSync(cache, { recursive: true });
    out = mkdtempSync(join(cache, 'rewrite-worker-'));
    await build({
      root,
      configFile: false,
      logLevel: 'error',
      resolve: { alias: { '@core': join(root, 'shared-core'), '@db': join(root, 'db') } },
      build: {
        ssr: join(root, 'db/library/folding/rewrite-worker.ts'),
        outDir: out,
        emptyOutDir: true,
        rollupOptions: { output: { format: 'es', entryFileNames: 'rewrite-worker.js' } },
      },
    });
    rewriter = createWorkerRewriter(pathToFileURL(join(out, 'rewrite-worker.js')));
  });

  afterAll(() => rmSync(out, { recursive: true, force: true }));

  it('does the same as here, backup included', async () => {
    const folder = newFolder();
    const library = await createSample(folder, { rewriter, fileSystem: nodeFileSystem });
    addJar(library, 'a');
    const rewriting = library.rewrite();
    addJar(library, 'b');
    await rewriting;
    expect((await library.listBackups()).map((backup) => backup.reason)).toEqual(['daily']);
    const state = everything(library);
    await library.close();
    expect(await reopened(folder, everything)).toEqual(state);
  });

  it('brings problems back as problems', async () => {
    const folder = newFolder();
    const library = await createSample(folder, { rewriter, fileSystem: nodeFileSystem });
    addJar(library, 'a');
    rmSync(join(folder, 'library.sqlite'));
    await problemOf(() => library.rewrite(), 'disk-error');
    await library.close();
  });
});
