import type { ListDescription } from './description';

/** As much of a text as is searched for. */
export const LONGEST_TEXT = 500;
/** As many rows as are sent at once. */
export const MOST_ROWS = 500;

/** A range as chosen; an open end is null. */
export interface Span {
  from: number | null;
  to: number | null;
}

/** What is looked for in a list. Within a filter the words are alternatives; between filters all must hold. */
export interface ListQuery {
  /** Every word must begin a word of the record. */
  text: string;
  /** The words chosen, by filter; one without a choice is left out. */
  chosen: Readonly<Record<string, readonly string[]>>;
  /** The ranges chosen; one that is open at both ends is left out. */
  spans: Readonly<Record<string, Span>>;
  sortBy: string;
  descending: boolean;
  offset: number;
  limit: number;
}

/** A typed word that stands nowhere in the library, and the words nearest to it that were looked for instead. */
export interface Correction {
  typed: string;
  meant: readonly string[];
}

/** Something to take away, or a filter word to choose, and how many records that would show. */
export type Instead =
  | { kind: 'word'; word: string; total: number }
  | { kind: 'facet'; key: string; total: number }
  | { kind: 'range'; key: string; total: number }
  | { kind: 'put aside'; key: string; word: string; total: number };

/** How many records each word of each filter would leave with that word alone chosen in its filter. */
export type Counts = Record<string, Record<string, number>>;

/** One page of a list. */
export interface ListPage<Row> {
  /** How many match in all. */
  total: number;
  offset: number;
  rows: Row[];
  counts: Counts;
  corrections: Correction[];
  /** What would find something; empty unless nothing matches. */
  instead: Instead[];
  /** How many records there are, whatever is asked for: none where the first is still to come. */
  held: number;
}

/** A page that does not wait for the counts, which take the whole list: null when they are not known yet. */
export type QuickPage<Row> = Omit<ListPage<Row>, 'counts'> & { counts: Counts | null };

/** A query of a list: all of it in its first order, but for what is given. */
export function listQuery(
  { firstSort }: Pick<ListDescription, 'firstSort'>,
  part: Partial<ListQuery> = {},
): ListQuery {
  return {
    text: '',
    chosen: {},
    spans: {},
    sortBy: firstSort.key,
    descending: firstSort.descending,
    offset: 0,
    limit: 100,
    ...part,
  };
}

/** The words chosen in a filter. */
export function chosenIn(query: ListQuery, facet: string): readonly string[] {
  return query.chosen[facet] ?? [];
}

/** A query with other words chosen in a filter; none takes the filter away. */
export function withChosen(query: ListQuery, facet: string, words: readonly string[]): ListQuery {
  const { [facet]: _before, ...others } = query.chosen;
  return { ...query, chosen: words.length > 0 ? { ...others, [facet]: words } : others };
}

/** A query with another span chosen; one that is open at both ends takes the range away. */
export function withSpan(query: ListQuery, range: string, span: Span): ListQuery {
  const { [range]: _before, ...others } = query.spans;
  const open = span.from === null && span.to === null;
  return { ...query, spans: open ? others : { ...others, [range]: span } };
}
