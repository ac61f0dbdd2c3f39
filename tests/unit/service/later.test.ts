import { Problem } from '@core/problems/problem';
import { later } from '@service/requests/later';
import { Hono } from 'hono';
import { expect, test } from 'vitest';

const room = () =>
  new Hono()
    .get('/', (c) => c.text('list'))
    .get('/:id', (c) => c.text(`one: ${c.req.param('id')}`))
    .post('/:id', async (c) => c.json(await c.req.json()))
    .get('/:id/refused', () => {
      throw new Problem({ code: 'not-allowed', title: 'No.', advice: 'Ask again.' });
    });

const house = (load: () => Promise<ReturnType<typeof room>>) =>
  new Hono().basePath('/api').route('/things', later('/things', load, undefined));

test('a room is loaded once, by the first request for it, and answers as it would by itself', async () => {
  let loaded = 0;
  const app = house(() => {
    loaded += 1;
    return Promise.resolve(room());
  });
  expect(loaded).toBe(0);
  const texts = await Promise.all(
    ['/api/things', '/api/things/7', '/api/things/a%20b'].map(async (path) =>
      (await app.request(path)).text(),
    ),
  );
  expect(texts).toEqual(['list', 'one: 7', 'one: a b']);
  const init = { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{"a":[1]}' };
  expect(await (await app.request('/api/things/7', init)).json()).toEqual({ a: [1] });
  expect(loaded).toBe(1);
});

test('what it refuses, and what is not there, is told as by every room', async () => {
  const app = house(() => Promise.resolve(room()));
  const refused = await app.request('/api/things/7/refused');
  expect([refused.status, refused.headers.get('content-type')]).toEqual([403, 'application/problem+json']);
  expect(await refused.json()).toMatchObject({ title: 'No.', detail: 'Ask again.' });
  expect((await app.request('/api/things/7/8/9')).status).toBe(404);
});

test('a room that could not be loaded is loaded by the next request', async () => {
  let loaded = 0;
  const app = house(() => {
    loaded += 1;
    return loaded === 1 ? Promise.reject(new Error('The disk was away.')) : Promise.resolve(room());
  });
  app.onError((error, c) => c.text(error.message, 500));
  expect(await (await app.request('/api/things')).text()).toBe('The disk was away.');
  expect(await (await app.request('/api/things')).text()).toBe('list');
});
