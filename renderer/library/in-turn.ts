let last: Promise<unknown> = Promise.resolve();

/** One after another: what is asked for next waits until what was asked before is there. */
export function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const done = last.then(work);
  last = done.catch(() => undefined);
  return done;
}
