import type { Facet, ListDescription } from './description';
import { listQuery, LONGEST_TEXT, MOST_ROWS, type ListQuery, type Span } from './query';

/** As many words of a filter as an address can choose. */
const MOST_CHOSEN = 100;

/** A query as address parameters; what is left as usual is left out, so that a plain list has a plain address. */
export function toParams(description: ListDescription, query: ListQuery): URLSearchParams {
  const params = new URLSearchParams();
  const plain = listQuery(description);
  if (query.text !== '') params.set('text', query.text);
  for (const { key } of description.facets)
    for (const word of query.chosen[key] ?? []) params.append(key, word);
  for (const { key } of description.ranges) {
    const { from = null, to = null } = query.spans[key] ?? {};
    if (from !== null) params.set(`${key}From`, String(from));
    if (to !== null) params.set(`${key}To`, String(to));
  }
  for (const name of ['sortBy', 'descending', 'offset', 'limit'] as const)
    if (query[name] !== plain[name]) params.set(name, String(query[name]));
  return params;
}

/**
 * The query in address parameters. An address may be typed, old or shortened, so whatever is not understood counts as
 * not chosen: unknown words, figures that are no numbers or out of range. A text that is too long is cut: dropped, it
 * would find every record.
 */
export function fromParams(description: ListDescription, params: URLSearchParams): ListQuery {
  const plain = listQuery(description);
  const sortBy = params.get('sortBy');
  const descending = params.get('descending');
  return {
    text: params.get('text')?.slice(0, LONGEST_TEXT) ?? '',
    chosen: chosenWords(description, params),
    spans: spansIn(description, params),
    sortBy: description.sorts.some(({ key }) => key === sortBy) ? String(sortBy) : plain.sortBy,
    descending: descending === null ? plain.descending : descending === 'true',
    offset: wholeIn(params, 'offset', Number.MAX_SAFE_INTEGER) ?? plain.offset,
    limit: wholeIn(params, 'limit', MOST_ROWS) ?? plain.limit,
  };
}

function chosenWords({ facets }: ListDescription, params: URLSearchParams): ListQuery['chosen'] {
  const chosen = facets.map(({ key, words }): [string, readonly string[]] => [
    key,
    known({ words }, params.getAll(key)),
  ]);
  return Object.fromEntries(chosen.filter(([, words]) => words.length > 0));
}

/** The given words that a filter knows, each once, in the vocabulary's order where there is one. */
function known({ words }: Pick<Facet, 'words'>, given: readonly string[]): readonly string[] {
  const distinct = new Set(given);
  if (words) return words.filter((word) => distinct.has(word));
  return [...distinct].filter((word) => word !== '' && word.length <= LONGEST_TEXT).slice(0, MOST_CHOSEN);
}

function spansIn({ ranges }: ListDescription, params: URLSearchParams): ListQuery['spans'] {
  const spans = ranges.map(({ key, min, max }): [string, Span] => {
    const end = (name: string): number | null => {
      const value = numberIn(params, name);
      return value !== null && value >= min && value <= max ? value : null;
    };
    return [key, { from: end(`${key}From`), to: end(`${key}To`) }];
  });
  return Object.fromEntries(spans.filter(([, { from, to }]) => from !== null || to !== null));
}

function wholeIn(params: URLSearchParams, name: string, most: number): number | null {
  const value = numberIn(params, name);
  return value !== null && Number.isSafeInteger(value) && value >= 0 && value <= most ? value : null;
}

function numberIn(params: URLSearchParams, name: string): number | null {
  const text = params.get(name)?.trim();
  const value = text ? Number(text) : NaN;
  return Number.isFinite(value) ? value : null;
}
