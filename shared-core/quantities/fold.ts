/** Text folded for finding: case, accents and ligatures ignored, so that "Behénique" finds "behenique". */
export function fold(text: string): string {
  // Plain ASCII has nothing to fold but its case, and is most of what a library holds.
  if (!/[^\n -~]/.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/ø/g, 'o')
    .replace(/ł/g, 'l')
    .replace(/đ/g, 'd')
    .replace(/æ/g, 'ae')
    .replace(/œ/g, 'oe');
}

/** The words of a text, folded; a word is a run of letters and digits ("PEG-40" gives "peg" and "40"). */
export function foldedWords(text: string): string[] {
  return fold(text).match(/[\p{L}\p{N}]+/gu) ?? [];
}
