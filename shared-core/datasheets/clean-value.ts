import { isUnitFor } from '../imports/units';
import { isCondition, isMethod, isNeutral } from './find-label';

/** What may follow a value without changing it, in the four languages. */
const HARMLESS_END = new RegExp(
  `(?:${[
    // “12 a 14 °C” is a range.
    '(?:,?\\s*(?:at|bei|@)|(?<!\\d\\s*),?\\s*(?:à|a))\\s*[+-]?\\d+(?:[.,]\\d+)?\\s*°?\\s*C\\b',
    '\\s*\\(?(?:w\\/w|m\\/m|p\\/p|by weight|Gew\\.?)\\)?',
    '\\s*(?:of|in|on)\\s+(?:the\\s+)?(?:total|finished|final|whole|complete)\\s+(?:product|formula(?:tion)?)',
    '\\s*(?:im|in der|bezogen auf die|der)\\s+(?:Endprodukt|Fertigprodukt|Gesamtformel|Gesamtrezeptur|Rezeptur|Formulierung)',
    '\\s*(?:dans|de|sur|en)\\s+(?:le\\s+|la\\s+|el\\s+)?(?:produit fini|formule(?:\\s+totale)?|producto (?:final|terminado|acabado)|fórmula(?:\\s+total)?)',
    '\\s*(?:of|in)\\s+(?:the\\s+)?formula(?:tion)?',
    '\\s*[,;]?\\s*(?:typical|typically|typisch|typique|típico|approx\\.?|ca\\.)',
    '\\s*[*†‡¹²]+',
    '\\s*[.;,]',
  ]
    .map((one) => `(?:${one})`)
    .join('|')})$`,
  'i',
);

/** A bracket behind a value that says the same in another unit, or only how or when it was found. */
function harmlessBracket(inside: string, unit: string): boolean {
  if (isNeutral(inside) || isMethod(inside) || isCondition(inside)) return true;
  const other = /^[\d.,\s–-]*\d\s*([^\d\s][^\d]*)$/.exec(inside);
  return other?.[1] !== undefined && isUnitFor(unit, other[1]);
}

export interface CleanValue {
  text: string;
  /** Under what it was found, such as “1 % in water”; empty where it does not say. */
  condition: string;
}

/**
 * A value without what follows it and changes nothing: how it was measured, at which temperature, the same in another unit.
 * @param unit the unit that it is kept in; empty for none
 */
export function cleanValue(written: string, unit: string): CleanValue {
  let text = written.replace(/\s+/g, ' ').trim();
  let condition = '';
  for (let left = 5; left > 0; left--) {
    const bracket = /^(.*\S)\s*[([]\s*([^()[\]]*)\s*[)\]]$/.exec(text);
    if (bracket?.[1] && bracket[2] !== undefined && harmlessBracket(bracket[2].trim(), unit)) {
      if (isCondition(bracket[2])) condition = bracket[2].trim();
      text = bracket[1];
      continue;
    }
    const ended = text.replace(HARMLESS_END, '');
    if (ended === text || ended.trim() === '') break;
    const cut = text.slice(ended.length);
    if (/\d/.test(cut)) condition = cut.replace(/^[\s,;]+|^(?:at|bei|à|a|@)\s+/g, '').trim();
    text = ended;
  }
  const opened = text.replace(
    /^(?:typically|typical|typisch|typique|approx\.?|about|etwa|environ|aprox\.?)\s+/i,
    '',
  );
  return { text: opened.trim(), condition };
}

const BETWEEN =
  /^(?:between|from|zwischen|von|entre|de|comprise? entre|desde)\s+(.*?\d\S*)\s*(?:and|to|und|bis|et|à|y|a|hasta)\s+(\d.*)$/i;

/** “between 9 and 11” as a range. */
export function withRange(text: string): string {
  const found = BETWEEN.exec(text);
  return found?.[1] && found[2] ? `${found[1]} – ${found[2]}` : text;
}
