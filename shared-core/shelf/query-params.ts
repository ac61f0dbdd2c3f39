import { FACETS, FACET_NAMES, shelfQuery, type Facet, type ShelfQuery } from './query';

/** As much of a text as is searched for (`shelfQuery`). */
const LONGEST_TEXT = 500;
const UNFILTERED: ShelfQuery = shelfQuery.parse({});

/** A query as address parameters; what is left as usual is left out, so that a plain list has a plain address. */
export function toParams(query: ShelfQuery): URLSearchParams {
  const params = new URLSearchParams();
  if (query.text !== '') params.set('text', query.text);
  for (const facet of FACET_NAMES) {
    for (const word of query[facet]) params.append(facet, word);
  }
  for (const name of ['hlbFrom', 'hlbTo', 'sortBy', 'descending', 'offset', 'limit'] as const) {
    const value = query[name];
    if (value !== UNFILTERED[name] && value !== null) params.set(name, String(value));
  }
  return params;
}

/**
 * The query in address parameters. An address may be typed, old or shortened, so whatever is not understood
 * counts as not chosen: unknown words, figures that are no numbers or out of range. A text that is too long is cut:
 * dropped, it would find every material.
 */
export function fromParams(params: URLSearchParams): ShelfQuery {
  const words = Object.fromEntries(
    FACET_NAMES.map((facet: Facet) => {
      const given = new Set(params.getAll(facet));
      return [facet, (FACETS[facet] as readonly string[]).filter((word) => given.has(word))];
    }),
  );
  const others = {
    text: params.get('text')?.slice(0, LONGEST_TEXT),
    hlbFrom: numberIn(params, 'hlbFrom'),
    hlbTo: numberIn(params, 'hlbTo'),
    sortBy: params.get('sortBy') ?? undefined,
    descending: params.get('descending') === 'true',
    offset: numberIn(params, 'offset'),
    limit: numberIn(params, 'limit'),
  };
  const understood = Object.entries(others).filter(
    ([name, value]) => shelfQuery.shape[name as keyof typeof others].safeParse(value).success,
  );
  return shelfQuery.parse({ ...words, ...Object.fromEntries(understood) });
}

function numberIn(params: URLSearchParams, name: string): number | undefined {
  const text = params.get(name)?.trim();
  return text ? Number(text) : undefined;
}
