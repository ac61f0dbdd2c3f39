import { foldedWords } from '../quantities/fold';
import { TIERS, textsOf, type KeyOf, type ListDescription, type ListEntry, type Tier } from './description';
import { FacetIndex } from './facet-index';
import { insteadOf } from './instead';
import { NameIndex, plainCode } from './name-index';
import type { ListPage, ListQuery } from './query';
import { RangeIndex } from './range-index';
import { addSlot, countIn, dropSlot, emptySet, grown, subtract, type SlotSet } from './slot-set';
import { endOf } from './sort-in-steps';
import { SortOrders } from './sort-orders';
import { TextSearch, type ReadText, type Synonyms } from './text-search';
import { WordIndex } from './word-index';

/**
 * How a record is what was typed: by its code, the beginning of its name, the beginning of another of its names, a word
 * of its names, what it shows, or its notes.
 */
export const NEARNESS = ['code', 'name', 'other name', 'names', 'shown', 'unshown'] as const;
export type Nearness = (typeof NEARNESS)[number];

/** A record found by typing. */
export interface Match<Entry> {
  entry: Entry;
  near: Nearness;
  /** Whether it stays out of its list until asked for, such as what is archived. */
  putAside: boolean;
}

/** A list held ready for searching: every keystroke is answered from here, not from the file. */
export interface ListIndex<Entry extends ListEntry> {
  readonly size: number;
  get(id: string): Entry | undefined;
  entries(): Iterable<Entry>;
  /** Takes an entry in, in place of an earlier one of the same id. */
  put(entry: Entry): void;
  /** Takes an entry away; false when there was none. */
  remove(id: string): boolean;
  /** What matches, one page of it in the order asked for, and what every word of every filter would leave. */
  search(query: ListQuery): ListPage<Entry>;
  /** The records that a text means, nearest first; those put aside come last. None for a text without a word. */
  best(text: string, limit: number): Match<Entry>[];
}

/** A list that is being filled. */
export interface ListFilling<Entry extends ListEntry> {
  /** Takes in some of the entries; each id once in all. */
  take(entries: readonly Entry[]): void;
  /** Puts what was taken in order, a bit at each step, and gives the list. */
  finish(): Generator<void, ListIndex<Entry>>;
}

/** Builds the list of a noun bit by bit, for a process that has to answer in between. */
export function fillListIndex<Entry extends ListEntry>(
  description: ListDescription<KeyOf<Entry>>,
  synonyms: Synonyms = () => [],
): ListFilling<Entry> {
  return new SlotIndex(description, synonyms);
}

/** Builds the list of a noun; of two entries with the same id the later one stands. */
export function createListIndex<Entry extends ListEntry>(
  description: ListDescription<KeyOf<Entry>>,
  entries: Iterable<Entry>,
  synonyms: Synonyms = () => [],
): ListIndex<Entry> {
  const filling = fillListIndex(description, synonyms);
  filling.take([...new Map([...entries].map((entry) => [entry.id, entry])).values()]);
  return endOf(filling.finish());
}

class SlotIndex<Entry extends ListEntry> implements ListIndex<Entry>, ListFilling<Entry> {
  private readonly held: (Entry | undefined)[] = [];
  private readonly slotOf = new Map<string, number>();
  /** Slots given up by removed entries, to be filled again first. */
  private readonly free: number[] = [];
  private readonly words: Record<Tier, WordIndex> = {
    names: new WordIndex(),
    shown: new WordIndex(),
    unshown: new WordIndex(),
  };
  private readonly names: NameIndex;
  private readonly facets: FacetIndex;
  private readonly ranges: RangeIndex;
  private readonly texts: TextSearch;
  private readonly orders: SortOrders;
  private filled: SlotSet;
  private capacity = 1024;

  constructor(
    private readonly description: ListDescription<KeyOf<Entry>>,
    synonyms: Synonyms,
  ) {
    this.filled = emptySet(this.capacity);
    this.names = new NameIndex(description);
    this.facets = new FacetIndex(description.facets, this.capacity);
    this.ranges = new RangeIndex(description.ranges, this.capacity);
    this.texts = new TextSearch(this.words, this.facets, synonyms);
    this.orders = new SortOrders(description, (slot) => this.entryAt(slot));
  }

  take(entries: readonly Entry[]): void {
    for (const entry of entries) {
      const slot = this.held.length;
      if (slot >= this.capacity) this.grow();
      this.held.push(entry);
      this.slotOf.set(entry.id, slot);
      this.index(slot, entry);
      this.orders.note(slot);
    }
  }

  *finish(): Generator<void, ListIndex<Entry>> {
    for (const tier of TIERS) yield* this.words[tier].settleInSteps();
    yield* this.orders.begin(this.description.firstSort.key);
    return this;
  }

  get size(): number {
    return this.slotOf.size;
  }

