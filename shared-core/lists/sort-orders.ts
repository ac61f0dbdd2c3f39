import type { ListDescription, ListEntry } from './description';
import { hasSlot, slotsIn, type SlotSet } from './slot-set';
import { endOf, sortInSteps, STEP } from './sort-in-steps';
import { compareValues, sortValue, type SortValue } from './sort-key';

/** Up to this many matches are sorted by themselves. */
const FEW = 256;

/** All slots in the order of one sort key, ties by name, then id; kept in order as slots come and go. */
interface Order {
  values: SortValue[];
  slots: Int32Array;
}

/** The orders in which a list can be walked. Each is made when first asked for and maintained from then on. */
export class SortOrders {
  private readonly orders = new Map<string, Order>();
  private length = 0;

  private readonly byName: Order = { values: [], slots: new Int32Array() };

  /** `entryAt` gives the entry in a slot. */
  constructor(
    private readonly description: Pick<ListDescription, 'name' | 'facets' | 'sorts'>,
    private readonly entryAt: (slot: number) => ListEntry,
  ) {
    this.orders.set(description.name, this.byName);
  }

  /** Notes a slot that is filled at the start; `begin` follows on the last, and before that nothing can be asked. */
  note(slot: number): void {
    this.byName.values[slot] = this.value(this.description.name, this.entryAt(slot));
  }

  /** Puts the slots that were noted in order, a bit at each step. */
  *begin(firstSort: string): Generator<void, void> {
    const slots = Int32Array.from(this.byName.values.keys());
    yield* sortInSteps<number, Int32Array>(slots, (a, b) => this.compare(this.byName, a, b));
    this.byName.slots = slots;
    this.length = slots.length;
    if (firstSort !== this.description.name) yield* this.make(firstSort);
  }

  /**
   * The slots of `among` (`total` of them) from `offset` on, at most `limit`, in order: unknowns last in both
   * directions; among equals by name, upwards in both.
   */
  page(
    key: string,
    descending: boolean,
    among: SlotSet,
    total: number,
    offset: number,
    limit: number,
  ): number[] {
    const order = this.order(key);
    const end = Math.min(offset + limit, total);
    if (offset >= end) return [];
    // A few are sorted sooner than the whole order is walked to meet them.
    const found =
      total <= FEW
        ? slotsIn(among).sort((a, b) => this.compare(order, a, b, descending))
        : descending
          ? this.walkDown(order, among, end)
          : this.walkUp(order, among, end, 0);
    return found.slice(offset, end);
  }

  /** The first `wanted` slots of `among` in the order, from a position on. */
  private walkUp({ slots }: Order, among: SlotSet, wanted: number, from: number): number[] {
    const found: number[] = [];
    for (let i = from; i < this.length && found.length < wanted; i++) {
      const slot = slots[i]!;
      if (hasSlot(among, slot)) found.push(slot);
    }
    return found;
  }

  /** The first `wanted` slots of `among` from the highest value down, runs of equals kept upwards. */
  private walkDown(order: Order, among: SlotSet, wanted: number): number[] {
    const { slots, values } = order;
    const known = this.knownIn(order);
    const found: number[] = [];
    let run: number[] = [];
    const closeRun = (): void => {
      for (let i = run.length - 1; i >= 0; i--) found.push(run[i]!);
      run = [];
    };
    for (let i = known - 1; i >= 0; i--) {
      const slot = slots[i]!;
      if (!hasSlot(among, slot)) continue;
      if (run.length > 0 && values[slot] !== values[run[0]!]) closeRun();
      if (found.length >= wanted) return found;
      run.push(slot);
    }
    closeRun();
    return found.concat(this.walkUp(order, among, wanted - found.length, known));
  }

  add(slot: number): void {
    const entry = this.entryAt(slot);
    // Ties are broken by name, so every slot needs its name before any order takes it in.
    this.byName.values[slot] = this.value(this.description.name, entry);
    for (const [key, order] of this.orders) {
      order.values[slot] = this.value(key, entry);
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

  private order(key: string): Order {
    return this.orders.get(key) ?? endOf(this.make(key));
  }

  private *make(key: string): Generator<void, Order> {
    const { byName } = this;
    const values: SortValue[] = new Array<SortValue>(byName.values.length).fill(null);
    const slots = byName.slots.slice();
    const filled = slots.subarray(0, this.length);
    for (const [at, slot] of filled.entries()) {
      values[slot] = this.value(key, this.entryAt(slot));
      if (at % STEP === 0) yield;
    }
    // The sort is stable, so equals stay in the order of their names.
    const sorted = filled.slice();
    yield* sortInSteps<number, Int32Array>(sorted, (a, b) => compareValues(values[a]!, values[b]!));
    filled.set(sorted);
    const order: Order = { values, slots };
    this.orders.set(key, order);
    return order;
  }

  private value(key: string, entry: ListEntry): SortValue {
    const sort = this.description.sorts.find((known) => known.key === key);
    if (!sort) throw new Error(`Nothing is sorted by “${key}”.`);
    return sortValue(this.description, sort, entry);
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
    let low = 0;
    let high = this.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (values[slots[middle]!] === null) high = middle;
      else low = middle + 1;
    }
    return low;
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

  private compare(order: Order, a: number, b: number, descending = false): number {
    const byValue = compareValues(order.values[a]!, order.values[b]!, descending);
    if (byValue !== 0) return byValue;
    const names = this.byName.values;
    const byName = compareValues(names[a]!, names[b]!);
    return byName !== 0 ? byName : compareValues(this.entryAt(a).id, this.entryAt(b).id);
  }
}
