import { foldedWords } from '../quantities/fold';
import { textsOf, type ListDescription, type ListEntry } from './description';
import type { ListQuery } from './query';
import { compareValues, sortValue } from './sort-key';

/** Whether a query asks for the whole list, in whatever order. */
export function isOfAll({ text, chosen, spans }: ListQuery): boolean {
  return (
    Object.keys(chosen).length === 0 && Object.keys(spans).length === 0 && foldedWords(text).length === 0
  );
}

/** What has to be known of every record to put the whole list in an order: its name, the sort key, what puts it aside. */
export function keysToOrder(
  { name, facets }: Pick<ListDescription, 'name' | 'facets'>,
  sortBy: string,
): string[] {
  return [...new Set([name, sortBy, ...facets.filter(({ putAside }) => putAside).map(({ key }) => key)])];
}

/**
 * The ids of the whole list in an order, as the list itself has it, from entries that hold only `keysToOrder`: so that
 * the first page can be shown before the list is filled.
 */
export function orderOfAll(
  description: ListDescription,
  glances: readonly ListEntry[],
  { sortBy, descending }: Pick<ListQuery, 'sortBy' | 'descending'>,
): string[] {
  const aside = description.facets.flatMap(({ key, putAside }) => (putAside ? [{ key, putAside }] : []));
  const isSeen = (entry: ListEntry): boolean =>
    !aside.some(({ key, putAside }) => textsOf(entry, key).some((word) => putAside.includes(word)));
  const sortOf = (wanted: string) => description.sorts.find(({ key }) => key === wanted)!;
  const byName = sortOf(description.name);
  const byKey = sortOf(sortBy);
  return glances
    .filter(isSeen)
    .map((entry) => {
      const name = sortValue(description, byName, entry);
      return { id: entry.id, name, value: byKey === byName ? name : sortValue(description, byKey, entry) };
    })
    .sort(
      (a, b) =>
        compareValues(a.value, b.value, descending) ||
        compareValues(a.name, b.name) ||
        compareValues(a.id, b.id),
    )
    .map(({ id }) => id);
}
