/** What JSON can hold. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/**
 * The one text of a value: keys in the order of their code points, no spaces, what is undefined left out. Two values
 * that say the same have the same text, on every machine (in the manner of RFC 8785, JSON Canonicalization Scheme).
 */
export function canonicalText(value: unknown): string {
  return JSON.stringify(ordered(value));
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(([, held]) => held !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return Object.fromEntries(entries.map(([key, held]) => [key, ordered(held)]));
}

/** Whether two values say the same. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  // Most values are told apart without being written out, and a state compares every field with its blank.
  const isNumber = typeof a === 'number' && typeof b === 'number';
  if (!isNumber && (!isHolder(a) || !isHolder(b))) return false;
  if (Array.isArray(a) && Array.isArray(b) && a.length !== b.length) return false;
  return canonicalText(a) === canonicalText(b);
}

const isHolder = (value: unknown): boolean => typeof value === 'object' && value !== null;
