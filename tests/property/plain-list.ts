import {
  held,
  TIERS,
  textsOf,
  type ListDescription,
  type ListEntry,
  type Tier,
} from '@core/lists/description';
import { MOST_FOUND_WORDS } from '@core/lists/found-words';
import { slipsAllowed } from '@core/lists/nearest-words';
import type { Correction, Instead, ListPage, ListQuery } from '@core/lists/query';
import { compareValues, sortValue } from '@core/lists/sort-key';
import type { Synonyms } from '@core/lists/text-search';
import { otherForms } from '@core/lists/word-forms';
import { foldedWords } from '@core/quantities/fold';

/** How far two words are apart, by the plain table (optimal string alignment). */
export function slipsBetween(a: string, b: string): number {
  const d = Array.from({ length: a.length + 1 }, (_, i) => [i, ...Array<number>(b.length).fill(0)]);
  for (let j = 0; j <= b.length; j++) d[0]![j] = j;
  for (let i = 1; i <= a.length; i++)
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(d[i - 1]![j]! + 1, d[i]![j - 1]! + 1, d[i - 1]![j - 1]! + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, d[i - 2]![j - 2]! + 1);
      d[i]![j] = least;
    }
  return d[a.length]![b.length]!;
}

/** How far what was typed is from the nearest beginning of a word. */
export function slipsToBeginning(typed: string, word: string): number {
  return Math.min(
    ...Array.from({ length: word.length + 1 }, (_, n) => slipsBetween(typed, word.slice(0, n))),
  );
}

/** A list that prepares nothing: every answer comes from a look at every record. */
export class PlainList<Entry extends ListEntry> {
  constructor(
    private readonly description: ListDescription,
    private readonly entries: Entry[],
    private readonly synonyms: Synonyms,
  ) {}

  private readonly known = new Map<string, string[]>();
  private wordsOf(entry: Entry, deepest: Tier): string[] {
    const key = `${entry.id} ${deepest}`;
    const words = this.known.get(key) ?? this.readWords(entry, deepest);
    this.known.set(key, words);
    return words;
  }

  private readWords(entry: Entry, deepest: Tier): string[] {
    const { texts, code, facets } = this.description;
    return TIERS.slice(0, TIERS.indexOf(deepest) + 1).flatMap((tier) => [
      ...texts[tier].flatMap((key) => textsOf(entry, key)).flatMap(foldedWords),
      ...(tier === 'names' && code ? [foldedWords(textsOf(entry, code).join(' ')).join('')] : []),
      ...(tier === 'shown'
        ? facets.flatMap(({ key, words }) =>
            textsOf(entry, key)
              .filter((word) => (words ? words.includes(word) : word !== ''))
              .flatMap(foldedWords),
          )
        : []),
    ]);
  }

  private meets(words: readonly string[], term: string, whole: boolean): boolean {
    return words.some((word) => (whole ? word === term : word.startsWith(term)));
  }

  private meetsWord(words: readonly string[], typed: string): boolean {
    return this.meets(words, typed, false) || otherForms(typed).some((form) => this.meets(words, form, true));
  }

  private meetsPhrase(words: readonly string[], phrase: string): boolean {
    return this.synonyms(phrase).some((name) =>
      foldedWords(name).every((part) => this.meets(words, part, true)),
    );
  }

  corrections(text: string): Correction[] {
    const typed = [...new Set(foldedWords(text))];
    const all = this.entries.map((entry) => this.wordsOf(entry, 'unshown'));
    const everything = all.flat();
    const standsPhrase = (phrase: string): boolean =>
      this.synonyms(phrase).some((name) =>
        foldedWords(name).every((part) => this.meets(everything, part, true)),
      );
    return typed.flatMap((word, at) => {
      if (this.meetsWord(everything, word)) return [];
      for (let from = Math.max(0, at - 3); from <= at; from++)
        for (let to = at + 1; to <= Math.min(typed.length, from + 4); to++)
          if (standsPhrase(typed.slice(from, to).join(' '))) return [];
      const near = [...new Set(everything)]
        .filter((known) => known !== '' && !/\p{N}/u.test(known))
        .map((known) => ({ known, slips: slipsToBeginning(word, known) }));
      const least = Math.min(...near.map(({ slips }) => slips));
      if (least > slipsAllowed(word)) return [];
      return [{ typed: word, meant: near.filter(({ slips }) => slips === least).map(({ known }) => known) }];
    });
  }

  answersText(entry: Entry, text: string, deepest: Tier, corrections: Correction[]): boolean {
    const typed = [...new Set(foldedWords(text))];
    const words = this.wordsOf(entry, deepest);
    const from = (at: number): boolean => {
      if (at === typed.length) return true;
      const meant = corrections.find((one) => one.typed === typed[at])?.meant ?? [];
      const single = this.meetsWord(words, typed[at]!) || meant.some((one) => this.meets(words, one, true));
      if (single && from(at + 1)) return true;
      for (let count = 1; count <= 4 && at + count <= typed.length; count++)
        if (this.meetsPhrase(words, typed.slice(at, at + count).join(' ')) && from(at + count)) return true;
      return false;
    };
    return from(0);
  }

