/** So many are put in order, or merged, at one step: a millisecond or so. */
export const STEP = 1024;

/** What a generator of steps gives in the end, when nothing else needs doing meanwhile. */
export function endOf<T>(steps: Generator<void, T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

interface Places<T> {
  readonly length: number;
  [at: number]: T;
}

/**
 * Sorts in place, a bit at each step of the generator, so that whoever walks it can do other things in between. Stable.
 * @param items with `slice`, and of one kind: an array or a typed one
 */
export function* sortInSteps<T, Items extends Places<T> & { slice(from?: number, to?: number): Items }>(
  items: Items,
  compare: (a: T, b: T) => number,
): Generator<void, void> {
  for (let from = 0; from < items.length; from += STEP) {
    const run = Array.from(items.slice(from, from + STEP) as ArrayLike<T>).sort(compare);
    run.forEach((item, i) => (items[from + i] = item));
    yield;
  }
  let source = items;
  let target = items.slice();
  for (let width = STEP; width < items.length; width *= 2) {
    for (let from = 0; from < items.length; from += 2 * width)
      yield* merge(source, target, from, width, compare);
    [source, target] = [target, source];
  }
  if (source !== items) for (let i = 0; i < items.length; i++) items[i] = source[i]!;
}

/** Merges two runs of a width that stand beside each other. */
function* merge<T>(
  source: Places<T>,
  target: Places<T>,
  from: number,
  width: number,
  compare: (a: T, b: T) => number,
): Generator<void, void> {
  const middle = Math.min(from + width, source.length);
  const end = Math.min(from + 2 * width, source.length);
  let left = from;
  let right = middle;
  for (let at = from; at < end; at++) {
    const takesLeft = left < middle && (right >= end || compare(source[left]!, source[right]!) <= 0);
    target[at] = source[takesLeft ? left++ : right++]!;
    if (at % STEP === 0) yield;
  }
}
