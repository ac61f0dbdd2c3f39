import { zValidator } from '@hono/zod-validator';
import { Problem } from '@core/problems/problem';
import type { z } from 'zod';

/** Turns zod's issues into field problems that a maker can read. */
export function invalidInput(error: z.core.$ZodError): Problem {
  const fields = error.issues.map((issue) => ({
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
