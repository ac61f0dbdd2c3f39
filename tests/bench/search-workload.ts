import type { z } from 'zod';
import { foldedWords } from '@core/quantities/fold';
import { FACETS, shelfQuery, type ShelfEntry, type ShelfQuery } from '@core/shelf/query';
import { Seeded } from './seeded';

type Asked = z.input<typeof shelfQuery>;

/** Beginnings of words that stand in the library, as someone types them: mostly three to six letters. */
function typed(chance: Seeded, entries: readonly ShelfEntry[]): string {
  const entry = chance.pick(entries);
  const field = chance.pick([entry.tradeName, entry.inci, entry.inci, entry.supplier, entry.notes]);
  const words = foldedWords(field);
  if (words.length === 0) return typed(chance, entries);
  const word = chance.pick(words);
  return word.slice(0, chance.pick([1, 2, 3, 3, 4, 4, 5, 6, 20]));
}

function filters(chance: Seeded): Asked {
  const asked: Asked = {};
  if (chance.chance(0.5)) asked.charge = chance.some(FACETS.charge, chance.whole(1, 2));
  if (chance.chance(0.4)) asked.form = chance.some(FACETS.form, chance.whole(1, 3));
  if (chance.chance(0.4)) asked.functions = chance.some(FACETS.functions.slice(0, 8), chance.whole(1, 3));
  if (chance.chance(0.2)) asked.keepFrom = chance.some(FACETS.keepFrom, 1);
  if (chance.chance(0.2)) asked.origin = chance.some(FACETS.origin, 2);
  if (chance.chance(0.3)) {
    asked.hlbFrom = chance.whole(2, 10);
    asked.hlbTo = chance.whole(11, 18);
  }
  return asked;
}

/** Searches with text and filters as a maker makes them: one to three words, up to six filters, often re-sorted. */
export function searchWorkload(entries: readonly ShelfEntry[], count: number, seed = 3): ShelfQuery[] {
  const chance = new Seeded(seed);
  return Array.from({ length: count }, () =>
    shelfQuery.parse({
      ...filters(chance),
      text: Array.from({ length: chance.whole(1, 3) }, () => typed(chance, entries)).join(' '),
      sortBy: chance.chance(0.7) ? 'tradeName' : chance.pick(['hlb', 'supplier', 'updatedAt']),
      descending: chance.chance(0.2),
      offset: chance.chance(0.9) ? 0 : 100,
    }),
  );
}
