import { FACETS, FACET_NAMES, type Facet, type ShelfAnswer, type ShelfEntry, type ShelfQuery } from './query';
import { addSlot, countShared, dropSlot, emptySet, grown, intersect, unite, type SlotSet } from './slot-set';

const NOT_ARCHIVED = FACETS.status.filter((word) => word !== 'archived');

/** The words an entry carries in a facet: none when unknown. */
export function wordsOf(entry: ShelfEntry, facet: Facet): readonly string[] {
  const held = entry[facet];
  if (held === null) return [];
  return typeof held === 'string' ? [held] : held;
}

/** The words a query lets through in a facet; null when it lets all through. */
export function allowedWords(query: ShelfQuery, facet: Facet): readonly string[] | null {
  const chosen: readonly string[] = query[facet];
  if (chosen.length > 0) return chosen;
  return facet === 'status' ? NOT_ARCHIVED : null;
}

/** For each word of each facet, the slots that carry it. */
export class FacetIndex {
  private readonly sets = new Map<Facet, Map<string, SlotSet>>();

  constructor(private capacity: number) {
    for (const facet of FACET_NAMES) {
      this.sets.set(facet, new Map(FACETS[facet].map((word) => [word, emptySet(capacity)])));
    }
  }

  grow(capacity: number): void {
    this.capacity = capacity;
    for (const words of this.sets.values()) {
      for (const [word, set] of words) words.set(word, grown(set, capacity));
    }
  }

  add(slot: number, entry: ShelfEntry): void {
    this.each(entry, (set) => addSlot(set, slot));
  }

  remove(slot: number, entry: ShelfEntry): void {
    this.each(entry, (set) => dropSlot(set, slot));
  }

  /**
   * The slots of `among` that pass every facet's filter, and for each word how many of `among` pass all the
   * OTHER facets' filters and carry it.
   */
  filter(query: ShelfQuery, among: SlotSet): { passing: SlotSet; counts: ShelfAnswer['counts'] } {
    const filters = new Map<Facet, SlotSet>();
    for (const facet of FACET_NAMES) {
      const allowed = allowedWords(query, facet);
      if (allowed) filters.set(facet, this.carrying(facet, allowed));
    }
    const passing = among.slice();
    for (const filter of filters.values()) intersect(passing, filter);
    const counts = Object.fromEntries(
      FACET_NAMES.map((facet) => {
        if (!filters.has(facet)) return [facet, this.count(facet, passing)];
        const others = among.slice();
        for (const [other, filter] of filters) if (other !== facet) intersect(others, filter);
        return [facet, this.count(facet, others)];
      }),
    ) as ShelfAnswer['counts'];
    return { passing, counts };
  }

  private carrying(facet: Facet, words: readonly string[]): SlotSet {
    const carrying = emptySet(this.capacity);
    for (const word of words) {
      const set = this.sets.get(facet)?.get(word);
      if (set) unite(carrying, set);
    }
    return carrying;
  }

  private count(facet: Facet, among: SlotSet): Record<string, number> {
    const words = this.sets.get(facet) ?? new Map<string, SlotSet>();
    const counts = countShared(among, [...words.values()]);
    return Object.fromEntries([...words.keys()].map((word, i) => [word, counts[i] ?? 0]));
  }

  private each(entry: ShelfEntry, change: (set: SlotSet) => void): void {
    for (const facet of FACET_NAMES) {
      for (const word of wordsOf(entry, facet)) {
        const set = this.sets.get(facet)?.get(word);
        if (set) change(set);
      }
    }
  }
}
