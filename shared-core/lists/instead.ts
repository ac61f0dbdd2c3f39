import { foldedWords } from '../quantities/fold';
import type { ListDescription } from './description';
import { chosenIn, withChosen, withSpan, type Instead, type ListQuery } from './query';

/** Of a long text the first words only: each costs a search. */
const MOST_WORDS = 8;

const looksFor = ({ text, chosen, spans }: ListQuery): boolean =>
  foldedWords(text).length > 0 || Object.keys(chosen).length > 0 || Object.keys(spans).length > 0;

/**
 * What to take away from a query that finds nothing, or to choose besides, so that it finds something; each alone.
 * @param count how many records a query finds
 */
export function insteadOf(
  { facets, ranges }: Pick<ListDescription, 'facets' | 'ranges'>,
  query: ListQuery,
  count: (query: ListQuery) => number,
): Instead[] {
  const words = [...new Set(foldedWords(query.text))];
  const offers: [Omit<Instead, 'total'>, ListQuery][] = [];
  for (const { key, putAside } of facets)
    if (putAside && chosenIn(query, key).length === 0)
      for (const word of putAside)
        offers.push([{ kind: 'put aside', key, word } as Instead, withChosen(query, key, [word])]);
  for (const { key } of facets)
    if (chosenIn(query, key).length > 0)
      offers.push([{ kind: 'facet', key } as Instead, withChosen(query, key, [])]);
  for (const { key } of ranges)
    if (query.spans[key])
      offers.push([{ kind: 'range', key } as Instead, withSpan(query, key, { from: null, to: null })]);
  for (const word of words.slice(0, MOST_WORDS)) {
    const text = words.filter((other) => other !== word).join(' ');
    offers.push([{ kind: 'word', word } as Instead, { ...query, text }]);
  }
  return offers
    .filter(([, offered]) => looksFor(offered))
    .map(([offer, offered]) => ({ ...offer, total: count(offered) }) as Instead)
    .filter(({ total }) => total > 0);
}
