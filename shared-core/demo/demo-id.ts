/** Makes an identifier from a stable key, such as `material:N-101`; the same key gives the same identifier. */
export type MakeId = (key: string) => string;

/** The closing mix of MurmurHash3 (A. Appleby), so that similar keys give unlike identifiers; from memory. */
function spread(hash: number): number {
  const first = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  const second = Math.imul(first ^ (first >>> 13), 0xc2b2ae35);
  return (second ^ (second >>> 16)) >>> 0;
}

/** 32-bit FNV-1a (Fowler, Noll, Vo) of a text, from a starting value; from memory. */
function fnv1a(text: string, seed: number): number {
  let hash = Math.imul(0x811c9dc5, 2 * seed + 1) >>> 0;
  for (const character of text) {
    hash ^= character.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  return spread(hash);
}

/**
 * An identifier derived from a key without randomness: a UUID of version 8 (RFC 9562, "custom"), so that
 * the demonstration library is the same in every copy.
 */
export function demoId(key: string): string {
  const hex = [1, 2, 3, 4].map((seed) => fnv1a(key, seed).toString(16).padStart(8, '0')).join('');
  const variant = '89ab'[parseInt(hex.charAt(16), 16) % 4] ?? '8';
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}
