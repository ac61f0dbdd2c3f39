import { setImmediate } from 'node:timers/promises';

/** After so long, in ms, whatever else has come in is answered before work goes on. */
const PIECE_MS = 15;

/** Does work that comes in steps, and lets others have their turn in between. */
export async function inPieces<T>(steps: Generator<void, T>): Promise<T> {
  for (;;) {
    const began = performance.now();
    while (performance.now() - began < PIECE_MS) {
      const { done, value } = steps.next();
      if (done) return value;
    }
    await setImmediate();
  }
}
