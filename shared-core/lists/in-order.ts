/**
 * Where a text stands among those in ascending order, or would stand.
 * @param textOf the text of one of them
 */
export function firstAtOrAfter<One>(
  inOrder: readonly One[],
  text: string,
  textOf: (one: One) => string,
): number {
  let low = 0;
  let high = inOrder.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (textOf(inOrder[middle]!) < text) low = middle + 1;
    else high = middle;
  }
  return low;
}
