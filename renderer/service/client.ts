import type { ProblemDetails } from '@service/problems/problem-details';
import type { Service } from '@service/service';
import { hc, type InferResponseType } from 'hono/client';
import { reach } from './reach';

// What a request that outlives its page may carry, in bytes; browsers take 64 KiB.
const MOST_AT_LAST = 60_000;
let leaving = false;
for (const going of ['beforeunload', 'pagehide'])
  window.addEventListener(going, () => (leaving = true), { capture: true });

/** Sends a request; one made while the page goes is carried out after it has gone. */
function send(input: RequestInfo | URL, init?: RequestInit): Promise<Response> {
  const body = init?.body;
  const fits = typeof body === 'string' && new TextEncoder().encode(body).length <= MOST_AT_LAST;
  return fetch(input, leaving && fits ? { ...init, keepalive: true } : init);
}

/** The typed client of the service; the host answers on our own origin. */
export const service = hc<Service>(window.location.origin, { fetch: send }).api;

export type { InferResponseType, ProblemDetails };

/** A problem that the service answered, or that no answer came. */
export class ServiceProblem extends Error {
  constructor(readonly details: ProblemDetails) {
    super(details.title);
    this.name = 'ServiceProblem';
  }
}

const UNREACHABLE: ProblemDetails = {
  type: 'tag:stillroom,2026:problem/unreachable',
  title: 'Stillroom does not answer.',
  status: 0,
  detail: 'Start it again: this page then goes on by itself. What is marked “Saved” is safe.',
  code: 'internal',
  fields: [],
  facts: {},
};

interface JsonResponse<T> {
  ok: boolean;
  status: number;
  json(): Promise<T>;
}

async function settled<R extends { ok: boolean }>(pending: Promise<R>): Promise<R> {
  let response: R;
  try {
    response = await pending;
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
    reach.value = 'silent';
    throw new ServiceProblem(UNREACHABLE);
  }
  if (response.ok) {
    reach.value = 'answers';
    return response;
  }
  const details = (await (response as unknown as Response).json().catch(() => UNREACHABLE)) as ProblemDetails;
  reach.value = details.code === 'key-needed' ? 'key needed' : 'answers';
  throw new ServiceProblem(details);
}

/** The JSON of a successful answer; any other answer is thrown as a `ServiceProblem`. */
export async function answer<T>(pending: Promise<JsonResponse<T>>): Promise<T> {
  const response = await settled(pending);
  return response.status === 204 ? (undefined as T) : response.json();
}

/** The bytes of a successful answer, such as a PDF. */
export async function answerBytes(pending: Promise<Response>): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await (await settled(pending)).arrayBuffer());
}

/** Any error as problem details, for showing. */
export function problemOf(error: unknown): ProblemDetails {
  if (error instanceof ServiceProblem) return error.details;
  console.error(error);
  return {
    ...UNREACHABLE,
    title: 'Something went wrong on this screen.',
    detail: 'Reload it; what was saved is safe.',
  };
}
