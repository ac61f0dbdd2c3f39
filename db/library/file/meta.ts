import type { Engine } from '../sql/engine';
import type { Position } from '../log/log-format';

/** "StLr": marks an SQLite file as a Stillroom library. */
export const APPLICATION_ID = 0x53744c72;
/** How the kernel's own table and the log are laid out; the trade's schema counts in `user_version`. */
export const LIBRARY_FORMAT = 1;

/** The one row of `library_meta`: which library this is, and which changes it includes. */
export interface LibraryMeta extends Position {
  id: string;
  format: number;
  /** How often the file has been written whole. */
  revision: number;
  createdAt: string;
}

const TABLE = `
  CREATE TABLE library_meta (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    id TEXT NOT NULL,
    format INTEGER NOT NULL,
    sequence INTEGER NOT NULL,
    chain TEXT NOT NULL,
    revision INTEGER NOT NULL,
    created_at TEXT NOT NULL
  ) STRICT`;

export function createMeta(engine: Engine, meta: LibraryMeta): void {
  engine.script(`PRAGMA application_id = ${APPLICATION_ID}`);
  engine.script(TABLE);
  engine.run(
    'INSERT INTO library_meta (only_row, id, format, sequence, chain, revision, created_at) VALUES (1, ?, ?, ?, ?, ?, ?)',
    meta.id,
    meta.format,
    meta.sequence,
    meta.chain,
    meta.revision,
    meta.createdAt,
  );
}

const ID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const CHAIN = /^[0-9a-f]{32}$/;

/**
 * The row, or undefined where there is none or no library could have written it: the log repeats what stands in it, so
 * that nothing may pass here which cannot be read there. Throws SqlError where there is no such table.
 */
export function readMeta(engine: Engine): LibraryMeta | undefined {
  const meta = engine.get<LibraryMeta>(
    'SELECT id, format, sequence, chain, revision, created_at AS createdAt FROM library_meta',
  );
  const makesSense =
    meta && ID.test(meta.id) && CHAIN.test(meta.chain) && meta.sequence >= 0 && meta.format >= 1;
  return makesSense ? meta : undefined;
}

export function writePosition(engine: Engine, { sequence, chain }: Position): void {
  engine.run('UPDATE library_meta SET sequence = ?, chain = ?', sequence, chain);
}

export function writeRevision(engine: Engine, revision: number): void {
  engine.run('UPDATE library_meta SET revision = ?', revision);
}

export function writeId(engine: Engine, id: string): void {
  engine.run('UPDATE library_meta SET id = ?', id);
}
