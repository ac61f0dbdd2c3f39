import { readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Engine } from '@db/library/sql/engine';
import { openLibrary } from '@db/library/open-library';
import { migrate, type Migration } from '@db/migrations/runner';
import {
  addJar,
  createSample,
  jarIds,
  newFolder,
  problemOf,
  reopened,
  SAMPLE_MIGRATIONS,
  sampleOptions,
} from './sample-library';

const ADD_COLOUR: Migration = { number: 2, name: 'colour', sql: 'ALTER TABLE jar ADD COLUMN colour TEXT' };
const REBUILD: Migration = {
  number: 2,
  name: 'jar has a lid',
  rebuildsTables: true,
  sql: `CREATE TABLE jar_new (id TEXT PRIMARY KEY, name TEXT NOT NULL, grams REAL, lid INTEGER NOT NULL DEFAULT 0) STRICT;
    INSERT INTO jar_new (id, name, grams) SELECT id, name, grams FROM jar;
    DROP TABLE jar;
    ALTER TABLE jar_new RENAME TO jar;`,
};
const NOW = new Date('2026-01-01T00:00:00.000Z');

describe('migrating', () => {
  it('an older library replays its log first, is backed up, and comes out whole', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'in the log');
    library.transaction((tx) => tx.run("INSERT INTO label (jar_id, text) VALUES ('in the log', 'x')"));
    unlinkSync(join(folder, 'library.lock'));
    const newer = sampleOptions({ migrations: [...SAMPLE_MIGRATIONS, REBUILD] });
    const migrated = await openLibrary(folder, newer);
    expect(migrated.all('SELECT id, lid FROM jar')).toEqual([{ id: 'in the log', lid: 0 }]);
    expect((await migrated.listBackups()).map((backup) => backup.reason)).toEqual(['migration']);
    expect(() => migrated.transaction((tx) => tx.run("DELETE FROM jar WHERE id = 'in the log'"))).toThrow(
      /FOREIGN KEY/,
    );
    migrated.transaction((tx) => tx.run("INSERT INTO jar (id, name, lid) VALUES ('new', 'n', 1)"));
    await migrated.close();
    const again = await openLibrary(folder, newer);
    expect(again.all('SELECT id, lid FROM jar ORDER BY lid')).toHaveLength(2);
    expect(await again.listBackups()).toHaveLength(1);
    await again.close();
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-newer');
  });

  it('that fails leaves the library as it was', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'a');
    await library.close();
    const before = readFileSync(join(folder, 'library.sqlite'));
    const broken = { number: 2, name: 'broken', sql: 'CREATE TABLE x (a); INSERT INTO nowhere VALUES (1)' };
    await expect(
      openLibrary(folder, sampleOptions({ migrations: [...SAMPLE_MIGRATIONS, broken] })),
    ).rejects.toThrow();
    expect(readFileSync(join(folder, 'library.sqlite')).equals(before)).toBe(true);
    expect(await reopened(folder, jarIds)).toEqual(['a']);
  });

  it('a backup from before a migration can still be restored', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'a');
    const backup = await library.backUp();
    await library.close();
    const newer = await openLibrary(
      folder,
      sampleOptions({ migrations: [...SAMPLE_MIGRATIONS, ADD_COLOUR] }),
    );
    await newer.restore(backup.name);
    expect(newer.all('SELECT id, colour FROM jar')).toEqual([{ id: 'a', colour: null }]);
    await newer.close();
  });

  it('reads an older library without changing it, when reading is all that may be done', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'a');
    await library.close();
    const before = readFileSync(join(folder, 'library.sqlite'));
    const newer = sampleOptions({ migrations: [...SAMPLE_MIGRATIONS, ADD_COLOUR], readOnly: true });
    const reading = await openLibrary(folder, newer);
    expect(reading.all('SELECT colour FROM jar')).toEqual([{ colour: null }]);
    await reading.close();
    expect(readFileSync(join(folder, 'library.sqlite')).equals(before)).toBe(true);
  });
});

describe('the migration runner', () => {
  it('runs each once, with its number, checksum and time', async () => {
    const engine = await Engine.open();
    expect(migrate(engine, [...SAMPLE_MIGRATIONS, ADD_COLOUR], NOW)).toBe(2);
    expect(migrate(engine, [...SAMPLE_MIGRATIONS, ADD_COLOUR], NOW)).toBe(0);
    expect(engine.pragma('user_version')).toBe(2);
    expect(engine.all('SELECT number, applied_at FROM applied_migration')).toEqual([
      { number: 1, applied_at: NOW.toISOString() },
      { number: 2, applied_at: NOW.toISOString() },
    ]);
  });

  it('takes a checkout with Windows line endings for the same', async () => {
    const engine = await Engine.open();
    migrate(engine, SAMPLE_MIGRATIONS, NOW);
    const windows = SAMPLE_MIGRATIONS.map((one) => ({ ...one, sql: one.sql.replaceAll('\n', '\r\n') }));
    expect(migrate(engine, windows, NOW)).toBe(0);
  });

  it('refuses to leave rows without their parent', async () => {
    const engine = await Engine.open();
    migrate(engine, SAMPLE_MIGRATIONS, NOW);
    const orphaning = {
      number: 2,
      name: 'o',
      rebuildsTables: true,
      sql: "INSERT INTO label (jar_id, text) VALUES ('none', 'x')",
    };
    expect(() => migrate(engine, [...SAMPLE_MIGRATIONS, orphaning], NOW)).toThrow(/parent/);
    expect(engine.pragma('user_version')).toBe(1);
    expect(engine.pragma('foreign_keys')).toBe(1);
  });

  it.each([
    ['gaps', { number: 3, name: 'x', sql: 'SELECT 1' }],
    ['values made by SQL', { number: 1, name: 'x', sql: "INSERT INTO t VALUES (datetime('now'))" }],
    [
      'rules checked only at COMMIT',
      { number: 1, name: 'x', sql: 'a REFERENCES b DEFERRABLE INITIALLY DEFERRED' },
    ],
  ])('refuses a list with %s', async (_what, migration) => {
    const engine = await Engine.open();
    expect(() => migrate(engine, [migration], NOW)).toThrow(/Migration/);
  });
});

describe('attachments', () => {
  it('come back as they were put, under their SHA-256, once', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    const sha256 = await library.attachments.put(Buffer.from('photo'));
    // SHA-256 of "photo", by sha256sum (GNU coreutils).
    expect(sha256).toBe('55c64d0fcd6f9d5f7c828093857e3fdfda68478bb4e9bd24d481ef391c7804e8');
    expect(await library.attachments.put(Buffer.from('photo'))).toBe(sha256);
    expect(Buffer.from(await library.attachments.get(sha256)).toString()).toBe('photo');
    const path = join(folder, 'attachments', sha256.slice(0, 2), sha256);
    writeFileSync(path, 'spoilt');
    await problemOf(() => library.attachments.get(sha256), 'library-damaged');
    await library.attachments.put(Buffer.from('photo'));
    expect(readFileSync(path, 'utf8')).toBe('photo');
    await problemOf(() => library.attachments.get('0'.repeat(64)), 'not-found');
    await problemOf(() => library.attachments.get('../../library.sqlite'), 'not-found');
    await library.close();
  });
});
