import { Problem } from '../../problems/problem';

/** What could not be computed, for a maker: what is wrong, what to do, and facts that a screen may use. */
export interface Refusal {
  title: string;
  advice: string;
  facts: Record<string, unknown>;
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: Refusal };

/** Runs a computation; a `Problem` becomes a refusal to show in place, anything else is a bug and goes on. */
export function outcome<T>(compute: () => T): Outcome<T> {
  try {
    return { ok: true, value: compute() };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { ok: false, refusal: { title: error.message, advice: error.advice, facts: error.facts } };
  }
}
