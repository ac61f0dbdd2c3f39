import { foldedWords, withWideNumbers } from '../quantities/fold';
import { held, textsOf, type ListDescription, type ListEntry, type SortKey } from './description';

/** What a record is sorted by: a number or a folded text. Null stands for unknown and comes last either way. */
export type SortValue = number | string | null;

/** Wide enough that whole numbers stand in order as texts. */
const DIGITS = 16;

/**
 * The value of an entry under a sort key. Names sort without regard to case, accents and punctuation, with numbers in
 * them by size (PEG-7 before PEG-40); words sort in their vocabulary's own order, of several by the first one held.
 */
export function sortValue(
  { facets }: Pick<ListDescription, 'facets'>,
  { key, by, within }: SortKey,
  entry: ListEntry,
): SortValue {
  const value = held(entry, key);
  if (by === 'text') return nameKey(textsOf(entry, key).join(' '));
  if (by === 'word') return placeInVocabulary(facets, key, textsOf(entry, key)[0]);
  if (by === 'date') return moment(value);
  if (typeof value !== 'number') return null;
  return within ? `${textsOf(entry, within)[0] ?? ''} ${String(value).padStart(DIGITS, '0')}` : value;
}

function nameKey(text: string): string | null {
  const words = foldedWords(text);
  if (words.length === 0) return null;
  return withWideNumbers(words.join(' '));
}

function moment(value: unknown): number | null {
  const time = typeof value === 'string' ? Date.parse(value) : NaN;
  return Number.isNaN(time) ? null : time;
}

function placeInVocabulary(
  facets: ListDescription['facets'],
  key: string,
  word: string | undefined,
): SortValue {
  const words = facets.find((facet) => facet.key === key)?.words;
  if (word === undefined) return null;
  if (!words) return nameKey(word);
  const place = words.indexOf(word);
  return place < 0 ? null : place;
}

/** Orders two sort values, unknown last in both directions. Values of one key are all numbers or all texts. */
export function compareValues(a: SortValue, b: SortValue, descending = false): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b === descending ? 1 : -1;
}
