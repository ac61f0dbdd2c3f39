/** A slip is one letter wrong, missing, too many, or two swapped; names shorter than this may hold none. */
const LEAST_LETTERS = 6;

/**
 * Keys that two texts share whenever they are one slip apart: the text itself, and it without each of its letters
 * (deletion neighbourhood: what a replaced, missing or added letter leaves on both sides).
 */
export function nearKeys(name: string): string[] {
  if (name === '') return [];
  if (name.length < LEAST_LETTERS) return [name];
  const keys = new Set([name]);
  for (let at = 0; at < name.length; at += 1) keys.add(name.slice(0, at) + name.slice(at + 1));
  return [...keys];
}

/** Whether two texts are the same or one slip apart; short ones must be the same. */
export function isNear(one: string, other: string): boolean {
  if (one === other) return true;
  if (Math.min(one.length, other.length) < LEAST_LETTERS || Math.abs(one.length - other.length) > 1)
    return false;
  let at = 0;
  while (at < one.length && at < other.length && one[at] === other[at]) at += 1;
  const [a, b] = [one.slice(at), other.slice(at)];
  if (a.length === b.length) {
    const swapped = a.length > 1 && a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2);
    return swapped || a.slice(1) === b.slice(1);
  }
  return a.length > b.length ? a.slice(1) === b : a === b.slice(1);
}
