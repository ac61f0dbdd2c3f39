import { Problem } from '@core/problems/problem';

/** The value, or the problem that what was asked for is not there (any more). */
export function found<T>(value: T | undefined, what: string): T {
  if (value !== undefined) return value;
  throw new Problem({
    code: 'not-found',
    title: `This ${what} is not in the library.`,
    advice: 'It may have been deleted in another window. Go back to the list.',
  });
}

/** An edit that started from an older state than the library holds. */
export function changedMeanwhile(what: string, facts: Record<string, unknown> = {}): Problem {
  return new Problem({
    code: 'conflict',
    title: `This ${what} was changed in another window meanwhile.`,
    advice: 'Load the newer state, then enter your change again. Your text is still in the form.',
    facts,
  });
}

/** Refuses an edit that started from an older state than the library holds. */
export function sameRevision(expected: number, current: number, what: string): void {
  if (expected !== current) throw changedMeanwhile(what, { expected, current });
}
