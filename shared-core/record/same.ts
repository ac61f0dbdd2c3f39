/** A value of a record's state: what JSON can hold. A key that holds `undefined` counts as left out. */
export type PlainObject = Readonly<Record<string, unknown>>;

export function isPlainObject(value: unknown): value is PlainObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function sameObjects(one: PlainObject, other: PlainObject): boolean {
  for (const key of Object.keys(one))
    if (!same(one[key], Object.hasOwn(other, key) ? other[key] : undefined)) return false;
  for (const key of Object.keys(other))
    if (other[key] !== undefined && !Object.hasOwn(one, key)) return false;
  return true;
}

/**
 * Whether two values of a state say the same; the order of keys says nothing, that of a list does. Nought is nought,
 * with whatever sign, as in the text that a state is kept by.
 */
export function same(one: unknown, other: unknown): boolean {
  if (one === other || Object.is(one, other)) return true;
  if (Array.isArray(one) && Array.isArray(other))
    return one.length === other.length && one.every((item, at) => same(item, other[at]));
  return isPlainObject(one) && isPlainObject(other) && sameObjects(one, other);
}
