import type { Problem, ProblemParts } from '@core/problems/problem';

/** A Problem as plain data: it does not survive the way between threads, its parts do. */
export function problemParts({ code, message, advice, fields, facts }: Problem): ProblemParts {
  return { code, title: message, advice, fields, facts };
}
