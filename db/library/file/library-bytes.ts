import { Problem } from '@core/problems/problem';
import { Engine } from '../sql/engine';
import { APPLICATION_ID, LIBRARY_FORMAT, readMeta, type LibraryMeta } from './meta';
import { SqlError } from '../sql/sql-error';

// Places in the SQLite file header: https://www.sqlite.org/fileformat2.html#the_database_header
const MAGIC = 'SQLite format 3\0';
const HEADER_SIZE = 100;
const PAGE_SIZE_AT = 16;
const CHANGE_COUNTER_AT = 24;
const PAGE_COUNT_AT = 28;
const USER_VERSION_AT = 60;
const APPLICATION_ID_AT = 68;
const VALID_FOR_AT = 92;

export interface OpenedBytes {
  engine: Engine;
  meta: LibraryMeta;
}

/**
 * What is wrong with these bytes as a library file, as far as their header tells; undefined when nothing is.
 * @param start at least the first 100 bytes, where there are so many
 * @param size the length of the whole file
 * @param knownVersion the newest `user_version` this program can read
 */
export function headerProblem(start: Uint8Array, size: number, knownVersion: number): Problem | undefined {
  if (size === 0) return damagedFile('it is empty');
  const view = new DataView(start.buffer, start.byteOffset, start.byteLength);
  if (Buffer.from(start.subarray(0, MAGIC.length)).toString('latin1') !== MAGIC) return notALibrary();
  if (start.length < HEADER_SIZE) return damagedFile('it is cut short');
  if (view.getUint32(APPLICATION_ID_AT) !== APPLICATION_ID) return notALibrary();
  const pageSize = view.getUint16(PAGE_SIZE_AT) === 1 ? 65_536 : view.getUint16(PAGE_SIZE_AT);
  if (pageSize < 512 || (pageSize & (pageSize - 1)) !== 0) return damagedFile('its header makes no sense');
  const countIsValid = view.getUint32(CHANGE_COUNTER_AT) === view.getUint32(VALID_FOR_AT);
  const pages = view.getUint32(PAGE_COUNT_AT);
  if (size % pageSize !== 0 || (countIsValid && size !== pages * pageSize)) {
    return damagedFile('its length is not what its header says');
  }
  if (view.getUint32(USER_VERSION_AT) > knownVersion) return newerLibrary();
  return undefined;
}

/**
 * Opens the bytes of a library file and checks them through. Throws Problem; the bytes are never changed, unless given.
 * @param known the bytes are, by their hash, those that were checked when they were written: not checked again
 * @param given nobody else needs the bytes: the engine works in them
 */
export async function openBytes(
  bytes: Uint8Array,
  knownVersion: number,
  { known = false, given = false } = {},
): Promise<OpenedBytes> {
  const problem = headerProblem(bytes, bytes.length, knownVersion);
  if (problem) throw problem;
  let engine: Engine | undefined;
  try {
    engine = await Engine.open(bytes, { given });
    if (!known) checkContents(engine);
    const meta = readMeta(engine);
    if (!meta) throw damagedFile('it does not say which library it is');
    if (meta.format > LIBRARY_FORMAT) throw newerLibrary();
    return { engine, meta };
  } catch (error) {
    engine?.close();
    throw error instanceof SqlError ? damagedFile('it cannot be read', error.message) : error;
  }
}

/** SQLite's own checks of pages, rows, indexes and references. Throws Problem library-damaged. */
export function checkContents(engine: Engine): void {
  const verdict = engine.pragma('integrity_check(1)');
  if (verdict !== 'ok') throw damagedFile('parts of it do not fit together', String(verdict));
  const orphan = engine.pragma('foreign_key_check');
  if (orphan !== null) throw damagedFile('some of its records are gone that others name', String(orphan));
}

/** @param found what SQLite says of it, for whoever looks into it; no words for a maker */
export function damagedFile(what: string, found?: string): Problem {
  return new Problem({
    code: 'library-damaged',
    title: `The library file is damaged: ${what}.`,
    advice: 'It was left as it is.',
    facts: { file: 'library.sqlite', ...(found !== undefined && { found }) },
  });
}

function notALibrary(): Problem {
  return new Problem({
    code: 'library-not-one',
    title: 'The file library.sqlite in this folder is not a Stillroom library.',
    advice:
      'Choose the folder of a library, or create a new library in an empty folder. Nothing was changed.',
  });
}

function newerLibrary(): Problem {
  return new Problem({
    code: 'library-newer',
    title: 'This library was last used with a newer version of Stillroom.',
    advice: 'Open it with that version or a later one. Nothing was changed.',
  });
}
