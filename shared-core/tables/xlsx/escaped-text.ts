/* Characters that XML cannot hold stand as _xHHHH_ in a workbook: ECMA-376 Part 1, 22.9.2.19 ST_Xstring and 22.4.2.4
   bstr, which has the underscore of a text that only looks like it written as _x005F_. The carriage return, which XML
   would turn into a line feed, is escaped too, as the format's first implementer states (MS-OI29500 2.1.1747). */

/** What XML 1.0 forbids (Char, production 2): controls, halves of a surrogate pair, U+FFFE and U+FFFF; and the return. */
const UNHOLDABLE =
  /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
const GUARDED = new RegExp(`_(?:${UNHOLDABLE.source})`, 'g');
/** An underscore that, once the rest is escaped, would be taken for the beginning of an escape. */
const LOOKS_ESCAPED = /_(?=x[0-9A-Fa-f]{4}_)/g;
const ESCAPED = /_x([0-9A-Fa-f]{4})_/g;

const hex = (character: string) => character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');

/** Text as a workbook holds it, before XML's own escaping; `unescapeText` gives it back unchanged. */
export function escapeText(text: string): string {
  // An unholdable character becomes something that begins with an underscore, and may so complete an escape before it.
  const guarded = text.replace(UNHOLDABLE, '_$&').replace(LOOKS_ESCAPED, '_x005F_');
  return guarded.replace(GUARDED, (pair) => `_x${hex(pair[1]!)}_`);
}

export function unescapeText(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(ESCAPED, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\t': '&#9;',
  '\n': '&#10;',
};

/** Escaped for the content of an XML element. */
export const xmlText = (text: string) => text.replace(/[&<>]/g, (character) => ENTITIES[character]!);

/** Escaped for an XML attribute in double quotes. */
export const xmlAttribute = (text: string) =>
  text.replace(/[&<>"\t\n]/g, (character) => ENTITIES[character]!);
