import type { ProblemCode } from '@core/problems/problem';
import type { ProblemDetails } from '../problems/problem-details';

/** What a gate says to a request that it does not let through. */
export interface Refusal {
  status: 400 | 403 | 404 | 405 | 503;
  code: ProblemCode;
  title: string;
  advice: string;
}

/** A refusal as problem details (RFC 9457) for the API, as two lines of text for someone looking at a page. */
export function refusalResponse(refusal: Refusal, path: string): Response {
  const { status, code, title, advice } = refusal;
  if (!path.startsWith('/api/')) {
    return new Response(`${title}\n${advice}\n`, {
      status,
      headers: { 'Content-Type': 'text/plain; charset=utf-8' },
    });
  }
  const type = `tag:stillroom,2026:problem/${code}`;
  const details: ProblemDetails = { type, title, status, detail: advice, code, fields: [], facts: {} };
  return new Response(JSON.stringify(details), {
    status,
    headers: { 'Content-Type': 'application/problem+json' },
  });
}
