/** Shorter words are taken as they stand: too many of them only happen to end like a plural. */
const SHORTEST = 4;

/**
 * The other number of an English word as it may stand in a library, each to be met whole: "waxes" stands as "wax",
 * "berries" as "berry". The plain plural of what is typed needs none: it begins with it.
 */
export function otherForms(word: string): string[] {
  if (word.length < SHORTEST || /\d/.test(word)) return [];
  if (word.endsWith('ies')) return [`${word.slice(0, -3)}y`, word.slice(0, -1)];
  if (word.endsWith('y')) return [`${word.slice(0, -1)}ies`];
  if (word.endsWith('ss') || !word.endsWith('s')) return [];
  return word.endsWith('es') ? [word.slice(0, -1), word.slice(0, -2)] : [word.slice(0, -1)];
}
