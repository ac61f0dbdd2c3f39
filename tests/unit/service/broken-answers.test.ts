import { reach } from '@renderer/service/reach';
import { UNREACHABLE } from '@renderer/service/problem';
import { afterAll, expect, test, vi } from 'vitest';

// The client looks at its window when it is loaded.
vi.stubGlobal('window', Object.assign(new EventTarget(), { location: { origin: 'http://localhost' } }));
const client = await import('@renderer/service/client');
afterAll(() => void vi.unstubAllGlobals());

/** An answer whose head says that all is well, and whose body breaks off. */
function brokenOff(cause: Error): Response {
  const body = new ReadableStream({
    start(control) {
      control.enqueue(new TextEncoder().encode('{"name":"Shel'));
      control.error(cause);
    },
  });
  return new Response(body, { status: 201 });
}

test('an answer that breaks off after its head is told as no answer, and the page knows that nothing is there', async () => {
  reach.value = 'answers';
  const lost = await client
    .answer(Promise.resolve(brokenOff(new TypeError('network error'))))
    .catch((error: unknown) => error);
  expect(client.problemOf(lost)).toEqual(UNREACHABLE);
  expect(reach.value).toBe('silent');
});

test('so are bytes that break off', async () => {
  reach.value = 'answers';
  const lost = await client
    .answerBytes(Promise.resolve(brokenOff(new TypeError('network error'))))
    .catch((error: unknown) => error);
  expect(client.problemOf(lost)).toEqual(UNREACHABLE);
  expect(reach.value).toBe('silent');
});

test('a page that gave the request up itself is told nothing', async () => {
  reach.value = 'answers';
  const aborted = new DOMException('given up', 'AbortError');
  await expect(client.answer(Promise.resolve(brokenOff(aborted)))).rejects.toBe(aborted);
  expect(reach.value).toBe('answers');
});

test('a whole answer is its JSON', async () => {
  const made = new Response(JSON.stringify({ name: 'Shelf' }), { status: 201 });
  expect(await client.answer(Promise.resolve(made))).toEqual({ name: 'Shelf' });
  expect(reach.value).toBe('answers');
});
