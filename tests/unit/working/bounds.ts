import { expect } from 'vitest';
import { refusal } from './refusal';

/** What no number field may hold, whatever it is about. */
export const NO_NUMBERS = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as const;

/** Out of bounds for what must be above zero, and for what may be zero. */
export const NOT_POSITIVE = [...NO_NUMBERS, 0, -1e-9, -1] as const;
export const NEGATIVE = [...NO_NUMBERS, -1e-9, -1] as const;

/** A field of a computation: how it is called in a refusal, and the computation with some value in its place. */
export type FieldTried = readonly [
  named: string,
  refused: readonly number[],
  attempt: (value: number) => unknown,
];

/** Expects each value to be refused by the field's name, in the words and at the place that a screen marks. */
export function refusesEach([named, refused, attempt]: FieldTried): void {
  for (const value of refused) {
    const problem = refusal(() => attempt(value), new RegExp(named.replace(/[().]/g, '\\$&'), 'i'));
    expect(
      problem.fields.map((one) => one.path),
      `${named} at ${value}`,
    ).toEqual([named]);
    expect(problem.advice, `${named} at ${value}`).toMatch(/[Ee]nter|[Cc]heck|[Ll]ower|[Cc]hoose/);
  }
}
