import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { MessageChannel } from 'node:worker_threads';
import { Problem } from '@core/problems/problem';
import { answerOver } from '@service/bridge/answer';
import { Asking, type Calls } from '@service/bridge/ask';

import type { RequestHandler } from '@service/security/hosted-app';
import fc from 'fast-check';
import { Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { serviceWith } from '../unit/service/service-fixture';
import { nodePort } from './node-port';

const MB = 1024 * 1024;
const channels: MessageChannel[] = [];
afterEach(() => {
  for (const { port1 } of channels.splice(0)) port1.close();
});

/** Both ends of a bridge, over a real port of Node's: everything is copied, and comes later. */
function bridged<C extends Calls>(handler: RequestHandler, calls: C = {} as C) {
  const channel = new MessageChannel();
  channels.push(channel);
  const notices: unknown[] = [];
  const answering = answerOver(nodePort(channel.port2), handler, calls);
  const asking = new Asking<C>(nodePort(channel.port1), (notice) => notices.push(notice));
  return { asking, answering, notices };
}

const handler = (fetch: RequestHandler['fetch']): RequestHandler => ({ fetch });
const request = (path: string, init?: RequestInit & { duplex?: 'half' }): Request =>
  new Request(`app://stillroom${path}`, init);
const json = (method: string, body: unknown): RequestInit => ({
  method,
  body: JSON.stringify(body),
  headers: { 'Content-Type': 'application/json', Origin: 'app://stillroom' },
});

/** Gives the pieces one by one as they are asked for, and counts them. */
function counted(pieces: number, bytes = 10) {
  const given = { pieces: 0, cancelled: false };
  const body = new ReadableStream<Uint8Array>(
    {
      pull(controller) {
        if (given.pieces === pieces) return controller.close();
        given.pieces += 1;
        controller.enqueue(new Uint8Array(bytes).fill(given.pieces));
      },
      cancel: () => void (given.cancelled = true),
    },
    { highWaterMark: 0 },
  );
  return { given, body };
}

describe('the real service over a port', () => {
  test('answers as it does without one: status, headers and body', async () => {
    const { service, ask } = await serviceWith('demonstration');
    const { asking } = bridged(service);
    const { body: formulas } = await ask<{ id: string }[]>('GET', '/formulas');
    const asked: [string, RequestInit?][] = [
      ['/api/library'],
      ['/api/materials?text=cet'],
      [`/api/formulas/${formulas[0]?.id}`],
      ['/api/nowhere'],
      ['/api/materials', json('POST', { tradeName: '' })],
      ['/api/materials', { ...json('POST', {}), body: '{' }],
    ];
    for (const [path, init] of asked) {
      const [direct, carried] = [
        await service.fetch(request(path, init)),
        await asking.fetch(request(path, init)),
      ];
      expect(carried.status, path).toBe(direct.status);
      expect([...carried.headers], path).toEqual([...direct.headers]);
      const [there, here] = [await direct.arrayBuffer(), await carried.arrayBuffer()];
      expect(Buffer.from(here).equals(Buffer.from(there)), path).toBe(true);
    }
  });

  test('keeps an attachment of 25 MB byte for byte, and refuses a larger one before its end', async () => {
    const { asking } = bridged((await serviceWith()).service);
    const bytes = randomBytes(25 * MB);
    bytes.set(new TextEncoder().encode('%PDF-1.7\n'));
    const kept = await asking.fetch(request('/api/attachments', { method: 'POST', body: bytes }));
    expect(kept.status).toBe(201);
    const { sha256 } = (await kept.json()) as { sha256: string };
    const back = await asking.fetch(request(`/api/attachments/${sha256}`));
    expect(Buffer.from(await back.arrayBuffer()).equals(bytes)).toBe(true);

    const { given, body } = counted(60, MB);
    const refused = await asking.fetch(request('/api/attachments', { method: 'POST', body, duplex: 'half' }));
    expect(refused.status).toBe(413);
    expect(given.pieces).toBeLessThan(40);
    await expect.poll(() => given.cancelled).toBe(true);
  });

  test('answers many requests at once, each with its own', async () => {
    const { asking } = bridged((await serviceWith('demonstration')).service);
    const words = Array.from({ length: 60 }, (_, at) => `no such material ${at}`);
    const answers = await Promise.all(
      words.map(async (word) => {
        const added = await asking.fetch(request('/api/searches', json('POST', { name: word, query: '' })));
        return ((await added.json()) as { name: string }).name;
      }),
    );
    expect(answers).toEqual(words);
    const statuses = await Promise.all(
      words.map(async (_, at) => (await asking.fetch(request(at % 2 ? '/api/library' : '/api/none'))).status),
    );
    expect(statuses).toEqual(words.map((_, at) => (at % 2 ? 200 : 404)));
  });
});

describe('bodies', () => {
  test('arrive as they were sent, however they are cut', async () => {
    const echo = handler((given) => new Response(given.body, { headers: { 'x-a': '1' } }));
    const { asking } = bridged(echo);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.uint8Array({ maxLength: 3000 }), { maxLength: 40 }), async (pieces) => {
        const body = new ReadableStream<Uint8Array>({
          start(controller) {
            for (const piece of pieces) controller.enqueue(piece);
            controller.close();
          },
        });
        const answer = await asking.fetch(request('/echo', { method: 'PUT', body, duplex: 'half' }));
        expect(Buffer.from(await answer.arrayBuffer()).equals(Buffer.concat(pieces))).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test('carry no more memory than their own', async () => {
    const large = new Uint8Array(8 * MB).fill(7);
    const { asking } = bridged(handler(() => new Response(large.subarray(100, 110))));
    const reader = (await asking.fetch(request('/'))).body?.getReader();
    const { value } = (await reader?.read()) ?? {};
    expect([value?.length, value?.buffer.byteLength]).toEqual([10, 10]);
  });

  test('are sent as fast as they are read, and not faster', async () => {
    const { given, body } = counted(10_000);
    const { asking } = bridged(handler(() => new Response(body)));
    const reader = (await asking.fetch(request('/'))).body?.getReader();
    await new Promise((resume) => setTimeout(resume, 50));
    expect(given.pieces).toBeLessThan(20);
    for (let at = 0; at < 100; at += 1) await reader?.read();
    await new Promise((resume) => setTimeout(resume, 50));
    expect(given.pieces).toBeGreaterThanOrEqual(100);
    expect(given.pieces).toBeLessThan(120);
  });

  test('that break off at their source break off at their reader, with the reason', async () => {
    const broken = new ReadableStream<Uint8Array>({
      start(controller) {
        controller.enqueue(new Uint8Array(3));
        controller.error(new Error('The disk went away.'));
      },
    });
    const { asking } = bridged(handler(() => new Response(broken)));
    const answer = await asking.fetch(request('/'));
    await expect(answer.arrayBuffer()).rejects.toThrow('The disk went away.');
  });

  test('that nobody reads at the other end are not sent for ever', async () => {
    const { given, body } = counted(1000);
    const { asking } = bridged(handler(() => new Response('no', { status: 404 })));
    const answer = await asking.fetch(request('/', { method: 'POST', body, duplex: 'half' }));
    expect(await answer.text()).toBe('no');
    await expect.poll(() => given.cancelled).toBe(true);
    expect(given.pieces).toBeLessThan(10);
  });

  test.each([204, 304])('are absent where %i says so', async (status) => {
    const { asking } = bridged(handler(() => new Response(null, { status })));
    const answer = await asking.fetch(request('/'));
    expect([answer.status, answer.body]).toEqual([status, null]);
  });
});

describe('a stream of events', () => {
  test('is heard one by one while it lasts, and its source learns when nobody listens', async () => {
    let tell: ((text: string) => Promise<void>) | undefined;
    const ended = vi.fn();
    const app = new Hono().get('/api/changes', (c) =>
      streamSSE(c, async (stream) => {
        stream.onAbort(ended);
        tell = (data) => stream.writeSSE({ data });
        await tell('first');
        await once(c.req.raw.signal, 'abort');
      }),
    );
    const { asking } = bridged(app);
    const answer = await asking.fetch(request('/api/changes'));
    expect(answer.headers.get('content-type')).toContain('text/event-stream');
    const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
    expect((await reader?.read())?.value).toBe('data: first\n\n');
    await tell?.('second');
    expect((await reader?.read())?.value).toBe('data: second\n\n');
    await reader?.cancel();
    await expect.poll(() => ended).toHaveBeenCalled();
  });
});

describe('giving up', () => {
  test('before the answer reaches the work, and ends the wait', async () => {
    let signal: AbortSignal | undefined;
    const { asking } = bridged(
      handler(async (given) => {
        signal = given.signal;
        await once(given.signal, 'abort');
        return new Response('too late');
      }),
    );
    const control = new AbortController();
    const pending = asking.fetch(request('/', { signal: control.signal }));
    await expect.poll(() => signal).toBeDefined();
    control.abort();
    await expect(pending).rejects.toMatchObject({ name: 'AbortError' });
    await expect.poll(() => signal?.aborted).toBe(true);
  });

  test('in the middle of an answer breaks it off and stops its source', async () => {
    const { given, body } = counted(1000);
    const { asking } = bridged(handler(() => new Response(body)));
    const control = new AbortController();
    const answer = await asking.fetch(request('/', { signal: control.signal }));
    control.abort();
    await expect(answer.arrayBuffer()).rejects.toMatchObject({ name: 'AbortError' });
    await expect.poll(() => given.cancelled).toBe(true);
  });

  test('beforehand asks nothing', async () => {
    const fetch = vi.fn(() => new Response());
    const { asking } = bridged(handler(fetch));
    await expect(asking.fetch(request('/', { signal: AbortSignal.abort() }))).rejects.toThrow('given up');
    expect(fetch).not.toHaveBeenCalled();
  });

  test('by the service itself comes back as an error, and later requests are answered', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const { asking } = bridged(
      handler(({ url }) => {
        if (url.endsWith('/bad')) throw new Error('A fault.');
        return new Response('good');
      }),
    );
    await expect(asking.fetch(request('/bad'))).rejects.toThrow('A fault.');
    expect(await (await asking.fetch(request('/good'))).text()).toBe('good');
  });
});

describe('when the other end is gone', () => {
  test('all that is under way breaks off, and nothing waits for ever', async () => {
    const { asking } = bridged(
      handler(({ url }) =>
        url.endsWith('/never') ? new Promise<never>(() => undefined) : new Response(counted(1000).body),
      ),
      { never: () => new Promise<never>(() => undefined) },
    );
    const half = await asking.fetch(request('/half'));
    const waiting = [asking.fetch(request('/never')), asking.call('never'), half.text()];
    asking.fail(new Error('It is gone.'));
    for (const one of [...waiting, asking.fetch(request('/late')), asking.call('never')])
      await expect(one).rejects.toThrow('It is gone.');
  });
});

describe('calls and notices', () => {
  test('give what the function gives, and throw what it throws: a Problem with all its parts', async () => {
    const problem = new Problem({
      code: 'conflict',
      title: 'No.',
      advice: 'Do that.',
      facts: { at: 3 },
    });
    const { asking, answering, notices } = bridged(
      handler(() => new Response()),
      {
        add: (a: number, b: number) => a + b,
        refuse: () => {
          throw problem;
        },
        fault: () => Promise.reject(new Error('A fault.')),
      },
    );
    expect(await asking.call('add', 2, 3)).toBe(5);
    const refused: unknown = await asking.call('refuse').catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Problem);
    expect(refused).toMatchObject({ code: 'conflict', message: 'No.', advice: 'Do that.', facts: { at: 3 } });
    await expect(asking.call('fault')).rejects.toThrow('A fault.');
    // A name of every object's, which no call has.
    await expect(asking.call('toString' as 'fault')).rejects.toThrow('no call');
    answering.notify({ folder: '/a' });
    await expect.poll(() => notices).toEqual([{ folder: '/a' }]);
  });
});
