import { foldedWords } from '../quantities/fold';
import { FACETS, type Facet, type ShelfEntry, type SortKey } from './query';
import { wordsOf } from './facet-index';

/** What a material is sorted by: a number or a folded text. Null stands for unknown and comes last either way. */
export type SortValue = number | string | null;

/**
 * The value of an entry under a sort key. Names sort without regard to case, accents and punctuation, with
 * numbers in them by size (PEG-7 before PEG-40); words of a list sort in the list's own order, functions by the
 * first one named; prices sort within their currency.
 */
export function sortValue(entry: ShelfEntry, key: SortKey): SortValue {
  switch (key) {
    case 'tradeName':
    case 'inci':
    case 'code':
    case 'supplier':
      return nameKey(entry[key]);
    case 'hlb':
    case 'requiredHlbOw':
    case 'meltingPoint':
      return entry[key];
    case 'pricePerKg':
      return entry.pricePerKg === null
        ? null
        : `${entry.currency ?? ''} ${String(entry.pricePerKg).padStart(16, '0')}`;
    case 'updatedAt': {
      const time = Date.parse(entry.updatedAt);
      return Number.isNaN(time) ? null : time;
    }
    default:
      return placeInList(entry, key);
  }
}

function nameKey(text: string): string | null {
  const words = foldedWords(text);
  if (words.length === 0) return null;
  return words.join(' ').replace(/\p{Nd}+/gu, (digits) => digits.padStart(12, '0'));
}

function placeInList(entry: ShelfEntry, facet: Facet): number | null {
  const first = wordsOf(entry, facet)[0];
  const place = (FACETS[facet] as readonly string[]).indexOf(first ?? '');
  return place < 0 ? null : place;
}

/** Orders two sort values, unknown last in both directions. Values of one key are all numbers or all texts. */
export function compareValues(a: SortValue, b: SortValue, descending = false): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b === descending ? 1 : -1;
}
