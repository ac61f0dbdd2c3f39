import { Problem, type ProblemCode } from '@core/problems/problem';
import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';

const STATUS: Record<ProblemCode, ContentfulStatusCode> = {
  'invalid-input': 422,
  'not-found': 404,
  'in-use': 409,
  conflict: 409,
  'not-allowed': 403,
  'key-needed': 403,
  'too-large': 413,
  'no-library': 409,
  'library-locked': 423,
  'library-damaged': 409,
  'library-newer': 409,
  'library-not-one': 409,
  'library-missing': 404,
  'library-changed-outside': 409,
  'library-read-only': 403,
  'disk-full': 507,
  'disk-error': 500,
  'unprintable-text': 422,
  infeasible: 422,
  cancelled: 409,
  internal: 500,
};

/** Our problem details: RFC 9457 members, and what a screen needs beside them. */
export interface ProblemDetails {
  type: string;
  title: string;
  status: number;
  detail: string;
  code: ProblemCode;
  fields: { path: string; message: string }[];
  facts: Record<string, unknown>;
}

function asProblem(error: unknown): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof HTTPException && error.status < 500)
    return new Problem({
      code: 'invalid-input',
      title: 'The request could not be read.',
      advice: 'Reload the page and try again. Nothing was changed.',
    });
  console.error(error);
  return new Problem({
    code: 'internal',
    title: 'Stillroom met an error of its own.',
    advice: 'What was saved before is safe. Try again; if it happens again, note what you did last.',
  });
}

/** Answers any error as problem details (RFC 9457). */
export function answerProblem(error: unknown, context: Context): Response {
  const problem = asProblem(error);
  const status = STATUS[problem.code];
  const details: ProblemDetails = {
    type: `tag:stillroom,2026:problem/${problem.code}`,
    title: problem.message,
    status,
    detail: problem.advice,
    code: problem.code,
    fields: problem.fields,
    facts: problem.facts,
  };
  return context.json(details, status, { 'Content-Type': 'application/problem+json' });
}
