import { foldedWords } from '../quantities/fold';
import { TIERS, type Tier } from './description';
import type { FacetIndex } from './facet-index';
import { nearestWords, slipsAllowed } from './nearest-words';
import type { Correction } from './query';
import { emptySet, intersect, unite, type SlotSet } from './slot-set';
import { otherForms } from './word-forms';
import type { WordIndex } from './word-index';

/** Other names of what a folded word or run of words names: "vitamin e" gives "tocopherol". */
export type Synonyms = (phrase: string) => readonly string[];

/** Runs of typed words up to this long may have another name. */
const LONGEST_PHRASE = 4;

/** How much of either is kept: that of a few searches. */
const MOST_KEPT = 64;

function keep<Kept>(kept: Map<string, Kept>, key: string, value: Kept): void {
  if (kept.size >= MOST_KEPT && !kept.has(key)) kept.clear();
  kept.set(key, value);
}

/** A word to be met: at its beginning, or whole. */
interface Term {
  text: string;
  whole: boolean;
}

/** Typed words that mean one thing: how many they are, and what may stand for them, each being terms met together. */
interface Part {
  words: number;
  alternatives: Term[][];
}

/** A typed text, understood: at each of its words the parts that begin there. */
export interface ReadText {
  words: string[];
  parts: Part[][];
  corrections: Correction[];
}

/** Finds the slots that a text names, in the words of their texts and of their filters. */
export class TextSearch {
  /** What words that stand nowhere were taken for since the list last changed: a search that finds nothing asks again. */
  private readonly meant = new Map<string, readonly string[]>();
  /** The slots of what was looked for since then. */
  private readonly met = new Map<string, SlotSet>();

  constructor(
    private readonly tiers: Readonly<Record<Tier, WordIndex>>,
    private readonly facets: FacetIndex,
    private readonly synonyms: Synonyms,
  ) {}

  /** Other words stand in the list now, or in other slots. */
  changed(): void {
    this.meant.clear();
    this.met.clear();
  }

  /** Understands a text; null when it holds no word. A word that stands nowhere is taken for those nearest to it. */
  read(text: string): ReadText | null {
    const words = [...new Set(foldedWords(text))];
    if (words.length === 0) return null;
    const parts = words.map((_, at) => this.partsAt(words, at));
    const corrections: Correction[] = [];
    words.forEach((word, at) => {
      const covering = parts.flatMap((some, from) =>
        some.filter((part) => from + part.words > at && from <= at),
      );
      if (covering.some((part) => this.isMet(part))) return;
      const meant = this.nearest(word);
      if (meant.length === 0) return;
      corrections.push({ typed: word, meant });
      const alternatives = meant.map((nearest) => [{ text: nearest, whole: true }]);
      parts[at]!.push({ words: 1, alternatives });
    });
    return { words, parts, corrections };
  }

  /** The slots where every word of a text is met in the tiers down to `deepest`. */
  find({ words, parts }: ReadText, deepest: Tier, capacity: number): SlotSet {
    // From the last word back: what the words from here on meet, whichever way they are taken together.
    const met: SlotSet[] = [];
    for (let at = words.length - 1; at >= 0; at--) {
      const here = emptySet(capacity);
      for (const part of parts[at]!) {
        const slots = this.slotsOfPart(part, deepest, capacity).slice();
        const rest = met[at + part.words];
        if (rest) intersect(slots, rest);
        unite(here, slots);
      }
      met[at] = here;
    }
    return met[0]!;
  }

  private partsAt(words: readonly string[], at: number): Part[] {
    const word = words[at]!;
    const forms = otherForms(word).map((form) => [{ text: form, whole: true }]);
    const single: Part = { words: 1, alternatives: [[{ text: word, whole: false }], ...forms] };
    const named: Part[] = [];
    for (let count = 1; count <= LONGEST_PHRASE && at + count <= words.length; count++) {
      const names = this.synonyms(words.slice(at, at + count).join(' '));
      const alternatives = names.map((name) => foldedWords(name).map((text) => ({ text, whole: true })));
      if (alternatives.length > 0) named.push({ words: count, alternatives });
    }
    return [single, ...named];
  }

  private isMet(part: Part): boolean {
    return part.alternatives.some((terms) => terms.every((term) => this.stands(term)));
  }

  /** Whether a term stands anywhere in the list. */
  private stands({ text, whole }: Term): boolean {
    return TIERS.some((tier) => this.tiers[tier].has(text, whole)) || this.facets.has(text, whole);
  }

  private slotsOfPart({ alternatives }: Part, deepest: Tier, capacity: number): SlotSet {
    const key = JSON.stringify([deepest, capacity, alternatives]);
    const known = this.met.get(key) ?? this.lookForPart(alternatives, deepest, capacity);
    keep(this.met, key, known);
    return known;
  }

  private lookForPart(alternatives: readonly Term[][], deepest: Tier, capacity: number): SlotSet {
    const found = emptySet(capacity);
    for (const terms of alternatives) {
      const together = terms.map((term) => {
        const slots = emptySet(capacity);
        this.collect(term, deepest, slots);
        return slots;
      });
      const [first, ...others] = together;
      if (!first) continue;
      for (const other of others) intersect(first, other);
      unite(found, first);
    }
    return found;
  }

  /** Adds the slots that hold a term in the tiers down to `deepest`. */
  private collect({ text, whole }: Term, deepest: Tier, found: SlotSet): void {
    for (const tier of TIERS) {
      this.tiers[tier].collect(text, whole, found);
      if (tier === 'shown') this.facets.collect(text, whole, found);
      if (tier === deepest) return;
    }
  }

  private nearest(word: string): readonly string[] {
    const known = this.meant.get(word) ?? this.lookForNearest(word);
    keep(this.meant, word, known);
    return known;
  }

  private lookForNearest(word: string): string[] {
    let most = slipsAllowed(word);
    let meant: string[] = [];
    for (const terms of [...TIERS.map((tier) => this.tiers[tier].lettered()), this.facets.lettered()]) {
      const near = nearestWords(word, terms, most);
      if (!near) continue;
      meant = near.slips < most ? near.words : [...meant, ...near.words];
      most = near.slips;
      if (most === 0) break;
    }
    return [...new Set(meant)];
  }
}
