/**
 * A set of slots (a slot is the number of a material's place on the shelf), one bit each, so that thousands of
 * materials are filtered and counted in a few machine words.
 */
export type SlotSet = Uint32Array;

/** An empty set with room for `capacity` slots. */
export function emptySet(capacity: number): SlotSet {
  return new Uint32Array(Math.ceil(capacity / 32));
}

/** The same set with room for `capacity` slots. */
export function grown(set: SlotSet, capacity: number): SlotSet {
  const larger = emptySet(capacity);
  larger.set(set);
  return larger;
}

export function addSlot(set: SlotSet, slot: number): void {
  set[slot >>> 5]! |= 1 << (slot & 31);
}

export function dropSlot(set: SlotSet, slot: number): void {
  set[slot >>> 5]! &= ~(1 << (slot & 31));
}

export function hasSlot(set: SlotSet, slot: number): boolean {
  return (set[slot >>> 5]! & (1 << (slot & 31))) !== 0;
}

/** Adds every slot of `other` to `set`. */
export function unite(set: SlotSet, other: SlotSet): void {
  for (let i = 0; i < set.length; i++) set[i]! |= other[i]!;
}

/** Keeps in `set` only the slots that are in `other` too. */
export function intersect(set: SlotSet, other: SlotSet): void {
  for (let i = 0; i < set.length; i++) set[i]! &= other[i]!;
}

/** How many slots both sets hold. */
export function countBoth(a: SlotSet, b: SlotSet): number {
  let count = 0;
  for (let i = 0; i < a.length; i++) {
    const both = a[i]! & b[i]!;
    if (both !== 0) count += bitsIn(both);
  }
  return count;
}

/** The set bits of a 32-bit word, added up pairwise, then by fours, then by bytes. */
function bitsIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
