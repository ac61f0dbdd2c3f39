import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeFileSystem } from '@db/library/file/file-system';
import { openLibrary } from '@db/library/open-library';
import { createInlineReader } from '@db/library/opening/read-file';
import { createWorkerReader, type WorkerReader } from '@db/library/opening/worker-reader';
import {
  addJar,
  createSample,
  everything,
  jarIds,
  newFolder,
  problemOf,
  sampleOptions,
} from './sample-library';

const cache = resolve(import.meta.dirname, '../../node_modules/.cache');
const here = createInlineReader(nodeFileSystem);
let out = '';
let workerUrl: URL;
const startReader = (): WorkerReader => createWorkerReader(workerUrl);

beforeAll(async () => {
  const root = resolve(import.meta.dirname, '../..');
  mkdirSync(cache, { recursive: true });
  out = mkdtempSync(join(cache, 'reading-worker-'));
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: join(root, 'db/library/opening/reading-worker.ts'),
      outDir: out,
      emptyOutDir: true,
      rollupOptions: { output: { format: 'es', entryFileNames: 'reading-worker.js' } },
    },
  });
  workerUrl = pathToFileURL(join(out, 'reading-worker.js'));
});

afterAll(() => rmSync(out, { recursive: true, force: true }));

/** A folder that is there, and goes with the others. */
function newPlace(): string {
  const folder = newFolder();
  mkdirSync(folder, { recursive: true });
  return folder;
}

function fileOf(bytes: Uint8Array): string {
  const path = join(newPlace(), 'file');
  writeFileSync(path, bytes);
  return path;
}

const noise = (length: number): Uint8Array =>
  Uint8Array.from({ length }, (_, at) => (at * 2_654_435_761) >>> 24);

describe('a file read by a thread', () => {
  it.each([0, 1, 4096, 1024 * 1024 + 7, 33 * 1024 * 1024])(
    'is, with %i bytes, what reading it here gives',
    async (length) => {
      const path = fileOf(noise(length));
      const read = await startReader().read(path);
      const expected = await here(path);
      expect(read.identity).toEqual(expected.identity);
      expect(Buffer.compare(read.bytes, expected.bytes)).toBe(0);
    },
  );

  it('tells how far it is, to the end', async () => {
    const path = fileOf(noise(40 * 1024 * 1024));
    const told: [number, number][] = [];
    await startReader().read(path, (done, of) => told.push([done, of]));
    expect(told.length).toBeGreaterThan(1);
    expect(told.at(-1)).toEqual([40 * 1024 * 1024, 40 * 1024 * 1024]);
  });

  it('fails as reading it here fails', async () => {
    await expect(startReader().read(join(newPlace(), 'nothing'))).rejects.toMatchObject({ code: 'ENOENT' });
  });
});

describe('a file that was read ahead', () => {
  it.each([
    [
      'replaced',
      (path: string) => (writeFileSync(`${path}.new`, noise(9000)), renameSync(`${path}.new`, path)),
    ],
    ['written over', (path: string) => writeFileSync(path, noise(5000).fill(7))],
  ])('and %s before it is asked for is read anew', async (_how, change) => {
    const path = fileOf(noise(5000));
    const reader = startReader();
    reader.ahead(path);
    await new Promise((passed) => setTimeout(passed, 300));
    change(path);
    const { bytes, identity } = await reader.read(path);
    expect(Buffer.compare(bytes, readFileSync(path))).toBe(0);
    expect(identity).toEqual((await here(path)).identity);
  });

  it('is given once: the next reading is another one', async () => {
    const path = fileOf(noise(5000));
    const reader = startReader();
    reader.ahead(path);
    const first = await reader.read(path);
    first.bytes.fill(1);
    expect(Buffer.compare((await reader.read(path)).bytes, noise(5000))).toBe(0);
  });
});

describe('a library opened so', () => {
  it('is the same, grows past the memory it was read into, and is folded as it is', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'a');
    const state = everything(library);
    await library.close();

    const { read } = startReader();
    const again = await openLibrary(folder, { ...sampleOptions(), reader: read });
    expect(everything(again)).toEqual(state);
    for (let round = 0; round < 600; round++) addJar(again, `${round} ${'x'.repeat(10_000)}`);
    await again.rewrite();
    const grown = everything(again);
    await again.close();
    const last = await openLibrary(folder, { ...sampleOptions(), reader: read });
    expect(everything(last)).toEqual(grown);
    expect(jarIds(last)).toHaveLength(601);
    await last.close();
  });

  it('is refused as damaged where its file is', async () => {
    const folder = newFolder();
    await (await createSample(folder)).close();
    const file = join(folder, 'library.sqlite');
    writeFileSync(file, readFileSync(file).fill(1, 5000, 6000));
    const before = readFileSync(file);
    await problemOf(
      () => openLibrary(folder, { ...sampleOptions(), reader: startReader().read }),
      'library-damaged',
    );
    expect(Buffer.compare(readFileSync(file), before)).toBe(0);
  });
});
