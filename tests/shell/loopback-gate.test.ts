import { loopbackGate } from '@service/security/loopback-gate';
import { RunKeys } from '@service/security/run-keys';
import { Hono } from 'hono';
import { describe, expect, test } from 'vitest';

const KEY = 'k'.repeat(43);
const HOST = '127.0.0.1:4711';
const ORIGIN = `http://${HOST}`;
const SECRET = 's'.repeat(43);
const COOKIE = `stillroom-4711=${SECRET}`;

/** A run whose address was used by one browser, and another address, with `KEY`, by nobody yet. */
function runKeys(): RunKeys {
  const texts = ['used', SECRET, KEY, 'other secret'];
  const keys = new RunKeys(() => texts.shift() ?? 'more');
  keys.exchange(keys.issue());
  keys.issue();
  return keys;
}

function app(keys = runKeys()) {
  const hono = new Hono();
  hono.use(loopbackGate({ port: () => 4711, keys }));
  hono.all('*', (c) => c.text('inside'));
  return hono;
}

function ask(path: string, headers: Record<string, string>, method = 'GET', at = app()) {
  return at.request(`http://service.invalid${path}`, { method, headers });
}

describe('the first visit', () => {
  test('the printed address changes its key for a cookie that scripts and other sites cannot use', async () => {
    const response = await ask(`/?key=${KEY}`, { host: HOST, 'sec-fetch-site': 'none' });
    expect(response.status).toBe(200);
    const cookie = response.headers.get('set-cookie') ?? '';
    expect(cookie).toContain('stillroom-4711=other%20secret');
    expect(cookie).toContain('HttpOnly');
    expect(cookie).toContain('SameSite=Strict');
    expect(cookie).not.toContain('Domain');
  });

  test.each(['', 'x', KEY.slice(1), `${KEY}k`, KEY.toUpperCase()])(
    'a wrong key “%s” gets nothing',
    async (key) => {
      const response = await ask(`/?key=${key}`, { host: HOST });
      expect(response.status).toBe(403);
      expect(response.headers.get('set-cookie')).toBeNull();
      expect(await response.text()).not.toContain('inside');
    },
  );

  test('a key works once, and a new one makes the one before void', async () => {
    const keys = new RunKeys();
    const here = app(keys);
    const first = keys.issue();
    const second = keys.issue();
    expect(first).not.toBe(second);
    const statusOf = async (key: string) => (await ask(`/?key=${key}`, { host: HOST }, 'GET', here)).status;
    expect([await statusOf(first), await statusOf(second), await statusOf(second)]).toEqual([403, 200, 403]);
  });

  test('the secret is not the key, and each browser gets one of its own', () => {
    const keys = new RunKeys();
    const texts = [keys.issue()];
    const first = keys.exchange(texts[0] ?? '');
    texts.push(keys.issue());
    const second = keys.exchange(texts[1] ?? '');
    expect(new Set([...texts, first, second]).size).toBe(4);
    expect([keys.knows(first), keys.knows(second), keys.knows(texts[0])]).toEqual([true, true, false]);
  });

  test('asking only for its head does not use an address up', async () => {
    const here = app();
    await ask(`/?key=${KEY}`, { host: HOST }, 'HEAD', here);
    expect((await ask(`/?key=${KEY}`, { host: HOST }, 'GET', here)).status).toBe(200);
  });

  test('who is in already is led in by an address that was used, without another cookie', async () => {
    const response = await ask('/?key=used', { host: HOST, cookie: COOKIE });
    expect(response.status).toBe(200);
    expect(response.headers.get('set-cookie')).toBeNull();
    expect(await response.text()).not.toContain('inside');
  });

  test('the file that opens the browser may lead in, a script of another site may not', async () => {
    const from = { host: HOST, 'sec-fetch-site': 'cross-site' };
    const visit = { ...from, 'sec-fetch-mode': 'navigate' };
    expect((await ask(`/?key=${KEY}`, visit)).status).toBe(200);
    expect((await ask(`/?key=${KEY}`, { ...from, 'sec-fetch-mode': 'no-cors' })).status).toBe(403);
    expect((await ask(`/api/materials?key=${KEY}`, { ...visit, cookie: COOKIE })).status).toBe(403);
    expect((await ask('/', { ...visit, cookie: COOKIE })).status).toBe(403);
  });

  test('the key works at the front door only', async () => {
    expect((await ask(`/api/materials?key=${KEY}`, { host: HOST })).status).toBe(403);
  });
});