  get(id: string): Entry | undefined {
    const slot = this.slotOf.get(id);
    return slot === undefined ? undefined : this.held[slot];
  }

  entries(): Iterable<Entry> {
    return this.held.filter((entry) => entry !== undefined);
  }

  put(entry: Entry): void {
    this.remove(entry.id);
    const slot = this.free.pop() ?? this.held.length;
    if (slot >= this.capacity) this.grow();
    this.held[slot] = entry;
    this.slotOf.set(entry.id, slot);
    this.index(slot, entry);
    this.orders.add(slot);
  }

  remove(id: string): boolean {
    const slot = this.slotOf.get(id);
    if (slot === undefined) return false;
    const entry = this.entryAt(slot);
    this.orders.remove(slot);
    for (const tier of TIERS) this.words[tier].remove(slot, this.searched(entry, tier));
    this.texts.changed();
    this.names.remove(slot, entry);
    this.facets.remove(slot, entry);
    this.ranges.remove(slot);
    dropSlot(this.filled, slot);
    this.slotOf.delete(id);
    this.held[slot] = undefined;
    this.free.push(slot);
    return true;
  }

  search(query: ListQuery): ListPage<Entry> {
    const read = this.texts.read(query.text);
    const { passing, counts } = this.facets.filter(query, this.named(query, read));
    const total = countIn(passing);
    const { sortBy, descending, offset, limit } = query;
    const slots = this.orders.page(sortBy, descending, passing, total, offset, limit);
    const count = (other: ListQuery): number => {
      const text = other.text === query.text ? read : this.texts.read(other.text);
      return countIn(this.facets.passing(other, this.named(other, text)));
    };
    return {
      total,
      offset,
      rows: slots.map((slot) => this.entryAt(slot)),
      counts,
      corrections: read?.corrections ?? [],
      instead: total === 0 ? insteadOf(this.description, query, count) : [],
      held: this.slotOf.size,
    };
  }

  best(text: string, limit: number): Match<Entry>[] {
    const read = this.texts.read(text);
    if (!read) return [];
    const sets = this.byNearness(text, read);
    const found: Match<Entry>[] = [];
    const { key, descending } = this.description.firstSort;
    for (const putAside of [false, true]) {
      sets.forEach((set, at) => {
        const seen = this.facets.withoutPutAside(set);
        const among = putAside ? set.slice() : seen;
        if (putAside) subtract(among, seen);
        const slots = this.orders.page(key, descending, among, countIn(among), 0, limit - found.length);
        for (const slot of slots) found.push({ entry: this.entryAt(slot), near: NEARNESS[at]!, putAside });
      });
    }
    return found;
  }

  /** For each nearness the slots that are no nearer. */
  private byNearness(text: string, read: ReadText): SlotSet[] {
    const { capacity } = this;
    const [names, shown, unshown] = TIERS.map((tier) => this.texts.find(read, tier, capacity));
    const sets = [
      this.names.ofCode(text, capacity),
      this.names.beginning(text, 'name', names!, capacity),
      this.names.beginning(text, 'other names', names!, capacity),
      names!,
      shown!,
      unshown!,
    ];
    const nearer = emptySet(capacity);
    return sets.map((set) => {
      const only = set.slice();
      subtract(only, nearer);
      for (let i = 0; i < nearer.length; i++) nearer[i]! |= set[i]!;
      return only;
    });
  }

  /** The slots that the text of a query names and its ranges let through. */
  private named(query: ListQuery, read: ReadText | null): SlotSet {
    const among = read ? this.texts.find(read, 'unshown', this.capacity) : this.filled.slice();
    this.ranges.filter(query, among);
    return among;
  }

  /** The folded words by which an entry is found in a tier; a code also as it is typed from memory. */
  private searched(entry: Entry, tier: Tier): string[] {
    const { texts, code } = this.description;
    const words = foldedWords(texts[tier].flatMap((key) => textsOf(entry, key)).join('\n'));
    if (tier === 'names' && code !== null) words.push(plainCode(textsOf(entry, code).join(' ')));
    return words.filter((word) => word !== '');
  }

  private index(slot: number, entry: Entry): void {
    addSlot(this.filled, slot);
    for (const tier of TIERS) this.words[tier].add(slot, this.searched(entry, tier));
    this.texts.changed();
    this.names.add(slot, entry);
    this.facets.add(slot, entry);
    this.ranges.add(slot, entry);
  }

  private grow(): void {
    this.capacity *= 2;
    this.filled = grown(this.filled, this.capacity);
    this.facets.grow(this.capacity);
    this.ranges.grow(this.capacity);
  }

  private entryAt(slot: number): Entry {
    const entry = this.held[slot];
    if (!entry) throw new Error(`No record is in slot ${slot}.`);
    return entry;
  }
}
