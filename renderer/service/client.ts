import type { ProblemDetails } from '@service/problems/problem-details';
import type { Service } from '@service/service';
import { hc, type InferResponseType } from 'hono/client';
import { ServiceProblem, UNREACHABLE } from './problem';
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

export { problemOf, ServiceProblem } from './problem';
export type { InferResponseType, ProblemDetails };

interface JsonResponse<T> {
  ok: boolean;
  status: number;
  json(): Promise<T>;
}

/** What comes over the wire; when nothing comes, or it breaks off, that is told as a `ServiceProblem`. */
async function arriving<T>(pending: Promise<T>): Promise<T> {
  try {
    return await pending;
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
    reach.value = 'silent';
    throw new ServiceProblem(UNREACHABLE);
  }
}

async function settled<R extends { ok: boolean }>(pending: Promise<R>): Promise<R> {
  const response = await arriving(pending);
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
  return response.status === 204 ? (undefined as T) : arriving(response.json());
}

/** The bytes of a successful answer, with what they are; any other answer is thrown as a `ServiceProblem`. */
export async function answerBytes(
  pending: Promise<{ ok: boolean; headers: Headers; arrayBuffer(): Promise<ArrayBuffer> }>,
): Promise<{ bytes: Uint8Array<ArrayBuffer>; mediaType: string }> {
  const response = await settled(pending);
  return {
    bytes: new Uint8Array(await arriving(response.arrayBuffer())),
    mediaType: response.headers.get('content-type') ?? '',
  };
}