describe('without this run’s secret', () => {
  test('a page says what to open', async () => {
    const response = await ask('/', { host: HOST });
    expect(response.status).toBe(403);
    expect(await response.text()).toContain('address that Stillroom printed');
  });

  test('the API answers problem details', async () => {
    const response = await ask('/api/materials', { host: HOST });
    expect(response.status).toBe(403);
    expect(response.headers.get('content-type')).toBe('application/problem+json');
    expect(await response.json()).toMatchObject({ status: 403, code: 'key-needed' });
  });

  test.each([
    `stillroom-4712=${SECRET}`,
    'stillroom-4711=',
    'stillroom-4711=wrong',
    `stillroom=${SECRET}`,
    `stillroom-4711=${KEY}`,
  ])('the cookie “%s” does not serve', async (cookie) => {
    expect((await ask('/api/materials', { host: HOST, cookie })).status).toBe(403);
  });
});

test('the locked page is drawn with two files that hold nothing of a maker’s', async () => {
  expect((await ask('/door.css', { host: HOST })).status).toBe(200);
  expect((await ask('/icon.svg', { host: HOST })).status).toBe(200);
  expect((await ask('/door.css', { host: HOST, origin: ORIGIN }, 'POST')).status).toBe(403);
  expect((await ask('/index.html', { host: HOST })).status).toBe(403);
});

describe('hosts', () => {
  test.each([
    'localhost:4711',
    '0.0.0.0:4711',
    '[::1]:4711',
    '127.0.0.1',
    '127.0.0.1:80',
    '127.0.0.1:47110',
    '127.0.0.2:4711',
    '127.1:4711',
    '2130706433:4711',
    '127.0.0.1.example.com:4711',
    '127.0.0.1:4711.example.com',
    'stillroom.example.com:4711',
    'user@127.0.0.1:4711',
    '',
  ])('“%s” is refused, even with the key', async (host) => {
    const response = await ask('/api/materials', { host, cookie: COOKIE });
    expect(response.status).toBe(403);
  });

  test('a request without a host is refused', async () => {
    expect((await ask('/api/materials', { cookie: COOKIE })).status).toBe(403);
  });
});

describe('origins', () => {
  test.each([
    'null',
    'http://localhost:4711',
    'https://127.0.0.1:4711',
    'http://127.0.0.1:4712',
    'http://127.0.0.1',
    'http://127.0.0.1:4711.example.com',
    'http://127.0.0.1:4711/',
    'http://evil.example.com',
    'app://stillroom',
    'file://',
  ])('“%s” is refused for reading and writing', async (origin) => {
    for (const method of ['GET', 'POST', 'OPTIONS']) {
      const response = await ask('/api/materials', { host: HOST, cookie: COOKIE, origin }, method);
      expect(response.status).toBe(403);
      expect(response.headers.get('access-control-allow-origin')).toBeNull();
    }
  });

  test.each(['POST', 'PUT', 'PATCH', 'DELETE'])('%s must say where it comes from', async (method) => {
    expect((await ask('/api/materials', { host: HOST, cookie: COOKIE }, method)).status).toBe(403);
  });

  test.each(['cross-site', 'same-site'])('a browser that says “%s” is refused', async (site) => {
    const response = await ask('/api/materials', { host: HOST, cookie: COOKIE, 'sec-fetch-site': site });
    expect(response.status).toBe(403);
  });
});

describe('the maker’s own page', () => {
  test('reads and writes', async () => {
    const headers = { host: HOST, cookie: COOKIE, 'sec-fetch-site': 'same-origin' };
    expect(await (await ask('/api/materials', headers)).text()).toBe('inside');
    for (const method of ['POST', 'PUT', 'PATCH', 'DELETE']) {
      expect((await ask('/api/materials', { ...headers, origin: ORIGIN }, method)).status).toBe(200);
    }
  });
});
