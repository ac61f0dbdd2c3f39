import type { ListDescription } from '@core/lists/description';
import { chosenIn, withChosen, withSpan, type ListQuery, type Span } from '@core/lists/query';

/** One filter in use, and the query without it. */
export interface Chip {
  key: string;
  title: string;
  says: string;
  without: ListQuery;
}

function spanWords({ from, to }: Span, number: (value: number) => string): string {
  if (from === null) return `up to ${number(to ?? 0)}`;
  return to === null ? `from ${number(from)}` : `${number(from)} to ${number(to)}`;
}

/** The filters in use, word by word. */
export function chipsOf(
  { facets, ranges }: ListDescription,
  query: ListQuery,
  number: (value: number) => string,
): Chip[] {
  const spans = ranges.flatMap(({ key, title }): Chip[] => {
    const span = query.spans[key];
    if (!span) return [];
    const without = withSpan(query, key, { from: null, to: null });
    return [{ key, title, says: spanWords(span, number), without }];
  });
  const words = facets.flatMap(({ key, title }) =>
    chosenIn(query, key).map((word): Chip => ({
      key: `${key} ${word}`,
      title,
      says: word,
      without: withChosen(
        query,
        key,
        chosenIn(query, key).filter((other) => other !== word),
      ),
    })),
  );
  return [...spans, ...words];
}
