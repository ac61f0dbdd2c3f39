import { loopbackGate } from '@service/security/loopback-gate';
import { Hono } from 'hono';
import { describe, expect, test } from 'vitest';

const KEY = 'k'.repeat(43);
const HOST = '127.0.0.1:4711';
const ORIGIN = `http://${HOST}`;
const COOKIE = `stillroom-4711=${KEY}`;

function app() {
  const hono = new Hono();
  hono.use(loopbackGate({ port: () => 4711, key: KEY }));
  hono.all('*', (c) => c.text('inside'));
  return hono;
}

function ask(path: string, headers: Record<string, string>, method = 'GET') {
  return app().request(`http://service.invalid${path}`, { method, headers });
}

describe('the first visit', () => {
  test('the printed address changes its key for a cookie that scripts and other sites cannot use', async () => {
    const response = await ask(`/?key=${KEY}`, { host: HOST, 'sec-fetch-site': 'none' });
    expect(response.status).toBe(303);
    expect(response.headers.get('location')).toBe('/');
    const cookie = response.headers.get('set-cookie') ?? '';
    expect(cookie).toContain(`stillroom-4711=${KEY}`);
    expect(cookie).toContain('HttpOnly');
    expect(cookie).toContain('SameSite=Strict');
    expect(cookie).not.toContain('Domain');
  });

  test.each(['', 'x', KEY.slice(1), `${KEY}k`, KEY.toUpperCase()])(
    'a wrong key “%s” gets nothing',
    async (key) => {
      const response = await ask(`/?key=${key}`, { host: HOST, cookie: COOKIE });
      expect(response.status).toBe(403);
      expect(response.headers.get('set-cookie')).toBeNull();
      expect(await response.text()).not.toContain('inside');
    },
  );

  test('the key works at the front door only', async () => {
    expect((await ask(`/api/materials?key=${KEY}`, { host: HOST })).status).toBe(403);
  });
});

describe('without this run’s key', () => {
  test('a page says what to open', async () => {
    const response = await ask('/', { host: HOST });
    expect(response.status).toBe(403);
    expect(await response.text()).toContain('address that Stillroom printed');
  });

  test('the API answers problem details', async () => {
    const response = await ask('/api/materials', { host: HOST });
    expect(response.status).toBe(403);
    expect(response.headers.get('content-type')).toBe('application/problem+json');
    expect(await response.json()).toMatchObject({ status: 403, code: 'not-allowed' });
  });

  test.each([`stillroom-4712=${KEY}`, 'stillroom-4711=', 'stillroom-4711=wrong', `stillroom=${KEY}`])(
    'the cookie “%s” does not serve',
    async (cookie) => {
      expect((await ask('/api/materials', { host: HOST, cookie })).status).toBe(403);
    },
  );
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
