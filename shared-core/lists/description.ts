/** What every list knows of a record: which one it is. */
export interface ListEntry {
  readonly id: string;
}

/** What an entry may hold, by name. */
export type KeyOf<Entry> = keyof Entry & string;

/** A filter that picks words; each shows how many records it would leave. */
export interface Facet<Key extends string = string> {
  /** The entry holds one word, several, or null where nothing is known. */
  readonly key: Key;
  readonly title: string;
  /** The vocabulary in its own order; null where the words are those found in the library. */
  readonly words: readonly string[] | null;
  /** Records that carry one of these words stay out of sight until a word of this filter is chosen. */
  readonly putAside?: readonly string[];
}

/** A filter by a number, ends included; a record of which it is not known is in no range. */
export interface NumberRange<Key extends string = string> {
  readonly key: Key;
  readonly title: string;
  readonly min: number;
  readonly max: number;
}

/** How a list can be sorted: by a text, a number, a moment, or the place of a word in its filter's vocabulary. */
export interface SortKey<Key extends string = string> {
  readonly key: Key;
  readonly by: 'text' | 'number' | 'date' | 'word';
  /** Whole numbers that can be compared only within the same text of this key, as prices within a currency. */
  readonly within?: Key;
}

/** All that the list of a noun is made from. */
export interface ListDescription<Key extends string = string> {
  /** What one record is called, and several. */
  readonly one: string;
  readonly many: string;
  /** What a record is called by, one of the sort keys; equals of any order stand in order of it. */
  readonly name: Key;
  /** The code or number that is found whole before all else. */
  readonly code: Key | null;
  /** What is searched, nearest first: a record's names, what else the list shows of it, and what it does not show. */
  readonly texts: Readonly<Record<Tier, readonly Key[]>>;
  readonly facets: readonly Facet<Key>[];
  readonly ranges: readonly NumberRange<Key>[];
  readonly sorts: readonly SortKey[];
  /** The order of a list that nobody has sorted. */
  readonly firstSort: { readonly key: Key; readonly descending: boolean };
  /** Served for searching only, and not sent. */
  readonly unsent: readonly Key[];
}

/** How near to its name a record shows a word. */
export type Tier = 'names' | 'shown' | 'unshown';
export const TIERS = ['names', 'shown', 'unshown'] as const satisfies readonly Tier[];

/** What an entry holds under a key. */
export function held(entry: ListEntry, key: string): unknown {
  return (entry as unknown as Record<string, unknown>)[key];
}

/** The texts that an entry holds under a key: one, several or none. */
export function textsOf(entry: ListEntry, key: string): readonly string[] {
  const value = held(entry, key);
  if (typeof value === 'string') return [value];
  return Array.isArray(value) ? (value as string[]) : [];
}

/** An entry as it is sent: without what serves searching only. */
export function rowOf<Row extends ListEntry>(
  { unsent }: Pick<ListDescription, 'unsent'>,
  entry: ListEntry,
): Row {
  const row = { ...entry } as unknown as Record<string, unknown>;
  for (const key of unsent) delete row[key];
  return row as unknown as Row;
}
