const WORD = '(?:sub-?|zwischen|sous-?)?(?:total|sum|somme|summe|suma|gesamt(?:summe|menge)?)';
/** What may stand beside the word: figures, signs, and of which phase it is the total. */
const TOTAL = new RegExp(
  String.raw`^${WORD}(?:[\s:.,%()\d]*|\s*(?:of|der|des|de la|du|phase|fase)\b.*)$`,
  'i',
);

/** Whether a row only says what the others come to; “Total Repair Oil” is a material. */
export const isTotal = (name: string): boolean => TOTAL.test(name.trim());
