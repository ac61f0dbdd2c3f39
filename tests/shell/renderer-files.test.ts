import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hostedApp } from '@service/security/hosted-app';
import { contentSecurityPolicy } from '@service/security/content-policy';
import { afterAll, beforeAll, expect, test } from 'vitest';

let folder: string;
let page: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillroom-page-'));
  page = join(folder, 'renderer');
  mkdirSync(join(page, 'assets'), { recursive: true });
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>Stillroom</title>');
  writeFileSync(join(page, 'assets/index-abc123.js'), 'export {};');
  writeFileSync(join(page, 'assets/é x.svg'), '<svg/>');
  writeFileSync(join(page, 'notes.exe'), 'no');
  writeFileSync(join(folder, 'secret.json'), '{"secret":true}');
  symlinkSync(join(folder, 'secret.json'), join(page, 'linked.json'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function app(rendererFolder = page) {
  const service = { fetch: () => new Response('service') };
  return hostedApp({ service, rendererFolder, gate: (_c, next) => next() });
}

test('the page, its scripts and its pictures come with fixed types', async () => {
  const index = await app().request('/');
  expect(index.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(await index.text()).toContain('Stillroom');
  const script = await app().request('/assets/index-abc123.js');
  expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
  expect(script.headers.get('cache-control')).toContain('immutable');
  expect((await app().request('/assets/%C3%A9%20x.svg')).headers.get('content-type')).toBe('image/svg+xml');
});

test.each([
  '/../secret.json',
  '/..%2fsecret.json',
  '/%2e%2e/secret.json',
  '/%252e%252e%252fsecret.json',
  '/assets/..%5c..%5csecret.json',
  '/assets/%2e%2e/%2e%2e/secret.json',
  '//secret.json',
  '/linked.json',
  '/notes.exe',
  '/assets',
  '/assets/',
  '/index.html%00.js',
  '/C:/Windows/win.ini',
  '/etc/passwd',
  '/materials/12',
])('nothing is at %s: no way out of the folder, no page in place of a missing one', async (path) => {
  const response = await app().request(new Request(`http://x.invalid${path}`));
  expect(response.status).toBe(404);
  expect(await response.text()).not.toContain('secret":');
});

test('a malformed address is refused as such', async () => {
  expect((await app().request('/%E0%A4%A')).status).toBe(400);
});

test('files can be read only', async () => {
  expect((await app().request('/index.html', { method: 'POST' })).status).toBe(405);
  expect((await app().request('/index.html', { method: 'HEAD' })).status).toBe(200);
});

test('what is not built says so', async () => {
  const response = await app(join(folder, 'nowhere')).request('/');
  expect(response.status).toBe(503);
  expect(await response.text()).toContain('npm start');
});

test('every answer carries the policy: page, file, API, and errors', async () => {
  for (const path of ['/', '/assets/index-abc123.js', '/api/materials', '/nowhere', '/%E0%A4%A']) {
    const response = await app().request(path);
    expect(response.headers.get('content-security-policy')).toBe(contentSecurityPolicy());
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
  }
  expect((await app().request('/api/materials')).headers.get('cache-control')).toBe('no-store');
});
