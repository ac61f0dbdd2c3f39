import { zValidator } from '@hono/zod-validator';
import { Problem } from '@core/problems/problem';
import type { z } from 'zod';

/** A body that is wrong throughout is told by each part’s first faults, not line by line. */
const MOST_OF_A_PART = 5;
const MOST_FIELDS = 200;

/** The part of a body that an issue is in: its path up to the first place in a list, such as `content.figures`. */
function partOf(path: readonly PropertyKey[]): string {
  const index = path.findIndex((step) => typeof step === 'number');
  return path
    .slice(0, index < 0 ? 2 : Math.min(index, 2))
    .map(String)
    .join('.');
}

/** The first few issues of each part, so that every part at fault is named. */
function listed(issues: readonly z.core.$ZodIssue[]): z.core.$ZodIssue[] {
  const met = new Map<string, number>();
  const kept: z.core.$ZodIssue[] = [];
  for (const issue of issues) {
    const part = partOf(issue.path);
    const count = met.get(part) ?? 0;
    met.set(part, count + 1);
    if (count < MOST_OF_A_PART) kept.push(issue);
    if (kept.length === MOST_FIELDS) break;
  }
  return kept;
}

/** Turns zod's issues into field problems that a maker can read: the first few of each part. */
export function invalidInput(error: z.core.$ZodError): Problem {
  const fields = listed(error.issues).map((issue) => ({
    path: issue.path.map(String).join('.'),
    message: issue.message,
  }));
  return new Problem({
    code: 'invalid-input',
    title: fields[0]?.message ?? 'Something entered is not right.',
    advice: 'Correct what is marked. Nothing already saved was changed.',
    fields,
  });
}

/** Validates a request's JSON body; a bad one leaves as problem details. */
export function validBody<T extends z.ZodType>(schema: T) {
  return zValidator('json', schema, (result) => {
    if (!result.success) throw invalidInput(result.error);
  });
}

/** Validates a request's query as {@link validBody} does a body. */
export function validQuery<T extends z.ZodType>(schema: T) {
  return zValidator('query', schema, (result) => {
    if (!result.success) throw invalidInput(result.error);
  });
}
