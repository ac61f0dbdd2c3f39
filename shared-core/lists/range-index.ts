import { held, type ListDescription, type ListEntry } from './description';
import type { ListQuery, Span } from './query';
import { addSlot, emptySet, intersect, type SlotSet } from './slot-set';

/** The numbers that lists are narrowed down by. */
export class RangeIndex {
  /** NaN where a number is not known, and where there is no record: no range takes it in. */
  private readonly values = new Map<string, Float64Array>();

  constructor(
    ranges: ListDescription['ranges'],
    private capacity: number,
  ) {
    for (const { key } of ranges) this.values.set(key, new Float64Array(capacity).fill(NaN));
  }

  grow(capacity: number): void {
    this.capacity = capacity;
    for (const [key, values] of this.values) {
      const larger = new Float64Array(capacity).fill(NaN);
      larger.set(values);
      this.values.set(key, larger);
    }
  }

  add(slot: number, entry: ListEntry): void {
    for (const [key, values] of this.values) {
      const value = held(entry, key);
      values[slot] = typeof value === 'number' ? value : NaN;
    }
  }

  remove(slot: number): void {
    for (const values of this.values.values()) values[slot] = NaN;
  }

  /** Keeps in `among` only the slots within every span chosen. */
  filter({ spans }: ListQuery, among: SlotSet): void {
    for (const [key, span] of Object.entries(spans)) {
      const values = this.values.get(key);
      if (values) intersect(among, this.within(values, span));
    }
  }

  private within(values: Float64Array, { from, to }: Span): SlotSet {
    const within = emptySet(this.capacity);
    const least = from ?? -Infinity;
    const most = to ?? Infinity;
    for (let slot = 0; slot < values.length; slot++)
      if (values[slot]! >= least && values[slot]! <= most) addSlot(within, slot);
    return within;
  }
}
