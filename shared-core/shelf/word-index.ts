import { foldedWords } from '../quantities/fold';
import { addSlot, emptySet, intersect, type SlotSet } from './slot-set';

/** New words are put in their place one by one up to this many; beyond it, sorting anew is quicker. */
const FEW = 64;

/** Which slots hold which folded words, looked up by the beginning of a word. */
export class WordIndex {
  private readonly slotsOf = new Map<string, number[]>();
  private sorted: string[] = [];
  /** Words that came since `sorted` was last in order. */
  private added: string[] = [];

  /** Takes in the words of a slot that holds none yet; a word may stand in `words` more than once. */
  add(slot: number, words: readonly string[]): void {
    for (const word of words) {
      const slots = this.slotsOf.get(word);
      if (slots) {
        // A repeated word of this slot has just been put last.
        if (slots[slots.length - 1] !== slot) slots.push(slot);
      } else {
        this.slotsOf.set(word, [slot]);
        this.added.push(word);
      }
    }
  }

  remove(slot: number, words: readonly string[]): void {
    for (const word of words) {
      const slots = this.slotsOf.get(word);
      const at = slots?.indexOf(slot) ?? -1;
      if (!slots || at < 0) continue;
      const last = slots.pop();
      if (last !== undefined && at < slots.length) slots[at] = last;
      if (slots.length === 0) this.forget(word);
    }
  }

  /** The slots where every word of the text begins some word; null when the text holds no word. */
  find(text: string, capacity: number): SlotSet | null {
    const words = new Set(foldedWords(text));
    let found: SlotSet | null = null;
    for (const word of words) {
      const slots = this.startingWith(word, capacity);
      if (found) intersect(found, slots);
      else found = slots;
    }
    return found;
  }

  private startingWith(beginning: string, capacity: number): SlotSet {
    this.settle();
    const found = emptySet(capacity);
    for (let i = this.firstAtOrAfter(beginning); i < this.sorted.length; i++) {
      const word = this.sorted[i]!;
      if (!word.startsWith(beginning)) break;
      for (const slot of this.slotsOf.get(word)!) addSlot(found, slot);
    }
    return found;
  }

  private forget(word: string): void {
    this.settle();
    this.slotsOf.delete(word);
    this.sorted.splice(this.firstAtOrAfter(word), 1);
  }

  /** Brings the added words into order. */
  private settle(): void {
    if (this.added.length === 0) return;
    if (this.added.length <= FEW) {
      for (const word of this.added) this.sorted.splice(this.firstAtOrAfter(word), 0, word);
    } else {
      this.sorted = [...this.slotsOf.keys()].sort();
    }
    this.added = [];
  }

  private firstAtOrAfter(word: string): number {
    let low = 0;
    let high = this.sorted.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.sorted[middle]! < word) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
