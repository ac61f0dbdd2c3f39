import { z } from 'zod';

/** What a published figure was, and how far off a result may be: absolute, in the figure's unit. */
const expected = z.object({
  value: z.number('The expected value must be a number.'),
  unit: z.string('The unit must be a text.').default(''),
  tolerance: z.number('The tolerance must be a number.').min(0, 'The tolerance cannot be negative.'),
});
export type Expected = z.infer<typeof expected>;

/** One value, or several under their names. */
const expect = z.union(
  [expected, z.record(z.string(), expected)],
  '“expect” needs a value, a unit and a tolerance, or several of these under their names.',
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
