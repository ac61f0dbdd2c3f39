/** What JSON can hold. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/**
 * The one text of a value: keys in the order of their code points, no spaces, what is undefined left out. Two values
 * that say the same have the same text, on every machine (in the manner of RFC 8785, JSON Canonicalization Scheme).
 */
export function canonicalText(value: unknown): string {
  return textOf(value) as string;
}

/** Keys that are whole numbers come first, by their size: so does JavaScript keep them, and every state was named so. */
const WHOLE = /^(?:0|[1-9]\d{0,9})$/;
const LARGEST_INDEX = 2 ** 32 - 2;
const isIndex = (key: string): boolean => WHOLE.test(key) && Number(key) <= LARGEST_INDEX;

/** The keys that were put in order last, and their order: the records of a noun have the same, one after another. */
let last: { keys: readonly string[]; sorted: readonly string[] } = { keys: [], sorted: [] };
const MANY_KEYS = 20;

function sortedKeys(value: object): readonly string[] {
  const keys = Object.keys(value);
  if (keys.length < MANY_KEYS) return inOrder(keys);
  const before = last.keys;
  if (before.length !== keys.length || !keys.every((key, at) => key === before[at]))
    last = { keys, sorted: inOrder([...keys]) };
  return last.sorted;
}

function inOrder(keys: string[]): string[] {
  keys.sort();
  // Digits come before letters, so that one look tells whether there is such a key.
  if (keys[0] === undefined || keys[0] >= ':') return keys;
  const indexes = keys.filter(isIndex).sort((a, b) => Number(a) - Number(b));
  return [...indexes, ...keys.filter((key) => !isIndex(key))];
}

/** Text that JSON writes as it is: without quotation marks, backslashes, controls and halves of signs. */
const NOT_PLAIN = /["\\\u0000-\u001f\ud800-\udfff]/;
const quoted = (text: string): string => (NOT_PLAIN.test(text) ? JSON.stringify(text) : `"${text}"`);

/** A list, each item as `textOf` writes it. */
export function canonicalList(
  items: readonly unknown[],
  textOf: (item: unknown) => string | undefined,
): string {
  let text = '';
  for (const item of items) text += `${text === '' ? '' : ','}${textOf(item) ?? 'null'}`;
  return `[${text}]`;
}

/** An object with its keys in their order, each value as `textOf` writes it; left out where that is nothing. */
export function canonicalObject(value: object, textOf: (key: string) => string | undefined): string {
  let text = '';
  for (const key of sortedKeys(value)) {
    const held = textOf(key);
    if (held !== undefined) text += `${text === '' ? '' : ','}${quoted(key)}:${held}`;
  }
  return `{${text}}`;
}

/** As JSON writes it, in one pass: a library of thousands is named so, record by record. */
function textOf(value: unknown): string | undefined {
  if (typeof value === 'string') return quoted(value);
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return canonicalList(value, textOf);
  return canonicalObject(value, (key) => textOf((value as Record<string, unknown>)[key]));
}
