/** Longest name of a sheet, in UTF-16 units; with the letters below, the limits of the first implementer of the format. */
const LONGEST = 31;
const UNLAWFUL = /[[\]:*?/\\\u0000-\u001f\ufffe\uffff]/g;
/** A name that one program keeps for itself. */
const RESERVED = 'history';

/** The beginning of a text, cut between characters. */
function cut(text: string, longest: number): string {
  let kept = '';
  for (const character of text) {
    if (kept.length + character.length > longest) break;
    kept += character;
  }
  return kept;
}

function lawful(name: string): string {
  const plain = name.toWellFormed().replace(UNLAWFUL, ' ').replace(/\s+/g, ' ');
  const trimmed = cut(plain.replace(/^[\s']+/, ''), LONGEST).replace(/[\s']+$/, '');
  if (trimmed === '') return 'Sheet';
  return trimmed.toLowerCase() === RESERVED ? `${trimmed} sheet` : trimmed;
}

/**
 * Names that every spreadsheet program takes: 31 letters, none of []:*?/\, no apostrophe at an end, not blank, and no
 * two the same in any case; a number tells apart those that would be.
 */
export function lawfulSheetNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const wanted = lawful(name);
    let given = wanted;
    for (let number = 2; taken.has(given.toLowerCase()); number++) {
      const ending = ` (${number})`;
      given = cut(wanted, LONGEST - ending.length) + ending;
    }
    taken.add(given.toLowerCase());
    return given;
  });
}
