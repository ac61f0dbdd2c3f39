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
  const known = KEYS.get(name);
  if (known !== undefined) return known;
  const key = keyOf(withoutBrackets(fold(name)));
  if (KEYS.size >= MOST_KEYS) KEYS.clear();
  KEYS.set(name, key);
  return key;
}

/** A shelf of thousands names the same hundreds of substances. */
const KEYS = new Map<string, string>();
const MOST_KEYS = 20_000;

/** A name as a table of ours spells it: folded, without what stands in brackets, one space between words. */
export function plainName(name: string): string {
  return withoutBrackets(fold(name)).replace(/\s+/g, ' ').trim();
}

/** The keys of what stands in a name's brackets: "White pigment (CI 77891)" is told by them. */
export function bracketKeys(name: string): string[] {
  return (name.match(BRACKETS) ?? [])
    .map((part) => keyOf(part))
    .filter((key) => key !== '' && key !== 'nano');
}

/**
 * The key of the colour whose lake or salt a key names: "CI 15850:1" is one of CI 15850, under which the law lists it
 * (Regulation (EC) No 1223/2009, Annex IV, preamble, from memory). Null for any other.
 */
export function colourOfLake(key: string): string | null {
  return /^(ci \d{5}) \d{1,2}(?: |$)/.exec(key)?.[1] ?? null;
}

/** What suppliers write between names: in brackets in any of the languages that tables come in, bare where no name holds it. */
const BETWEEN = /\s*[([]\s*(?:and|und|et|y|e|&|\+)\s*[)\]]\s*|\s+(?:and|und|&|\+)\s+/i;

/** The names that a supplier wrote into one: "Phenoxyethanol (and) Ethylhexylglycerin" names two. */
export function namesWithin(name: string): string[] {
  const parts = name.split(BETWEEN).map((part) => part.trim());
  return parts.filter((part) => part !== '');
}

/**
 * How much of a part of a composition is of the names that are meant, ppm of the material: all of it, none of it, or,
 * where several names were written into one, anything from none to all.
 */
export function endsOf(
  { inci, lowPpm, highPpm }: { inci: string; lowPpm: number; highPpm: number },
  isMeant: (name: string) => boolean,
): { least: number; most: number } {
  const names = namesWithin(inci);
  const meant = names.filter(isMeant).length;
  return {
    least: meant > 0 && meant === names.length ? lowPpm : 0,
    most: meant > 0 ? highPpm : 0,
  };
}

/** A name without what stands in brackets; all of it where nothing else stands there. */
function withoutBrackets(name: string): string {
  const plain = withoutNested(name);
  return plain.trim() === '' ? name.replace(/[()[\]]/g, ' ') : plain;
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
  // Folded first: a capital Greek letter, or one with an accent, is the same letter.
  let folded = fold(text)
    .replace(/[αβγδεω]/g, (letter) => GREEK[letter] ?? letter)
    .replace(/^nano[\s-]+|[\s-]nano(?:form)?\s*$/g, ' ')
    .trim();
  for (const [spelling, plain] of SPELLINGS) folded = folded.replace(spelling, plain);
  return (folded.match(/[\p{L}\p{N}]+/gu) ?? []).join(' ');
}
