import type { SlotSet } from './slot-set';

/** A folded word by which a word of a filter is found in a search. */
export interface FacetTerm {
  text: string;
  /** Whether no record carries the filter's word. */
  isEmpty(): boolean;
  /** Adds the slots that carry it. */
  addTo(found: SlotSet): void;
}

/** The words of one filter, and which slots carry them. */
export interface FacetWords {
  grow(capacity: number): void;
  add(slot: number, words: readonly string[]): void;
  remove(slot: number, words: readonly string[]): void;
  /** Adds to `found` the slots that carry a word. */
  addTo(found: SlotSet, word: string): void;
  /** How many slots of a set carry each word. @param chosen words that are told of however few carry them */
  count(among: SlotSet, chosen: readonly string[]): Record<string, number>;
  terms(): FacetTerm[];
  /** Changes whenever `terms` gives others. */
  readonly edition: number;
}