  passesFacet(entry: Entry, query: ListQuery, { key, putAside }: ListDescription['facets'][number]): boolean {
    const chosen = query.chosen[key] ?? [];
    const words = textsOf(entry, key);
    if (chosen.length > 0) return words.some((word) => chosen.includes(word));
    return !words.some((word) => putAside?.includes(word));
  }

  private passes(entry: Entry, query: ListQuery, corrections: Correction[], ignored: string | null): boolean {
    const facets = this.description.facets;
    return (
      this.answersText(entry, query.text, 'unshown', corrections) &&
      Object.entries(query.spans).every(([key, { from, to }]) => {
        const value = held(entry, key);
        return typeof value === 'number' && value >= (from ?? -Infinity) && value <= (to ?? Infinity);
      }) &&
      facets.every((facet) => facet.key === ignored || this.passesFacet(entry, query, facet))
    );
  }

  ordered(entries: readonly Entry[], sortBy: string, descending: boolean): Entry[] {
    const valueOf = (entry: Entry, key: string) =>
      sortValue(
        this.description,
        this.description.sorts.find((sort) => sort.key === key)!,
        entry,
      );
    return entries
      .map((entry) => ({ entry, x: valueOf(entry, sortBy), name: valueOf(entry, this.description.name) }))
      .sort((a, b) => {
        const byValue = compareValues(a.x, b.x) * (descending && a.x !== null && b.x !== null ? -1 : 1);
        return byValue || compareValues(a.name, b.name) || compareValues(a.entry.id, b.entry.id);
      })
      .map(({ entry }) => entry);
  }

  search(query: ListQuery): ListPage<Entry> {
    const corrections = this.corrections(query.text);
    const count = (other: ListQuery): number => {
      const meant = this.corrections(other.text);
      return this.entries.filter((entry) => this.passes(entry, other, meant, null)).length;
    };
    const found = this.entries.filter((entry) => this.passes(entry, query, corrections, null));
    const counts = this.description.facets.map(({ key, words }) => {
      const left = this.entries.filter((entry) => this.passes(entry, query, corrections, key));
      const known = words ?? [...new Set(left.flatMap((entry) => textsOf(entry, key)))];
      const counted = known
        .filter((word) => word !== '')
        .map((word): [string, number] => [
          word,
          left.filter((entry) => textsOf(entry, key).includes(word)).length,
        ]);
      if (words) return [key, Object.fromEntries(counted)] as const;
      if (counted.length > MOST_FOUND_WORDS) throw new Error('Too many words for this plain count.');
      const missing = (query.chosen[key] ?? []).filter((word) => !known.includes(word));
      return [key, Object.fromEntries([...counted, ...missing.map((word) => [word, 0] as const)])] as const;
    });
    return {
      total: found.length,
      offset: query.offset,
      rows: this.ordered(found, query.sortBy, query.descending).slice(
        query.offset,
        query.offset + query.limit,
      ),
      counts: Object.fromEntries(counts),
      corrections,
      instead: found.length === 0 ? this.instead(query, count) : [],
      held: this.entries.length,
    };
  }

  private instead(query: ListQuery, count: (query: ListQuery) => number): Instead[] {
    const { facets, ranges } = this.description;
    const words = [...new Set(foldedWords(query.text))];
    const without = <T>(from: Readonly<Record<string, T>>, key: string): Record<string, T> =>
      Object.fromEntries(Object.entries(from).filter(([other]) => other !== key));
    const offers: Instead[] = [];
    const offer = (instead: Record<string, string>, changed: Partial<ListQuery>): void => {
      const other = { ...query, ...changed };
      const looks = foldedWords(other.text).length + Object.keys({ ...other.chosen, ...other.spans }).length;
      const total = count(other);
      if (looks > 0 && total > 0) offers.push({ ...instead, total } as Instead);
    };
    for (const { key, putAside = [] } of facets)
      if (!query.chosen[key])
        for (const word of putAside)
          offer({ kind: 'put aside', key, word }, { chosen: { ...query.chosen, [key]: [word] } });
    for (const { key } of facets)
      if (query.chosen[key]) offer({ kind: 'facet', key }, { chosen: without(query.chosen, key) });
    for (const { key } of ranges)
      if (query.spans[key]) offer({ kind: 'range', key }, { spans: without(query.spans, key) });
    for (const word of words)
      offer({ kind: 'word', word }, { text: words.filter((other) => other !== word).join(' ') });
    return offers;
  }
}
