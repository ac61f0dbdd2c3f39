import { fold } from '../quantities/fold';

const GREEK: Readonly<Record<string, string>> = {
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  δ: 'delta',
  ε: 'epsilon',
  ω: 'omega',
};
/** Spellings that differ by country, not by substance. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/sulph/g, 'sulf'],
  [/aluminium/g, 'aluminum'],
  [/\bc\.?\s?i\.?\s?(?=\d{5}\b)/g, 'ci '],
];
const BRACKETS = /\([^()]*\)|\[[^[\]]*\]/g;

/** Whether a written name says that it is of the nano form. */
export function saysNano(name: string): boolean {
  return /[([]\s*nano\s*[)\]]|\bnano(?:form)?\s*$|^nano[\s-]/i.test(name.trim());
}

/**
 * What a written name comes to, so that two spellings of one substance meet: case, accents, hyphens, bracketed common
 * names and the mark of the nano form do not count, all else does. "Prunus Amygdalus Dulcis (Sweet Almond) Oil" and
 * "Prunus Amygdalus Dulcis Oil" are one; "Glycerin" is no part of "Ethylhexylglycerin".
 */
export function nameKey(name: string): string {
  const plain = withoutNested(name);
  const kept = plain.trim() === '' ? name.replace(/[()[\]]/g, ' ') : plain;
  return keyOf(kept);
}

/** The keys of what stands in a name's brackets: "White pigment (CI 77891)" is told by them. */
export function bracketKeys(name: string): string[] {
  return (name.match(BRACKETS) ?? [])
    .map((part) => keyOf(part))
    .filter((key) => key !== '' && key !== 'nano');
}

/** The names that a supplier wrote into one: "Phenoxyethanol (and) Ethylhexylglycerin" names two. */
export function namesWithin(name: string): string[] {
  const parts = name.split(/\s*[([]\s*(?:and|&)\s*[)\]]\s*|\s+(?:and|&)\s+/i).map((part) => part.trim());
  return parts.filter((part) => part !== '');
}

function withoutNested(name: string): string {
  let before = name;
  for (;;) {
    const after = before.replace(BRACKETS, ' ');
    if (after === before) return after;
    before = after;
  }
}

function keyOf(text: string): string {
  let folded = fold(text.replace(/[αβγδεω]/g, (letter) => GREEK[letter] ?? letter))
    .replace(/^nano[\s-]+|[\s-]nano(?:form)?\s*$/g, ' ')
    .trim();
  for (const [spelling, plain] of SPELLINGS) folded = folded.replace(spelling, plain);
  return (folded.match(/[\p{L}\p{N}]+/gu) ?? []).join(' ');
}
