import { Problem } from '@core/problems/problem';
import type { ProblemDetails } from '@service/problems/problem-details';

export type { ProblemDetails };

/** A problem that the service answered, or that no answer came. */
export class ServiceProblem extends Error {
  constructor(readonly details: ProblemDetails) {
    super(details.title);
    this.name = 'ServiceProblem';
  }
}

/** No answer came. */
export const UNREACHABLE: ProblemDetails = {
  type: 'tag:stillroom,2026:problem/unreachable',
  title: 'Stillroom is not answering.',
  status: 0,
  detail: 'Start it again: this page then continues by itself. What is marked “Saved” is safe.',
  code: 'internal',
  fields: [],
  facts: {},
};

/** Any error as problem details, for showing. */
export function problemOf(error: unknown): ProblemDetails {
  if (error instanceof ServiceProblem) return error.details;
  // Refused by what is computed in the page itself, such as the reading of a file.
  if (error instanceof Problem) {
    const { message: title, advice: detail, code, fields, facts } = error;
    return { ...UNREACHABLE, title, detail, code, fields, facts };
  }
  console.error(error);
  return {
    ...UNREACHABLE,
    title: 'Something went wrong on this screen.',
    detail: 'Reload it; what was saved is safe.',
  };
}
