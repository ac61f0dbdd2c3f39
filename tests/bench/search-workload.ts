import { foldedWords } from '@core/quantities/fold';
import { listQuery, type ListQuery } from '@core/lists/query';
import { MATERIALS_LIST, type MaterialEntry } from '@core/materials/list';
import { CHARGES, FORMS, FUNCTIONS, KEEP_FROM, ORIGINS } from '@core/materials/vocabulary';
import { Seeded } from './seeded';

/** Beginnings of words that stand in the library, as someone types them: mostly three to six letters. */
function typed(chance: Seeded, entries: readonly MaterialEntry[]): string {
  const entry = chance.pick(entries);
  const field = chance.pick([entry.tradeName, entry.inci, entry.inci, entry.supplier, entry.notes]);
  const words = foldedWords(field);
  if (words.length === 0) return typed(chance, entries);
  const word = chance.pick(words);
  return word.slice(0, chance.pick([1, 2, 3, 3, 4, 4, 5, 6, 20]));
}

function filters(chance: Seeded): Pick<ListQuery, 'chosen' | 'spans'> {
  const chosen: Record<string, readonly string[]> = {};
  if (chance.chance(0.5)) chosen.charge = chance.some(CHARGES, chance.whole(1, 2));
  if (chance.chance(0.4)) chosen.form = chance.some(FORMS, chance.whole(1, 3));
  if (chance.chance(0.4)) chosen.functions = chance.some(FUNCTIONS.slice(0, 8), chance.whole(1, 3));
  if (chance.chance(0.2)) chosen.keepFrom = chance.some(KEEP_FROM, 1);
  if (chance.chance(0.2)) chosen.origin = chance.some(ORIGINS, 2);
  const spans: ListQuery['spans'] = chance.chance(0.3)
    ? { hlb: { from: chance.whole(2, 10), to: chance.whole(11, 18) } }
    : {};
  return { chosen, spans };
}

/** A word as it is mistyped: a letter left out, doubled, wrong, or two swapped. */
function slipped(chance: Seeded, word: string): string {
  const at = chance.whole(1, word.length - 2);
  const before = word.slice(0, at);
  const kinds = [
    before + word.slice(at + 1),
    before + word[at] + word.slice(at),
    `${before}q${word.slice(at + 1)}`,
    `${before}${word[at + 1]}${word[at]}${word.slice(at + 2)}`,
  ];
  return chance.pick(kinds);
}

/** Searches as a maker makes them: one to three words, up to six filters, often re-sorted. */
export function searchWorkload(entries: readonly MaterialEntry[], count: number, seed = 3): ListQuery[] {
  const chance = new Seeded(seed);
  return Array.from({ length: count }, () =>
    listQuery(MATERIALS_LIST, {
      ...filters(chance),
      text: Array.from({ length: chance.whole(1, 3) }, () => typed(chance, entries)).join(' '),
      sortBy: chance.chance(0.7) ? 'tradeName' : chance.pick(['hlb', 'supplier', 'updatedAt']),
      descending: chance.chance(0.2),
      offset: chance.chance(0.9) ? 0 : 100,
    }),
  );
}

/** The same, with one word of each search mistyped. */
export function mistypedWorkload(entries: readonly MaterialEntry[], count: number, seed = 9): ListQuery[] {
  const chance = new Seeded(seed);
  return searchWorkload(entries, count, seed).map((query) => {
    const long = foldedWords(chance.pick(entries).inci).filter((word) => word.length >= 6);
    const word = slipped(chance, long[0] ?? 'cetearyl');
    return { ...query, text: chance.chance(0.5) ? word : `${query.text} ${word}` };
  });
}
