import { foldedWords } from '../quantities/fold';
import { FacetIndex } from './facet-index';
import type { ShelfAnswer, ShelfEntry, ShelfQuery, ShelfRow } from './query';
import { addSlot, countIn, dropSlot, emptySet, grown, hasSlot, intersect, type SlotSet } from './slot-set';
import { SortOrders } from './sort-orders';
import { WordIndex } from './word-index';

/** The materials list held ready for searching: every keystroke is answered from here, not from the file. */
export interface Shelf {
  readonly size: number;
  get(id: string): ShelfEntry | undefined;
  /** Takes an entry in, in place of an earlier one of the same id. */
  put(entry: ShelfEntry): void;
  /** Takes an entry away; false when there was none. */
  remove(id: string): boolean;
  /** What matches, one page of it in the order asked for, and what every word of every facet would leave. */
  search(query: ShelfQuery): ShelfAnswer;
}

/** Builds a shelf from entries; of two with the same id the later one stands. */
export function createShelf(entries: Iterable<ShelfEntry>): Shelf {
  return new IndexedShelf(entries);
}

function searchedWords(entry: ShelfEntry): string[] {
  const texts = [entry.tradeName, entry.code, entry.inci, entry.supplier, ...entry.suppliers, entry.notes];
  return foldedWords(texts.join('\n'));
}

function row(entry: ShelfEntry): ShelfRow {
  const shown: ShelfRow & Partial<ShelfEntry> = { ...entry };
  delete shown.notes;
  delete shown.suppliers;
  return shown;
}

class IndexedShelf implements Shelf {
  private readonly entries: (ShelfEntry | undefined)[] = [];
  private readonly slotOf = new Map<string, number>();
  /** Slots given up by removed entries, to be filled again first. */
  private readonly free: number[] = [];
  private readonly words = new WordIndex();
  private readonly facets: FacetIndex;
  private readonly orders: SortOrders;
  private filled: SlotSet;
  /** NaN where the HLB is unknown, so that no range takes it in. */
  private hlb: Float64Array;
  private capacity: number;
  /** Taken in but not indexed yet: whoever saves an edit need not wait for what the next search will need. */
  private readonly waiting = new Map<string, ShelfEntry>();

  constructor(entries: Iterable<ShelfEntry>) {
    for (const entry of entries) {
      const slot = this.slotOf.get(entry.id) ?? this.entries.length;
      this.entries[slot] = entry;
      this.slotOf.set(entry.id, slot);
    }
    this.capacity = Math.max(1024, this.entries.length);
    this.filled = emptySet(this.capacity);
    this.hlb = new Float64Array(this.capacity);
    this.facets = new FacetIndex(this.capacity);
    const slots = Int32Array.from(this.entries.keys());
    for (const slot of slots) this.index(slot, this.entryAt(slot));
    this.orders = new SortOrders((slot) => this.entryAt(slot), slots);
  }

  get size(): number {
    this.settle();
    return this.slotOf.size;
  }

  get(id: string): ShelfEntry | undefined {
    const entry = this.waiting.get(id);
    if (entry) return entry;
    const slot = this.slotOf.get(id);
    return slot === undefined ? undefined : this.entries[slot];
  }

  put(entry: ShelfEntry): void {
    this.waiting.set(entry.id, entry);
  }

  remove(id: string): boolean {
    this.settle();
    return this.takeOut(id);
  }

  search(query: ShelfQuery): ShelfAnswer {
    this.settle();
    const among = this.words.find(query.text, this.capacity) ?? this.filled.slice();
    if (query.hlbFrom !== null || query.hlbTo !== null) {
      intersect(among, this.withHlb(query.hlbFrom ?? -Infinity, query.hlbTo ?? Infinity));
    }
    const { passing, counts } = this.facets.filter(query, among);
    const { sortBy, descending, offset, limit } = query;
    const total = countIn(passing);
    const slots = this.orders.page(sortBy, descending, passing, total, offset, limit);
    return {
      total,
      offset,
      rows: slots.map((slot) => row(this.entryAt(slot))),
      counts,
    };
  }

  /** Indexes what is waiting. */
  private settle(): void {
    for (const entry of this.waiting.values()) this.takeIn(entry);
    this.waiting.clear();
  }

  private takeIn(entry: ShelfEntry): void {
    this.takeOut(entry.id);
    const slot = this.free.pop() ?? this.entries.length;
    if (slot >= this.capacity) this.grow();
    this.entries[slot] = entry;
    this.slotOf.set(entry.id, slot);
    this.index(slot, entry);
    this.orders.add(slot);
  }

  private takeOut(id: string): boolean {
    const slot = this.slotOf.get(id);
    if (slot === undefined) return false;
    const entry = this.entryAt(slot);
    this.orders.remove(slot);
    this.words.remove(slot, searchedWords(entry));
    this.facets.remove(slot, entry);
    dropSlot(this.filled, slot);
    this.slotOf.delete(id);
    this.entries[slot] = undefined;
    this.free.push(slot);
    return true;
  }

  private index(slot: number, entry: ShelfEntry): void {
    addSlot(this.filled, slot);
    this.hlb[slot] = entry.hlb ?? NaN;
    this.words.add(slot, searchedWords(entry));
    this.facets.add(slot, entry);
  }

  /** The filled slots whose HLB is known and within the range, ends included. */
  private withHlb(from: number, to: number): SlotSet {
    const within = emptySet(this.capacity);
    for (let slot = 0; slot < this.entries.length; slot++) {
      const hlb = this.hlb[slot]!;
      if (hlb >= from && hlb <= to && hasSlot(this.filled, slot)) addSlot(within, slot);
    }
    return within;
  }

  private grow(): void {
    this.capacity *= 2;
    this.filled = grown(this.filled, this.capacity);
    const hlb = new Float64Array(this.capacity);
    hlb.set(this.hlb);
    this.hlb = hlb;
    this.facets.grow(this.capacity);
  }

  private entryAt(slot: number): ShelfEntry {
    const entry = this.entries[slot];
    if (!entry) throw new Error(`No material stands in slot ${slot}.`);
    return entry;
  }
}
