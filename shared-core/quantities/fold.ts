/** Anything but plain ASCII, which has nothing to fold but its case, and is most of what a library holds. */
const NOT_PLAIN = /[^\n -~]/;

/**
 * Letters that Unicode does not take apart into a base letter and its mark, and what they are typed as where a keyboard
 * has none of them: the Latin to ASCII transform of Unicode's CLDR, from memory. An umlaut is its letter without the
 * mark, not two letters: who types “oel” does not find “Öl”.
 */
const BASE_LETTERS: Readonly<Record<string, string>> = {
  ...{ ß: 'ss', æ: 'ae', œ: 'oe', þ: 'th' },
  ...{ ø: 'o', ł: 'l', đ: 'd', ð: 'd', ħ: 'h', ı: 'i', ŧ: 't', ŋ: 'n' },
};
const NOT_PARTED = new RegExp(`[${Object.keys(BASE_LETTERS).join('')}]`, 'g');

/** Text folded for finding: case, accents and ligatures ignored, so that "Behénique" finds "behenique". */
export function fold(text: string): string {
  if (!NOT_PLAIN.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(NOT_PARTED, (letter) => BASE_LETTERS[letter] ?? letter);
}

/** The words of a text, folded; a word is a run of letters and digits ("PEG-40" gives "peg" and "40"). */
export function foldedWords(text: string): string[] {
  // The two patterns say the same of plain text; this one is several times quicker, and a list folds all its texts.
  if (!NOT_PLAIN.test(text)) return text.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  return fold(text).match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** Folded words with every number as wide as the widest, so that PEG-7 stands before PEG-40. */
export function withWideNumbers(folded: string): string {
  const widen = (digits: string): string => digits.padStart(WIDEST, '0');
  return NOT_PLAIN.test(folded) ? folded.replace(/\p{Nd}+/gu, widen) : folded.replace(/\d+/g, widen);
}

/** No number in a name is longer. */
const WIDEST = 12;
