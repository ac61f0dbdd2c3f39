import { foldedWords } from '../quantities/fold';

/** Names that mean the same as an INCI name; common practice, no source. The first of each is what labels say. */
const NAMES: readonly (readonly string[])[] = [
  ['aqua', 'water', 'eau'],
  ['glycerin', 'glycerine', 'glycerol'],
  ['tocopherol', 'tocopheryl', 'vitamin e'],
  ['ascorbic', 'ascorbyl', 'vitamin c'],
  ['retinol', 'retinyl', 'vitamin a'],
  ['niacinamide', 'nicotinamide', 'vitamin b3'],
  ['panthenol', 'provitamin b5', 'vitamin b5'],
  ['butyrospermum', 'shea', 'karite'],
  ['theobroma', 'cocoa'],
  ['simmondsia', 'jojoba'],
  ['prunus amygdalus', 'almond'],
  ['helianthus', 'sunflower'],
  ['olea', 'olive'],
  ['cera alba', 'beeswax'],
  ['parfum', 'fragrance', 'perfume'],
  ['non-ionic', 'nonionic', 'non ionic'],
  ['lye', 'sodium hydroxide', 'caustic soda'],
];

const OTHERS = new Map<string, string[]>();
for (const names of NAMES) {
  for (const name of names) {
    const phrase = foldedWords(name).join(' ');
    OTHERS.set(phrase, [...(OTHERS.get(phrase) ?? []), ...names.filter((other) => other !== name)]);
  }
}

/** Other names of what a folded word or run of words names; none when only this one is known. */
export function otherNames(phrase: string): readonly string[] {
  return OTHERS.get(phrase) ?? [];
}
