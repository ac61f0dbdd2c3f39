import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, test } from './fixtures';

// Blocked content is what these tests provoke, and the browser reports each block.
test.use({
  ownHost: true,
  expectedErrors: /Content Security Policy|X-Frame-Options|ERR_BLOCKED_BY_RESPONSE|403/,
});

/** Status of a plain request from outside a browser. */
function statusOf(origin: string, headers: Record<string, string>, path = '/api/library'): Promise<number> {
  return new Promise((done, fail) => {
    const sent = request(origin + path, { headers }, (response) => {
      response.resume();
      done(response.statusCode ?? 0);
    });
    sent.once('error', fail);
    sent.end();
  });
}

test('the page runs nothing that was not built into it', async ({ page }) => {
  const blocked = await page.evaluate(async () => {
    const seen = new Set<string>();
    document.addEventListener('securitypolicyviolation', (event) => seen.add(event.effectiveDirective));
    const script = document.createElement('script');
    script.textContent = 'document.title = "inline script ran"';
    document.body.append(script);
    const style = document.createElement('style');
    style.textContent = 'body { display: none }';
    document.head.append(style);
    const image = document.createElement('img');
    image.src = 'https://example.invalid/picture.png';
    document.body.append(image);
    const fetched = await fetch('https://example.invalid/').then(
      () => 'answered',
      () => 'blocked',
    );
    // In a callback of its own: the test tool's own evaluation is exempt from the policy.
    const evaluated = await new Promise<string>((done) => {
      setTimeout(() => {
        try {
          done(String(new Function('return 1 + 1')()));
        } catch (error) {
          done(error instanceof Error ? error.name : 'thrown');
        }
      });
    });
    await new Promise((done) => setTimeout(done, 200));
    for (const element of [script, style, image]) element.remove();
    return { seen: [...seen].sort(), fetched, evaluated, display: getComputedStyle(document.body).display };
  });
  expect(blocked.fetched).toBe('blocked');
  expect(blocked.evaluated).toBe('EvalError');
  expect(blocked.display).not.toBe('none');
  expect(blocked.seen).toEqual(['connect-src', 'img-src', 'script-src', 'script-src-elem', 'style-src-elem']);
  await expect(page).not.toHaveTitle('inline script ran');
});

test.describe('an ordinary visit', () => {
  test.use({ expectedErrors: null, opening: 'demo' });

  test('asks for nothing that the policy would block', async ({ page }) => {
    const blocked = await page.evaluate(async () => {
      const seen: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => seen.push(event.violatedDirective));
      await new Promise((done) => setTimeout(done, 500));
      return seen;
    });
    await expect(page.getByRole('heading').first()).toBeVisible();
    expect(blocked).toEqual([]);
  });
});

test('another browser without the key sees nothing', async ({ browser, stillroom, page }) => {
  expect(page.url()).not.toContain('key=');
  const stranger = await browser.newContext();
  const other = await stranger.newPage();
  for (const path of ['/', '/?key=guess', '/api/library', '/index.html']) {
    const response = await other.goto(stillroom.host.origin + path);
    expect(response?.status(), path).toBe(403);
  }
  await stranger.close();
});

test('a name that leads to this machine is not enough', async ({ page, stillroom }) => {
  const { host } = stillroom;
  const port = new URL(host.origin).port;
  const cookies = await page.context().cookies();
  const cookie = cookies.map(({ name, value }) => `${name}=${value}`).join('; ');
  expect(await statusOf(host.origin, { cookie })).toBeLessThan(400);
  for (const name of [`localhost:${port}`, `0.0.0.0:${port}`, `stillroom.example:${port}`, '127.0.0.1']) {
    expect(await statusOf(host.origin, { cookie, host: name }), name).toBe(403);
  }
  expect(await statusOf(host.origin, { cookie, origin: 'http://example.invalid' })).toBe(403);
});

test('scripts cannot read the key', async ({ page }) => {
  expect(await page.evaluate(() => document.cookie)).toBe('');
});

test('another page on this machine can neither frame Stillroom nor ask it', async ({ page, stillroom }) => {
  const address = stillroom.host.origin;
  const other = createServer((_request, response) => {
    response.setHeader('Content-Type', 'text/html');
    response.end(`<!doctype html><title>Other</title><iframe src="${address}/"></iframe>`);
  });
  await new Promise<void>((done) => other.listen(0, '127.0.0.1', done));
  try {
    const visitor = await page.context().newPage();
    await visitor.goto(`http://127.0.0.1:${(other.address() as AddressInfo).port}/`);
    const frame = visitor.frames()[1];
    await expect.poll(() => frame?.url()).toContain('chrome-error://');
    const answer = await visitor.evaluate(
      (url) =>
        fetch(url, { credentials: 'include' }).then(
          () => 'read',
          () => 'refused',
        ),
      `${address}/api/library`,
    );
    expect(answer).toBe('refused');
    await visitor.close();
  } finally {
    other.closeAllConnections();
    other.close();
  }
});
