import { held, type ListDescription, type ListEntry } from './description';
import type { ListQuery, Span } from './query';
import { addSlot, emptySet, intersect, type SlotSet } from './slot-set';

/** The numbers that lists are narrowed down by. */
export class RangeIndex {
  /** NaN where a number is not known, and where there is no record: no range takes it in. */
  private readonly values = new Map<string, Float64Array>();
  /** The slots within the span that was asked for last, by number: a search that finds nothing asks several times. */
  private readonly asked = new Map<string, { span: Span; within: SlotSet }>();

  constructor(
    ranges: ListDescription['ranges'],
    private capacity: number,
  ) {
    for (const { key } of ranges) this.values.set(key, new Float64Array(capacity).fill(NaN));
  }

  grow(capacity: number): void {
    this.capacity = capacity;
    this.asked.clear();
    for (const [key, values] of this.values) {
      const larger = new Float64Array(capacity).fill(NaN);
      larger.set(values);
      this.values.set(key, larger);
    }
  }

  add(slot: number, entry: ListEntry): void {
    this.asked.clear();
    for (const [key, values] of this.values) {
      const value = held(entry, key);
      values[slot] = typeof value === 'number' ? value : NaN;
    }
  }

  remove(slot: number): void {
    this.asked.clear();
    for (const values of this.values.values()) values[slot] = NaN;
  }

  /** Keeps in `among` only the slots within every span chosen. */
  filter({ spans }: ListQuery, among: SlotSet): void {
    for (const [key, span] of Object.entries(spans)) {
      const values = this.values.get(key);
      if (values) intersect(among, this.within(key, values, span));
    }
  }

  private within(key: string, values: Float64Array, span: Span): SlotSet {
    const known = this.asked.get(key);
    if (known?.span.from === span.from && known.span.to === span.to) return known.within;
    const within = emptySet(this.capacity);
    const least = span.from ?? -Infinity;
    const most = span.to ?? Infinity;
    for (let slot = 0; slot < values.length; slot++)
      if (values[slot]! >= least && values[slot]! <= most) addSlot(within, slot);
    this.asked.set(key, { span, within });
    return within;
  }
}
