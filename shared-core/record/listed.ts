import type { Facet, SortKey } from '../lists/description';
import type { Field, Fields } from './field';

/** A field that a noun's list shows, filters or searches, those within groups among them. */
export interface Listed<Key extends string = string> {
  key: Key;
  field: Field;
  /** The key of the group that it belongs to; null for a field of the noun itself. */
  group: string | null;
}

/** Only texts and words stand in a list by themselves; what else it shows, the noun works out by hand. */
const isPlain = ({ shape }: Field): boolean => ['line', 'text', 'word', 'words'].includes(shape.kind);

/** The fields that a list is made from, in their order. `Key` names what an entry of the list holds. */
export function listedFields<Key extends string>(fields: Fields, group: string | null = null): Listed<Key>[] {
  return Object.entries(fields).flatMap(([key, field]): Listed<Key>[] => {
    if (field.shape.kind === 'group') return listedFields<Key>(field.shape.fields, key);
    const { list, filter, search } = field.places;
    return isPlain(field) && (list ?? filter ?? search) ? [{ key: key as Key, field, group }] : [];
  });
}

/** The filters of listed fields. */
export function facetsOf<Key extends string>(listed: readonly Listed<Key>[]): Facet<Key>[] {
  return listed.flatMap(({ key, field: { shape, places } }) => {
    if (places.filter === undefined) return [];
    const words = shape.kind === 'word' || shape.kind === 'words' ? shape.words : null;
    return [{ key, title: places.filter, words }];
  });
}

/** How a list is sorted by the columns of listed fields: words in the order of their vocabulary. */
export function sortsOf(listed: readonly Listed[]): SortKey[] {
  return listed
    .filter(({ field }) => field.places.list)
    .map(({ key, field: { shape } }) => ({ key, by: shape.kind === 'line' ? 'text' : 'word' }));
}

/** The keys of listed fields that are searched: those whose columns are shown, or those that are not. */
export function searchedKeys<Key extends string>(listed: readonly Listed<Key>[], shown: boolean): Key[] {
  return listed
    .filter(({ field: { places } }) => places.search && (places.list !== undefined) === shown)
    .map(({ key }) => key);
}
