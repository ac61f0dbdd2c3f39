import type { Facet } from '@core/lists/description';

/** Of words that are found, not given, this many are shown before more are asked for. */
const FIRST = 12;

/**
 * The words of a filter, those that would leave something first to be seen; the others wait folded away. Given words
 * keep their order; found ones go by how many they leave.
 */
export function wordsInSight(
  { words }: Pick<Facet, 'words'>,
  chosen: readonly string[],
  counts: Readonly<Record<string, number>> | null,
): { shown: string[]; folded: string[] } {
  if (words) {
    if (!counts) return { shown: [...words], folded: [] };
    const serves = (word: string): boolean => (counts[word] ?? 0) > 0 || chosen.includes(word);
    return { shown: words.filter(serves), folded: words.filter((word) => !serves(word)) };
  }
  const found = Object.entries(counts ?? {})
    .sort(([a, countA], [b, countB]) => countB - countA || a.localeCompare(b))
    .map(([word]) => word);
  const first = found.filter((word, at) => at < FIRST || chosen.includes(word));
  return { shown: first, folded: found.filter((word) => !first.includes(word)) };
}
