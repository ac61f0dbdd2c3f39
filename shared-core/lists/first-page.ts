import { foldedWords } from '../quantities/fold';
import type { ListDescription, ListEntry } from './description';
import type { ListQuery } from './query';
import { compareValues, sortValue, type SortValue } from './sort-key';

/** Whether a query asks for the whole list, in whatever order. */
export function isOfAll({ text, chosen, spans }: ListQuery): boolean {
  return (
    Object.keys(chosen).length === 0 && Object.keys(spans).length === 0 && foldedWords(text).length === 0
  );
}

/** The whole list in an order, without the list. */
export interface OrderOfAll {
  total: number;
  /** The ids of one page. */
  page(offset: number, limit: number): string[];
}

interface Placed {
  entry: ListEntry;
  value: SortValue;
}

/**
 * The whole list in an order, as the list itself has it, from entries that hold only their names and the sort key: so
 * that the first page can be shown before the list is filled. Equals are put in order only where a page shows them.
 * @param glances without those put aside
 */
export function orderOfAll(
  description: ListDescription,
  glances: readonly ListEntry[],
  { sortBy, descending }: Pick<ListQuery, 'sortBy' | 'descending'>,
): OrderOfAll {
  const valuesOf = (wanted: string): ((entry: ListEntry) => SortValue) => {
    const sort = description.sorts.find(({ key }) => key === wanted)!;
    return (entry) => sortValue(description, sort, entry);
  };
  const valueOf = valuesOf(sortBy);
  const nameOf = valuesOf(description.name);
  const placed = glances
    .map((entry): Placed => ({ entry, value: valueOf(entry) }))
    .sort((a, b) => compareValues(a.value, b.value, descending));
  return {
    total: placed.length,
    page(offset, limit) {
      const from = startOfEquals(placed, offset);
      const shown = placed.slice(from, endOfEquals(placed, offset + limit));
      const named = shown.map(({ entry, value }) => ({ id: entry.id, value, name: nameOf(entry) }));
      named.sort(
        (a, b) =>
          compareValues(a.value, b.value, descending) ||
          compareValues(a.name, b.name) ||
          compareValues(a.id, b.id),
      );
      return named.slice(offset - from, offset - from + limit).map(({ id }) => id);
    },
  };
}

function startOfEquals(placed: readonly Placed[], at: number): number {
  let start = Math.min(at, placed.length);
  while (start > 0 && placed[start - 1]!.value === placed[start]?.value) start -= 1;
  return start;
}

function endOfEquals(placed: readonly Placed[], at: number): number {
  let end = Math.min(at, placed.length);
  while (end > 0 && end < placed.length && placed[end]!.value === placed[end - 1]!.value) end += 1;
  return end;
}
