import { setImmediate } from 'node:timers/promises';
import type { Reader } from '@db/database';
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

/**
 * Asks something of materials of the library, and gives the rows only of those that the asked one does not hold. What is
 * edited meanwhile is asked for again.
 * @param ids those meant, each once
 * @throws Problem as the asking does
 */
export async function overShelf<Result extends object>(
  library: Reader,
  ids: readonly string[],
  ask: (shelf: Shelf) => Promise<Result | Lacking>,
): Promise<Result> {
  let rows: RecordRows[] = [];
  for (;;) {
    const all = standingOf(library, ids);
    const nesting = all.filter(({ nests }) => nests).map(({ id }) => id);
    const answer = await ask({
      standing: all.filter(({ nests }) => !nests).map((one) => ({ id: one.id, stamp: stampOf(one) })),
      rows,
      nesting: [...readMaterials(library, nesting).values()],
    });
    if (!('lacking' in answer)) return answer;
    rows = await rowsOf(library, answer.lacking);
  }
}
