import { foldedWords } from '../quantities/fold';
import type { FacetTerm, FacetWords } from './facet-words';
import { addSlot, countShared, dropSlot, emptySet, grown, isEmpty, unite, type SlotSet } from './slot-set';

/** A filter of known words: few, each carried by many records, so that each is a bit a slot. */
export class KnownWords implements FacetWords {
  readonly edition = 0;
  private readonly slotsOf: Map<string, SlotSet>;

  constructor(words: readonly string[], capacity: number) {
    this.slotsOf = new Map(words.map((word) => [word, emptySet(capacity)]));
  }

  grow(capacity: number): void {
    for (const [word, slots] of this.slotsOf) this.slotsOf.set(word, grown(slots, capacity));
  }

  add(slot: number, words: readonly string[]): void {
    for (const word of words) {
      const slots = this.slotsOf.get(word);
      if (slots) addSlot(slots, slot);
    }
  }

  remove(slot: number, words: readonly string[]): void {
    for (const word of words) {
      const slots = this.slotsOf.get(word);
      if (slots) dropSlot(slots, slot);
    }
  }

  addTo(found: SlotSet, word: string): void {
    const slots = this.slotsOf.get(word);
    if (slots) unite(found, slots);
  }

  count(among: SlotSet): Record<string, number> {
    const counts = countShared(among, [...this.slotsOf.values()]);
    return Object.fromEntries([...this.slotsOf.keys()].map((word, at) => [word, counts[at] ?? 0]));
  }

  terms(): FacetTerm[] {
    return [...this.slotsOf.keys()].flatMap((word) =>
      [...new Set(foldedWords(word))].map((text) => ({
        text,
        isEmpty: () => isEmpty(this.slotsOf.get(word)!),
        addTo: (found: SlotSet) => this.addTo(found, word),
      })),
    );
  }
}
