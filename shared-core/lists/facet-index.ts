import { textsOf, type Facet, type ListDescription, type ListEntry } from './description';
import type { FacetTerm, FacetWords } from './facet-words';
import { FoundWords } from './found-words';
import { firstAtOrAfter } from './in-order';
import { KnownWords } from './known-words';
import { holdsFigure } from './nearest-words';
import { chosenIn, type Counts, type ListQuery } from './query';
import { emptySet, intersect, type SlotSet } from './slot-set';

/** For each word of each filter, the slots that carry it. */
export class FacetIndex {
  private readonly words: ReadonlyMap<string, FacetWords>;
  /** The folded words of all filters, in order, and the editions that they are of. */
  private terms: { of: string; inOrder: readonly FacetTerm[] } | null = null;
  /** Those that some record carries, without a figure; null when they must be gathered anew. */
  private letters: string[] | null = null;

  constructor(
    private readonly facets: ListDescription['facets'],
    private capacity: number,
  ) {
    this.words = new Map(
      facets.map(({ key, words }) => [key, words ? new KnownWords(words, capacity) : new FoundWords()]),
    );
  }

  grow(capacity: number): void {
    this.capacity = capacity;
    for (const words of this.words.values()) words.grow(capacity);
  }

  add(slot: number, entry: ListEntry): void {
    this.letters = null;
    for (const [key, words] of this.words) words.add(slot, textsOf(entry, key));
  }

  remove(slot: number, entry: ListEntry): void {
    this.letters = null;
    for (const [key, words] of this.words) words.remove(slot, textsOf(entry, key));
  }

  /** The slots of `among` that pass every filter. */
  passing(query: ListQuery, among: SlotSet): SlotSet {
    const passing = among.slice();
    for (const filter of this.filters(query).values()) intersect(passing, filter);
    return passing;
  }

  /**
   * The slots of `among` that pass every filter, and for each word how many of `among` pass all the OTHER filters
   * and carry it.
   */
  filter(query: ListQuery, among: SlotSet): { passing: SlotSet; counts: Counts } {
    const filters = this.filters(query);
    const passing = among.slice();
    for (const filter of filters.values()) intersect(passing, filter);
    const counts = [...this.words].map(([key, words]): [string, Record<string, number>] => {
      if (!filters.has(key)) return [key, words.count(passing, [])];
      const others = among.slice();
      for (const [other, filter] of filters) if (other !== key) intersect(others, filter);
      return [key, words.count(others, chosenIn(query, key))];
    });
    return { passing, counts: Object.fromEntries(counts) };
  }

  /** Takes out of `among` the slots that carry a word put aside, in whatever filter. */
  withoutPutAside(among: SlotSet): SlotSet {
    const left = among.slice();
    for (const facet of this.facets) {
      const seen = this.inSight(facet);
      if (seen) intersect(left, seen);
    }
    return left;
  }

  /** Whether a record carries a filter word that holds a word with this beginning; `whole`: this very word. */
  has(text: string, whole: boolean): boolean {
    return this.naming(text, whole).some((term) => !term.isEmpty());
  }

  /** Adds the slots that carry such a filter word. */
  collect(text: string, whole: boolean, found: SlotSet): void {
    for (const term of this.naming(text, whole)) term.addTo(found);
  }

  /** The folded words without a figure of all filters that some record carries, in order. */
  lettered(): readonly string[] {
    if (this.letters) return this.letters;
    const carried = this.inOrder().filter((term) => !holdsFigure(term.text) && !term.isEmpty());
    return (this.letters = [...new Set(carried.map(({ text }) => text))]);
  }

  private inOrder(): readonly FacetTerm[] {
    const all = [...this.words.values()];
    const of = all.map(({ edition }) => edition).join(' ');
    if (this.terms?.of === of) return this.terms.inOrder;
    const inOrder = all
      .flatMap((words) => words.terms())
      .sort((a, b) => (a.text < b.text ? -1 : a.text > b.text ? 1 : 0));
    this.terms = { of, inOrder };
    return inOrder;
  }

  private naming(text: string, whole: boolean): readonly FacetTerm[] {
    const terms = this.inOrder();
    const from = firstAtOrAfter(terms, text, (term) => term.text);
    let to = from;
    while (to < terms.length && (whole ? terms[to]!.text === text : terms[to]!.text.startsWith(text))) to++;
    return terms.slice(from, to);
  }

  /** What each filter in use lets through. */
  private filters(query: ListQuery): Map<string, SlotSet> {
    const filters = new Map<string, SlotSet>();
    for (const facet of this.facets) {
      const chosen = chosenIn(query, facet.key);
      const filter = chosen.length > 0 ? this.carrying(facet.key, chosen) : this.inSight(facet);
      if (filter) filters.set(facet.key, filter);
    }
    return filters;
  }

  /** The slots that no word of a filter puts aside; null when it puts none aside. */
  private inSight({ key, putAside }: Facet): SlotSet | null {
    if (!putAside) return null;
    const seen = this.carrying(key, putAside);
    for (let i = 0; i < seen.length; i++) seen[i] = ~seen[i]!;
    return seen;
  }

  private carrying(key: string, words: readonly string[]): SlotSet {
    const carrying = emptySet(this.capacity);
    for (const word of words) this.words.get(key)?.addTo(carrying, word);
    return carrying;
  }
}
