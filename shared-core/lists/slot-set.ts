/**
 * A set of slots (a slot is the number of a record's place in a list), one bit each, so that thousands of records
 * are filtered and counted in a few machine words.
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

/** Takes every slot of `other` out of `set`. */
export function subtract(set: SlotSet, other: SlotSet): void {
  for (let i = 0; i < set.length; i++) set[i]! &= ~other[i]!;
}

export function isEmpty(set: SlotSet): boolean {
  return set.every((word) => word === 0);
}

/** Visits the slots of a set, ascending, without a list of them: of a long one that would be a lot to throw away. */
export function eachSlot(set: SlotSet, visit: (slot: number) => void): void {
  for (let i = 0; i < set.length; i++)
    for (let left = set[i]!; left !== 0; left &= left - 1) visit(i * 32 + 31 - Math.clz32(left & -left));
}

/** The slots of a set, ascending. */
export function slotsIn(set: SlotSet): number[] {
  const slots: number[] = [];
  eachSlot(set, (slot) => slots.push(slot));
  return slots;
}

export function countIn(set: SlotSet): number {
  let count = 0;
  for (let i = 0; i < set.length; i++) count += bitsIn(set[i]!);
  return count;
}

/** How many slots each of many sets shares with one: the parts of that one without a slot are passed over. */
export function countShared(one: SlotSet, sets: readonly SlotSet[]): number[] {
  const occupied = one.reduce<number[]>(
    (found, word, i) => (word === 0 ? found : (found.push(i), found)),
    [],
  );
  return sets.map((set) => {
    let count = 0;
    for (const i of occupied) {
      const both = set[i]! & one[i]!;
      if (both !== 0) count += bitsIn(both);
    }
    return count;
  });
}

/** The set bits of a 32-bit word, added up pairwise, then by fours, then by bytes. */
function bitsIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
