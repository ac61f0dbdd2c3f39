import { INVISIBLE } from '../quantities/text';

/** A text of a sheet, and whereabouts it stands. */
export interface PlacedText {
  text: string;
  where: string;
}

/** Whether the sheet's fonts can print a character. */
export type HasGlyph = (codePoint: number) => boolean;

export interface UnprintableCharacter {
  character: string;
  /** "U+65E5". */
  code: string;
  where: string[];
}

const LAID_OUT = new Set(['\n', '\t', '\r']);

/** "U+65E5": how a character is named when it cannot be shown. */
export function codePointName(character: string): string {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  return `U+${code}`;
}

// What is invisible by design is left out, which loses nothing that a reader could see.
function prints(character: string, hasGlyph: HasGlyph): boolean {
  return LAID_OUT.has(character) || INVISIBLE.test(character) || hasGlyph(character.codePointAt(0) ?? 0);
}

/** The characters that the fonts cannot print, each with where it stands, in the order met. */
export function unprintableCharacters(
  texts: readonly PlacedText[],
  hasGlyph: HasGlyph,
): UnprintableCharacter[] {
  const found = new Map<string, UnprintableCharacter>();
  for (const { text, where } of texts)
    for (const character of text) {
      if (prints(character, hasGlyph)) continue;
      const known = found.get(character) ?? { character, code: codePointName(character), where: [] };
      if (!known.where.includes(where)) known.where.push(where);
      found.set(character, known);
    }
  return [...found.values()];
}

/** The text as it can be printed: what the fonts lack becomes a visible "[U+65E5]", invisible marks go. */
export function printable(text: string, hasGlyph: HasGlyph): string {
  let out = '';
  for (const character of text) {
    if (!prints(character, hasGlyph)) out += `[${codePointName(character)}]`;
    else if (!INVISIBLE.test(character)) out += character;
  }
  return out;
}
