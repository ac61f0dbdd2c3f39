import { foldedWords } from '../quantities/fold';
import type { FacetTerm, FacetWords } from './facet-words';
import { addSlot, eachSlot, type SlotSet } from './slot-set';

/** Of a filter whose words are those found, this many at most are counted: those that would leave most. */
export const MOST_FOUND_WORDS = 200;

interface FoundWord {
  word: string;
  slots: Set<number>;
  terms: readonly string[];
  /** How many slots of a set carry it: the sum while that is counted. */
  tally: number;
}

/** A filter of the words found: they may be thousands, each carried by few records, so that each lists its slots. */
export class FoundWords implements FacetWords {
  edition = 0;
  private readonly found = new Map<string, FoundWord>();
  /** What each slot carries: many words are counted sooner from the records than from the words. */
  private readonly carried: FoundWord[][] = [];

  /** Lists need no more room. */
  grow(): void {}

  add(slot: number, words: readonly string[]): void {
    this.carried[slot] = [...new Set(words)]
      .filter((word) => word !== '')
      .map((word) => this.foundWord(word));
    for (const one of this.carried[slot]) one.slots.add(slot);
  }

  remove(slot: number): void {
    for (const one of this.carried[slot] ?? []) {
      one.slots.delete(slot);
      if (one.slots.size > 0) continue;
      this.found.delete(one.word);
      this.edition += 1;
    }
    this.carried[slot] = [];
  }

  addTo(found: SlotSet, word: string): void {
    for (const slot of this.found.get(word)?.slots ?? []) addSlot(found, slot);
  }

  count(among: SlotSet, chosen: readonly string[]): Record<string, number> {
    for (const one of this.found.values()) one.tally = 0;
    eachSlot(among, (slot) => {
      for (const one of this.carried[slot] ?? []) one.tally += 1;
    });
    const most = [...this.found.values()]
      .filter(({ tally }) => tally > 0)
      .sort(byTally)
      .slice(0, MOST_FOUND_WORDS)
      .map(({ word, tally }): [string, number] => [word, tally]);
    const told = new Set(most.map(([word]) => word));
    for (const word of chosen) if (!told.has(word)) most.push([word, this.found.get(word)?.tally ?? 0]);
    return Object.fromEntries(most);
  }

  terms(): FacetTerm[] {
    return [...this.found.values()].flatMap(({ word, slots, terms }) =>
      terms.map((text) => ({
        text,
        isEmpty: () => slots.size === 0,
        addTo: (found: SlotSet) => this.addTo(found, word),
      })),
    );
  }

  private foundWord(word: string): FoundWord {
    const known = this.found.get(word);
    if (known) return known;
    const one = { word, slots: new Set<number>(), terms: [...new Set(foldedWords(word))], tally: 0 };
    this.found.set(word, one);
    this.edition += 1;
    return one;
  }
}

function byTally(a: FoundWord, b: FoundWord): number {
  return b.tally - a.tally || (a.word < b.word ? -1 : 1);
}
