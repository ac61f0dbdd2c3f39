import { createHash } from 'node:crypto';
import { Problem } from '@core/problems/problem';
import type { Writer } from '../database';
import type { Engine } from '../library/sql/engine';
import { PRESENT_TIME } from '../library/sql/sql-text';

/** One step of the schema. Once shipped it is never edited: its checksum stands in every library it ran on. */
export interface Migration {
  /** 1, 2, 3 … without gaps; also the `user_version` it leads to. */
  number: number;
  name: string;
  /** Statements without BEGIN and COMMIT. */
  sql: string;
  /**
   * Between `sql` and `thenSql`: what SQL cannot do, such as hashing. It sees the statements only, and makes up
   * neither times nor ids.
   */
  convert?: (tx: Writer) => void;
  thenSql?: string;
  /**
   * For rebuilding a table that others refer to: foreign keys are off while it runs and checked before COMMIT.
   */
  rebuildsTables?: boolean;
}

interface AppliedRow {
  number: number;
  name: string;
  checksum: string;
}

const APPLIED_TABLE = `
  CREATE TABLE IF NOT EXISTS applied_migration (
    number INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    checksum TEXT NOT NULL,
    applied_at TEXT NOT NULL
  ) STRICT`;

/** Would end or outlive a transaction of its own accord, so that log and memory could come to differ. */
const FORBIDDEN =
  /\bINITIALLY\s+DEFERRED\b|\bON\s+CONFLICT\s+ROLLBACK\b|RAISE\s*\(\s*ROLLBACK\b|\bOR\s+ROLLBACK\b/i;
/** SQL that makes up values would replay differently. `defer_foreign_keys` and friends are not for migrations. */
const RANDOM = /\brandom(?:blob)?\s*\(/i;

/** SHA-256 of the statements, blind to line endings so that a checkout on Windows agrees. */
export function checksumOf(migration: Migration): string {
  return createHash('sha256').update(allSql(migration).replaceAll('\r\n', '\n')).digest('hex');
}

function allSql({ sql, thenSql }: Migration): string {
  return thenSql === undefined ? sql : `${sql}\n${thenSql}`;
}

/** Migrations that the database has not seen. Throws Problem library-newer or library-damaged when it has seen others. */
export function pendingMigrations(engine: Engine, migrations: readonly Migration[]): Migration[] {
  checkList(migrations);
  const version = Number(engine.pragma('user_version'));
  if (version > migrations.length) throw newer(version, migrations.length);
  const applied = appliedRows(engine);
  const same = applied.every((row, index) => {
    const known = migrations[index];
    return known !== undefined && row.number === known.number && row.checksum === checksumOf(known);
  });
  if (!same || applied.length !== version) {
    throw new Problem({
      code: 'library-newer',
      title: 'This library was made by a different version of Stillroom.',
      advice: 'Open it with the version that made it, or restore a backup. Nothing was changed.',
      facts: { version, applied: applied.map((row) => `${row.number} ${row.name}`) },
    });
  }
  return migrations.slice(version);
}

/** Runs what is pending, each in one transaction with its `user_version`. Returns how many ran. */
export function migrate(engine: Engine, migrations: readonly Migration[], now: Date): number {
  const pending = pendingMigrations(engine, migrations);
  for (const migration of pending) applyOne(engine, migration, now);
  return pending.length;
}

function applyOne(engine: Engine, migration: Migration, now: Date): void {
  // SQLite ignores this pragma inside a transaction.
  if (migration.rebuildsTables) engine.script('PRAGMA foreign_keys = OFF');
  engine.control('BEGIN');
  try {
    engine.script(APPLIED_TABLE);
    engine.script(migration.sql);
    migration.convert?.(engine);
    if (migration.thenSql !== undefined) engine.script(migration.thenSql);
    engine.run(
      'INSERT INTO applied_migration (number, name, checksum, applied_at) VALUES (?, ?, ?, ?)',
      migration.number,
      migration.name,
      checksumOf(migration),
      now.toISOString(),
    );
    engine.script(`PRAGMA user_version = ${migration.number}`);
    if (engine.pragma('foreign_key_check') !== null) {
      throw new Error(`Migration ${migration.number} (${migration.name}) leaves rows without their parent.`);
    }
    engine.control('COMMIT');
  } catch (error) {
    rollBack(engine);
    throw error;
  } finally {
    engine.configureConnection();
  }
}

function rollBack(engine: Engine): void {
  try {
    engine.control('ROLLBACK');
  } catch {
    // SQLite had already rolled back by itself.
  }
}

function appliedRows(engine: Engine): AppliedRow[] {
  const known = engine.get(
    "SELECT 1 AS found FROM sqlite_schema WHERE type = 'table' AND name = 'applied_migration'",
  );
  return known
    ? engine.all<AppliedRow>('SELECT number, name, checksum FROM applied_migration ORDER BY number')
    : [];
}

function checkList(migrations: readonly Migration[]): void {
  migrations.forEach((migration, index) => {
    if (migration.number !== index + 1)
      throw new Error(`Migration ${migration.number} stands at place ${index + 1}.`);
    if (FORBIDDEN.test(allSql(migration)))
      throw new Error(`Migration ${migration.number} uses a deferred or rolling-back rule.`);
    if (RANDOM.test(allSql(migration)) || PRESENT_TIME.test(allSql(migration)))
      throw new Error(`Migration ${migration.number} makes up values in SQL.`);
  });
}

function newer(version: number, known: number): Problem {
  return new Problem({
    code: 'library-newer',
    title: 'This library was last used with a newer version of Stillroom.',
    advice: 'Open it with that version or a later one. Nothing was changed.',
    facts: { version, known },
  });
}
