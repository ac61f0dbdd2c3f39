import type { z } from 'zod';

/** What a kind of case comes to: a figure, a text or a list. */
export type Value = number | string | readonly unknown[];

/** One value, or several by name. */
export type Outcome = Value | Readonly<Record<string, Value>>;

/** A kind takes a case's raw inputs, checks them, and computes; it throws a `ZodError` or a `Problem`. */
export type Kind = (inputs: unknown) => Outcome;

/** A kind from the shape of its inputs and what it computes from them. */
export function kind<T>(shape: z.ZodType<T>, compute: (inputs: T) => Outcome): Kind {
  return (inputs) => compute(shape.parse(inputs));
}
