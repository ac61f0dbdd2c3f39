import { createMeta, LIBRARY_FORMAT } from '../library/file/meta';
import { chainAfter } from '../library/log/log-format';
import { Engine } from '../library/sql/engine';
import { migrate, pendingMigrations, type Migration } from './runner';

interface Part {
  type: string;
  name: string;
  sql: string | null;
}

/**
 * The first part of the schema (a table, an index, a trigger) that is not as the migrations made it, or undefined. SQLite
 * checks that pages and rows fit the schema; that the schema itself is the one it was, it cannot know.
 * What somebody added of their own does not matter. Throws Problem where other migrations ran.
 */
export async function alteredPart(
  engine: Engine,
  migrations: readonly Migration[],
): Promise<string | undefined> {
  const applied = migrations.length - pendingMigrations(engine, migrations).length;
  const fresh = await Engine.open();
  try {
    const [id, createdAt] = ['0', new Date(0)];
    const state = { sequence: 0, chain: chainAfter('', id), revision: 0, createdAt: createdAt.toISOString() };
    createMeta(fresh, { id, format: LIBRARY_FORMAT, ...state });
    migrate(fresh, migrations.slice(0, applied), createdAt);
    const found = new Map(partsOf(engine).map((part) => [keyOf(part), part]));
    return partsOf(fresh).find((part) => plain(found.get(keyOf(part))?.sql) !== plain(part.sql))?.name;
  } finally {
    fresh.close();
  }
}

function partsOf(engine: Engine): Part[] {
  return engine.all<Part>("SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_stat%'");
}

const keyOf = ({ type, name }: Part): string => `${type} ${name}`;

/** Other versions of SQLite quote and space what a migration altered in other ways. */
function plain(sql: string | null | undefined): string | undefined {
  return sql === undefined ? undefined : (sql ?? '').replaceAll(/["`[\]\s]/g, '');
}
