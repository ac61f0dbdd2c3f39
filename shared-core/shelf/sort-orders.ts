import type { ShelfEntry, SortKey } from './query';
import { hasSlot, type SlotSet } from './slot-set';
import { compareValues, sortValue, type SortValue } from './sort-key';

/** All slots in the order of one sort key, ties by trade name, then id; kept in order as slots come and go. */
interface Order {
  values: SortValue[];
  slots: Int32Array;
}

/** The orders in which the shelf can be walked. Each is made when first asked for and maintained from then on. */
export class SortOrders {
  private readonly orders = new Map<SortKey, Order>();
  private length = 0;

  /** `entryAt` gives the entry in a slot; `slots` are those filled at the start. */
  constructor(
    private readonly entryAt: (slot: number) => ShelfEntry,
    slots: Int32Array,
  ) {
    this.length = slots.length;
    const names: SortValue[] = [];
    for (const slot of slots) names[slot] = sortValue(entryAt(slot), 'tradeName');
    const order: Order = { values: names, slots: slots.slice() };
    this.orders.set('tradeName', order);
    order.slots.sort((a, b) => this.compare(order, a, b));
  }

  /**
   * The slots of `among` from `offset` on, at most `limit`, in order: unknowns last in both directions; among
   * equals by trade name, upwards in both.
   */
  page(key: SortKey, descending: boolean, among: SlotSet, offset: number, limit: number): number[] {
    const order = this.order(key);
    const page: number[] = [];
    let passed = 0;
    const takeFrom = (start: number, end: number): void => {
      for (let i = start; i < end && page.length < limit; i++) {
        const slot = order.slots[i]!;
        if (hasSlot(among, slot) && ++passed > offset) page.push(slot);
      }
    };
    if (!descending) {
      takeFrom(0, this.length);
      return page;
    }
    const known = this.knownIn(order);
    for (let end = known; end > 0 && page.length < limit;) {
      const start = this.startOfEquals(order, end - 1);
      takeFrom(start, end);
      end = start;
    }
    takeFrom(known, this.length);
    return page;
  }

  add(slot: number): void {
    const entry = this.entryAt(slot);
    // Ties are broken by trade name, so every slot needs its name before any order takes it in.
    this.order('tradeName').values[slot] = sortValue(entry, 'tradeName');
    for (const [key, order] of this.orders) {
      order.values[slot] = sortValue(entry, key);
      this.insert(order, slot);
    }
    this.length++;
  }

  remove(slot: number): void {
    for (const order of this.orders.values()) {
      const at = this.find(order, slot);
      order.slots.copyWithin(at, at + 1, this.length);
    }
    this.length--;
  }

  private order(key: SortKey): Order {
    const made = this.orders.get(key);
    if (made) return made;
    const byName = this.orders.get('tradeName')!;
    const values: SortValue[] = new Array<SortValue>(byName.values.length).fill(null);
    const slots = byName.slots.slice();
    for (const slot of slots.subarray(0, this.length)) values[slot] = sortValue(this.entryAt(slot), key);
    // The sort is stable, so equals stay in the order of their trade names.
    slots.subarray(0, this.length).sort((a, b) => compareValues(values[a]!, values[b]!));
    const order: Order = { values, slots };
    this.orders.set(key, order);
    return order;
  }

  private insert(order: Order, slot: number): void {
    if (this.length === order.slots.length) {
      const larger = new Int32Array(Math.max(64, order.slots.length * 2));
      larger.set(order.slots);
      order.slots = larger;
    }
    const at = this.find(order, slot);
    order.slots.copyWithin(at + 1, at, this.length);
    order.slots[at] = slot;
  }

  /** How many slots stand before the unknowns. */
  private knownIn({ values, slots }: Order): number {
    let known = this.length;
    while (known > 0 && values[slots[known - 1]!] === null) known--;
    return known;
  }

  private startOfEquals({ values, slots }: Order, position: number): number {
    const value = values[slots[position]!];
    let start = position;
    while (start > 0 && values[slots[start - 1]!] === value) start--;
    return start;
  }

  /** Where a slot stands in an order, or would stand. */
  private find(order: Order, slot: number): number {
    let low = 0;
    let high = this.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.compare(order, order.slots[middle]!, slot) < 0) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private compare(order: Order, a: number, b: number): number {
    const byValue = compareValues(order.values[a]!, order.values[b]!);
    if (byValue !== 0) return byValue;
    const names = this.orders.get('tradeName')!.values;
    const byName = compareValues(names[a]!, names[b]!);
    return byName !== 0 ? byName : compareValues(this.entryAt(a).id, this.entryAt(b).id);
  }
}
