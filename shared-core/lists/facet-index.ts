import { foldedWords } from '../quantities/fold';
import { textsOf, type Facet, type ListDescription, type ListEntry } from './description';
import { chosenIn, type Counts, type ListQuery } from './query';
import {
  addSlot,
  countShared,
  dropSlot,
  emptySet,
  grown,
  intersect,
  isEmpty,
  unite,
  type SlotSet,
} from './slot-set';

/** Of a filter whose words are those found, this many at most are counted: those that would leave most. */
export const MOST_FOUND_WORDS = 200;

interface Held {
  slots: SlotSet;
  /** The folded words by which it is found in a search. */
  terms: readonly string[];
}

/** For each word of each filter, the slots that carry it. */
export class FacetIndex {
  private readonly held = new Map<string, Map<string, Held>>();
  /** The folded words of all filters, in order; null when they must be gathered anew. */
  private gathered: string[] | null = null;

  constructor(
    private readonly facets: ListDescription['facets'],
    private capacity: number,
  ) {
    for (const { key, words } of facets)
      this.held.set(key, new Map((words ?? []).map((word) => [word, this.blank(word)])));
  }

  grow(capacity: number): void {
    this.capacity = capacity;
    for (const words of this.held.values())
      for (const one of words.values()) one.slots = grown(one.slots, capacity);
  }

  add(slot: number, entry: ListEntry): void {
    this.gathered = null;
    for (const facet of this.facets) {
      for (const word of textsOf(entry, facet.key)) {
        const one = this.heldFor(facet, word);
        if (one) addSlot(one.slots, slot);
      }
    }
  }

  remove(slot: number, entry: ListEntry): void {
    this.gathered = null;
    for (const { key, words } of this.facets) {
      const held = this.held.get(key)!;
      for (const word of textsOf(entry, key)) {
        const one = held.get(word);
        if (!one) continue;
        dropSlot(one.slots, slot);
        if (words === null && isEmpty(one.slots)) held.delete(word);
      }
    }
  }

  /**
   * The slots of `among` that pass every filter, and for each word how many of `among` pass all the OTHER filters
   * and carry it.
   */
  filter(query: ListQuery, among: SlotSet): { passing: SlotSet; counts: Counts } {
    const filters = this.filters(query);
    const passing = among.slice();
    for (const filter of filters.values()) intersect(passing, filter);
    const counts = this.facets.map((facet): [string, Record<string, number>] => {
      if (!filters.has(facet.key)) return [facet.key, this.count(facet, passing, [])];
      const others = among.slice();
      for (const [other, filter] of filters) if (other !== facet.key) intersect(others, filter);
      return [facet.key, this.count(facet, others, chosenIn(query, facet.key))];
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
    return this.naming(text, whole).some((slots) => !isEmpty(slots));
  }

  /** Adds the slots that carry such a filter word. */
  collect(text: string, whole: boolean, found: SlotSet): void {
    for (const slots of this.naming(text, whole)) unite(found, slots);
  }

  /** The folded words of all filters that some record carries, in order. */
  terms(): readonly string[] {
    if (this.gathered) return this.gathered;
    const carried = [...this.held.values()]
      .flatMap((words) => [...words.values()])
      .filter(({ slots }) => !isEmpty(slots));
    return (this.gathered = [...new Set(carried.flatMap(({ terms }) => terms))].sort());
  }

  private naming(text: string, whole: boolean): SlotSet[] {
    const naming: SlotSet[] = [];
    for (const words of this.held.values())
      for (const { terms, slots } of words.values())
        if (terms.some((term) => (whole ? term === text : term.startsWith(text)))) naming.push(slots);
    return naming;
  }

  private blank(word: string): Held {
    return { slots: emptySet(this.capacity), terms: [...new Set(foldedWords(word))] };
  }

  private heldFor({ key, words }: Facet, word: string): Held | undefined {
    const held = this.held.get(key)!;
    const known = held.get(word);
    if (known || words !== null || word === '') return known;
    const one = this.blank(word);
    held.set(word, one);
    return one;
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
    for (const word of words) {
      const one = this.held.get(key)?.get(word);
      if (one) unite(carrying, one.slots);
    }
    return carrying;
  }

  private count({ key, words }: Facet, among: SlotSet, chosen: readonly string[]): Record<string, number> {
    const held = [...this.held.get(key)!];
    const shared = countShared(
      among,
      held.map(([, { slots }]) => slots),
    );
    const counts = held.map(([word], i): [string, number] => [word, shared[i] ?? 0]);
    if (words !== null) return Object.fromEntries(counts);
    const most = counts
      .filter(([, count]) => count > 0)
      .sort(byCount)
      .slice(0, MOST_FOUND_WORDS);
    const kept = new Set(most.map(([word]) => word));
    const all = new Map(counts);
    for (const word of chosen) if (!kept.has(word)) most.push([word, all.get(word) ?? 0]);
    return Object.fromEntries(most);
  }
}

function byCount([a, countA]: [string, number], [b, countB]: [string, number]): number {
  return countB - countA || (a < b ? -1 : 1);
}
