import { z } from 'zod';

/** What a published figure was, and how far off a result may be: absolute, in the figure's unit. */
const figure = z.object({
  value: z.number('The expected value must be a number.'),
  unit: z.string('The unit must be a text.').default(''),
  tolerance: z.number('The tolerance must be a number.').min(0, 'The tolerance cannot be negative.'),
});

/** A text or a list is compared exactly; a list may hold lists, such as [lot, quantity]. */
const exact = z.union([z.string(), z.array(z.union([z.string(), z.number(), z.array(z.unknown())]))]);

const list = z.array(z.union([z.string(), z.number(), z.array(z.unknown())]));

/** An exact value may also stand under what it is: a value, a text or a list. */
const expected = z.union([
  figure,
  exact,
  z.object({ value: exact }).transform(({ value }) => value),
  z.strictObject({ text: z.string() }).transform(({ text }) => text),
  z.strictObject({ list }).transform((one) => one.list),
]);
export type ExpectedFigure = z.infer<typeof figure>;
export type Expected = z.infer<typeof expected>;

/** What a case expects where its inputs must be turned down with a clear problem. */
export const REFUSED = 'refused';

/** One value, or several under their names. */
const expect = z.union(
  [expected, z.record(z.string(), expected)],
  '“expect” needs a value with a tolerance, a text or a list, or several of these under their names.',
);

/** A worked example of a published source. */
export const workedCase = z.object({
  id: z.string('A case needs an “id”.').min(1, 'A case needs an “id”.'),
  kind: z.string('A case needs a “kind”.').min(1, 'A case needs a “kind”.'),
  inputs: z.record(z.string(), z.unknown(), 'A case needs “inputs”.'),
  expect,
  /** Its provenance does not bear on whether it passes; our own published cases are tested to carry it. */
  source: z.string('The source must be a text.').optional(),
  retrieved: z.string('“retrieved” must be a text.').optional(),
  confidence: z.string('“confidence” must be a text.').optional(),
  basis: z.string('“basis” must be a text.').optional(),
  note: z.string('The note must be a text.').optional(),
});
export type WorkedCase = z.infer<typeof workedCase>;

/** The values a case expects, by name; a lone value goes by no name. */
export function expectations(from: WorkedCase): { name: string; expected: Expected }[] {
  const found = expected.safeParse(from.expect);
  if (found.success) return [{ name: '', expected: found.data }];
  return Object.entries(from.expect as Record<string, Expected>).map(([name, one]) => ({
    name,
    expected: one,
  }));
}

/** Whether this is a figure with its tolerance, and not a text or list. */
export function isFigure(one: Expected): one is ExpectedFigure {
  return typeof one === 'object' && !Array.isArray(one);
}
