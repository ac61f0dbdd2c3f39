import { firstAtOrAfter } from './in-order';
import { holdsFigure } from './nearest-words';
import { addSlot, type SlotSet } from './slot-set';
import { sortInSteps } from './sort-in-steps';

/** New words are put in their place one by one up to this many; beyond it, sorting anew is quicker. */
const FEW = 64;

/** Which slots hold which folded words, looked up by the beginning of a word. */
export class WordIndex {
  private readonly slotsOf = new Map<string, number[]>();
  private sorted: string[] = [];
  /** Those of `sorted` without a figure: most words of a large library are codes and running numbers. */
  private letters: string[] = [];
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

  /** Whether a slot holds a word with this beginning; `whole`: this very word. */
  has(text: string, whole: boolean): boolean {
    if (whole) return this.slotsOf.has(text);
    this.settle();
    return this.sorted[wordAt(this.sorted, text)]?.startsWith(text) ?? false;
  }

  /** Adds to `found` the slots that hold a word with this beginning; `whole`: this very word. */
  collect(text: string, whole: boolean, found: SlotSet): void {
    if (whole) return addAll(found, this.slotsOf.get(text));
    this.settle();
    for (let i = wordAt(this.sorted, text); this.sorted[i]?.startsWith(text); i++)
      addAll(found, this.slotsOf.get(this.sorted[i]!));
  }

  /** The words without a figure, in order. */
  lettered(): readonly string[] {
    this.settle();
    return this.letters;
  }

  /** Brings all words into order a bit at a time, after the first of them came. */
  *settleInSteps(): Generator<void, void> {
    const words = [...this.slotsOf.keys()];
    yield* sortInSteps<string, string[]>(words, (a, b) => (a < b ? -1 : 1));
    this.takeSorted(words);
  }

  private forget(word: string): void {
    this.settle();
    this.slotsOf.delete(word);
    this.sorted.splice(wordAt(this.sorted, word), 1);
    if (!holdsFigure(word)) this.letters.splice(wordAt(this.letters, word), 1);
  }

  /** Brings the added words into order. */
  private settle(): void {
    if (this.added.length === 0) return;
    if (this.added.length > FEW) return this.takeSorted([...this.slotsOf.keys()].sort());
    for (const word of this.added) {
      this.sorted.splice(wordAt(this.sorted, word), 0, word);
      if (!holdsFigure(word)) this.letters.splice(wordAt(this.letters, word), 0, word);
    }
    this.added = [];
  }

  private takeSorted(words: string[]): void {
    this.sorted = words;
    this.letters = words.filter((word) => !holdsFigure(word));
    this.added = [];
  }
}

const wordAt = (sorted: readonly string[], word: string): number =>
  firstAtOrAfter(sorted, word, (one) => one);

function addAll(found: SlotSet, slots: readonly number[] | undefined): void {
  if (slots) for (const slot of slots) addSlot(found, slot);
}
