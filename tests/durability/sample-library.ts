import { createHash, randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';
import { Problem, type ProblemCode } from '@core/problems/problem';
import type { Reader } from '@db/database';
import type { FileSystem } from '@db/library/file/file-system';
import { createLibrary, openLibrary, type LibraryOptions, type OpenLibrary } from '@db/library/open-library';
import type { Migration } from '@db/migrations/runner';
import { FaultyFileSystem } from './faulty-file-system';

export const SAMPLE_MIGRATIONS: Migration[] = [
  {
    number: 1,
    name: 'jars and labels',
    sql: `
      CREATE TABLE jar (id TEXT PRIMARY KEY, name TEXT NOT NULL, grams REAL) STRICT;
      CREATE TABLE label (id INTEGER PRIMARY KEY, jar_id TEXT NOT NULL REFERENCES jar(id), text TEXT NOT NULL UNIQUE) STRICT;`,
  },
];

const bases: string[] = [];

afterAll(() => {
  for (const base of bases.splice(0)) rmSync(base, { recursive: true, force: true });
});

/** A folder of its own that does not exist yet. */
export function newFolder(): string {
  const base = mkdtempSync(join(tmpdir(), 'stillroom-durability-'));
  bases.push(base);
  return join(base, 'library');
}

/** A library's folder, and where its file and its log are; nothing is there yet. */
export function newPlaces(): { folder: string; file: string; log: string } {
  const folder = newFolder();
  return { folder, file: join(folder, 'library.sqlite'), log: join(folder, 'library.log') };
}

/** A disk that is real except that nothing waits for its flushes. */
export function quickDisk(): FileSystem {
  return new FaultyFileSystem().fs;
}

export function sampleOptions(over: Partial<LibraryOptions> = {}): LibraryOptions {
  return {
    migrations: SAMPLE_MIGRATIONS,
    now: () => new Date(),
    makeId: () => randomUUID(),
    fileSystem: quickDisk(),
    rewriteAfterIdleMs: 3_600_000,
    ...over,
  };
}

export async function createSample(
  folder = newFolder(),
  over: Partial<LibraryOptions> = {},
): Promise<OpenLibrary> {
  return createLibrary(folder, sampleOptions(over));
}

/** Makes a library that holds these jars, and closes it: all is in its file. */
export async function closedSample(folder: string, ...jars: string[]): Promise<void> {
  const library = await createSample(folder);
  for (const jar of jars) addJar(library, jar);
  await library.close();
}

/** Opens, reads with `look`, closes. */
export async function reopened<T>(
  folder: string,
  look: (library: OpenLibrary) => T,
  over: Partial<LibraryOptions> = {},
) {
  const library = await openLibrary(folder, sampleOptions(over));
  try {
    return look(library);
  } finally {
    await library.close();
  }
}

export function addJar(library: OpenLibrary, id: string, grams: number | null = 1): void {
  library.transaction((tx) =>
    tx.run('INSERT INTO jar (id, name, grams) VALUES (?, ?, ?)', id, `jar ${id}`, grams),
  );
}

export function jarIds(library: Reader): string[] {
  return library.all<{ id: string }>('SELECT id FROM jar ORDER BY id').map((row) => row.id);
}

/** Everything a maker could see, for comparing two states. */
export function everything(library: Reader): unknown {
  return {
    jars: library.all('SELECT rowid AS at, * FROM jar ORDER BY rowid'),
    labels: library.all('SELECT * FROM label ORDER BY id'),
    meta: library.all('SELECT id, sequence, chain FROM library_meta'),
  };
}

/** SHA-256 of every file below a folder, to see that nothing was touched. */
export function fingerprints(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const path = join(folder, name);
    if (statSync(path).isFile()) found[name] = createHash('sha256').update(readFileSync(path)).digest('hex');
  }
  return found;
}

/** The Problem that `work` ends in; anything else fails the test. */
export async function problemOf(work: () => unknown, code: ProblemCode): Promise<Problem> {
  const error = await Promise.resolve()
    .then(work)
    .then(
      () => undefined,
      (cause: unknown) => cause,
    );
  expect(error).toBeInstanceOf(Problem);
  const problem = error as Problem;
  expect(problem.code).toBe(code);
  expect(problem.advice).not.toBe('');
  return problem;
}
