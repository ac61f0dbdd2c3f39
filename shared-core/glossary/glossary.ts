import { otherForms } from '../lists/word-forms';
import { foldedWords } from '../quantities/fold';
import type { Term } from './term';
import { EMULSION_TERMS } from './terms/emulsions';
import { MAKING_TERMS } from './terms/making';
import { MATERIAL_TERMS } from './terms/materials';
import { SURFACTANT_TERMS } from './terms/surfactants';

/** Every word of the glossary, by key. */
export const GLOSSARY = {
  ...EMULSION_TERMS,
  ...SURFACTANT_TERMS,
  ...MATERIAL_TERMS,
  ...MAKING_TERMS,
} as const satisfies Record<string, Term>;
export type TermKey = keyof typeof GLOSSARY;

export const TERM_KEYS = Object.keys(GLOSSARY) as [TermKey, ...TermKey[]];

/** A word with its key. */
export interface KeyedTerm extends Term {
  key: TermKey;
}

const byWord = (one: Term, other: Term): number => one.term.localeCompare(other.term, 'en');

/** All words in alphabetical order. */
export const TERMS: readonly KeyedTerm[] = TERM_KEYS.map((key) => ({ key, ...(GLOSSARY[key] as Term) })).sort(
  byWord,
);

/** Folded words, "neutralize" as "neutralise": the same word in two spellings. */
const spelledWords = (text: string): string[] =>
  foldedWords(text).map((word) => word.replace(/iz(?=e|ing|ation)/, 'is'));

/**
 * The words that a typed text means, nearest first: so called as a whole, by any of its names ("water in oil" is w/o,
 * though o/w holds the same words), so called in part, then those whose line speaks of it.
 */
export function termsFor(typed: string): KeyedTerm[] {
  const asked = spelledWords(typed);
  if (asked.length === 0) return [...TERMS];
  // "emulsifiers" asks for "emulsifier".
  const forms = asked.map(otherForms);
  const begins = (text: string): boolean => {
    const words = spelledWords(text);
    return asked.every((word, at) => words.some((one) => one.startsWith(word) || forms[at]?.includes(one)));
  };
  const isWhole = (term: string): boolean => {
    const words = spelledWords(term);
    return (
      words.length === asked.length &&
      asked.every((word, at) => words[at] === word || forms[at]?.includes(words[at] ?? ''))
    );
  };
  const nearness = ({ term, also = [], says }: KeyedTerm): number => {
    const ways = [isWhole(term), also.some(isWhole), begins(term), also.some(begins), begins(says)];
    return ways.indexOf(true) + 1 || Infinity;
  };
  return TERMS.map((one) => ({ one, near: nearness(one) }))
    .filter(({ near }) => near < Infinity)
    .sort((one, other) => one.near - other.near)
    .map(({ one }) => one);
}
