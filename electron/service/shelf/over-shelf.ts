import { setImmediate } from 'node:timers/promises';
import type { Reader } from '@db/database';
import type { OpenLibrary } from '@db/library/open-library';
import { materials, readMaterials } from '@db/materials/materials';
import { standingOf } from '@db/materials/standing';
import type { RecordRows } from '@db/record/record-table';
import { stampOf, type Lacking, type Shelf } from './kept-shelf';

/** Materials read before other requests have their turn: each such reading takes a few milliseconds. */
const AT_ONCE = 200;

async function rowsOf(library: Reader, ids: readonly string[]): Promise<RecordRows[]> {
  const rows: RecordRows[] = [];
  for (let from = 0; from < ids.length; from += AT_ONCE) {
    rows.push(materials.readRows(library, ids.slice(from, from + AT_ONCE)));
    await setImmediate();
  }
  return rows;
}

type Standing = Omit<Shelf, 'rows'>;

/** The ids of the materials that a question means, each once. A constant function: what it finds is kept under it. */
export type WhichMaterials = (library: Reader) => string[];

const STANDING = new WeakMap<OpenLibrary, Map<WhichMaterials, { sequence: number; standing: Standing }>>();

/** How those meant stand now; read again only after something in the library has changed. */
function standingNow(library: OpenLibrary, which: WhichMaterials): Standing {
  const { sequence } = library;
  const kept = STANDING.get(library) ?? new Map<WhichMaterials, { sequence: number; standing: Standing }>();
  const known = kept.get(which);
  if (known?.sequence === sequence) return known.standing;
  const all = standingOf(library, which(library));
  const nesting = all.filter(({ nests }) => nests).map(({ id }) => id);
  const standing = {
    standing: all.filter(({ nests }) => !nests).map((one) => ({ id: one.id, stamp: stampOf(one) })),
    nesting: [...readMaterials(library, nesting).values()],
  };
  STANDING.set(library, kept.set(which, { sequence, standing }));
  return standing;
}

/**
 * Asks something of materials of the library, and gives the rows only of those that the asked one does not hold. What is
 * edited meanwhile is asked for again.
 * @throws Problem as the asking does
 */
export async function overShelf<Result extends object>(
  library: OpenLibrary,
  which: WhichMaterials,
  ask: (shelf: Shelf) => Promise<Result | Lacking>,
): Promise<Result> {
  let rows: RecordRows[] = [];
  for (;;) {
    const answer = await ask({ ...standingNow(library, which), rows });
    if (!('lacking' in answer)) return answer;
    rows = await rowsOf(library, answer.lacking);
  }
}
