import { expect } from 'vitest';
import { Problem } from '@core/problems/problem';

/** Expects a refusal of bad input that says what is wrong and what to do; gives it back to look at. */
export function refusal(attempt: () => unknown, says: RegExp): Problem {
  try {
    attempt();
  } catch (cause) {
    if (!(cause instanceof Problem)) throw cause;
    expect(cause.code).toBe('invalid-input');
    expect(cause.message).toMatch(says);
    expect(cause.advice.length).toBeGreaterThan(10);
    return cause;
  }
  throw new Error('It was not refused.');
}
