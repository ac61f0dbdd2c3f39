import { EventEmitter } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ServiceHost, type Lost, type ServiceChild } from '../../electron/main/service-host';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { UtilityProcessDouble } from './utility-process-double';

const cleanUps: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

const NOTHING = { library: undefined, demo: false };
const PROGRAM = '/built/out/main/service-process.js';

/** The real service in a process of its own, over folders that go when the test ends. */
function host(now?: () => number) {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-process-'));
  const folders = JSON.stringify({
    documents: join(folder, 'documents'),
    config: join(folder, 'config'),
    asked: NOTHING,
  });
  const lost: Lost[] = [];
  const made = new ServiceHost(
    () => UtilityProcessDouble.fork(PROGRAM, [folders]) as unknown as ServiceChild,
    (one) => lost.push(one),
    now,
  );
  cleanUps.push(() => rmSync(folder, { recursive: true, force: true }));
  cleanUps.push(() => made.close(10_000).catch(() => undefined));
  const ask = async (method: string, path: string, body?: unknown) => {
    const init = body === undefined ? { method } : { method, body: JSON.stringify(body) };
    const headers = { 'Content-Type': 'application/json' };
    const response = await made.fetch(new Request(`app://stillroom/api${path}`, { ...init, headers }));
    return { status: response.status, body: (await response.json()) as Record<string, unknown> };
  };
  return { host: made, lost, ask, library: join(folder, 'documents', 'Shelf') };
}

const newest = () => UtilityProcessDouble.forked.at(-1) as UtilityProcessDouble;
const names = (body: unknown) => (body as { name: string }[]).map(({ name }) => name);

describe('the service in a process of its own', () => {
  test('answers what is asked before it is there, and says what it is opening', async () => {
    const { host: made, ask } = host();
    const early = made.start({ library: undefined, demo: true }).then(() => 'opened');
    let { body } = await ask('GET', '/library');
    // Whoever asks is told what is being opened until it is there.
    while (body.opening) {
      expect(body.opening).toMatchObject({ name: 'Demonstration' });
      ({ body } = await ask('GET', '/library'));
    }
    expect(body.open).toMatchObject({ name: 'Demonstration' });
    expect(await early).toBe('opened');
    expect(made.opened()).toMatch(/Demonstration$/);
  });

  test('knows folders by token for both sides', async () => {
    const { host: made, library } = host();
    await made.start(NOTHING);
    const token = await made.offer(library);
    expect(token).not.toContain('Shelf');
    expect(await made.folder(token)).toBe(library);
    expect(await made.folder('guess')).toBeNull();
  });

  test('folds and gives its lock back at closing', async () => {
    const { host: made, ask, library } = host();
    await made.start(NOTHING);
    await ask('POST', '/library/create', { name: 'Shelf', kind: 'demonstration' });
    // Zeros follow what is written in a log.
    const written = () => readFileSync(join(library, 'library.log')).indexOf(0);
    const before = written();
    await made.close(20_000);
    expect(written()).toBeLessThan(before / 10);
    expect(existsSync(join(library, 'library.lock'))).toBe(false);
  });
});

describe('a process that is lost', () => {
  test('is told, started again, and everything acknowledged is there', async () => {
    const { host: made, lost, ask } = host();
    await made.start(NOTHING);
    await ask('POST', '/library/create', { name: 'Shelf', kind: 'empty' });
    const acknowledged: string[] = [];
    let saving = true;
    cleanUps.push(() => void (saving = false));
    const work = (async () => {
      for (let at = 0; saving; at += 1) {
        const name = `Search ${at}`;
        // An answer may break off after its head when the process goes: then nothing was acknowledged.
        const answer = await ask('POST', '/searches', { name, query: '' }).catch(() => undefined);
        if (answer?.status === 201) acknowledged.push(name);
      }
    })();
    for (let crashes = 1; crashes <= 2; crashes += 1) {
      const enough = acknowledged.length + 2;
      await expect.poll(() => acknowledged.length).toBeGreaterThan(enough);
      newest().crash();
      await expect.poll(() => lost).toHaveLength(crashes);
      expect(lost.at(-1)?.startedAgain).toBe(true);
    }
    saving = false;
    await work;
    const { status, body } = await ask('GET', '/searches');
    expect(status).toBe(200);
    expect(names(body)).toEqual(expect.arrayContaining(acknowledged));
    expect((await ask('GET', '/library')).body.open).toMatchObject({ name: 'Shelf', readOnly: null });
  });

  test('is left alone after the fourth time within a minute, and starts when asked', async () => {
    let clock = 0;
    const { host: made, lost, ask } = host(() => clock);
    await made.start(NOTHING);
    for (let count = 1; count <= 4; count += 1) {
      newest().crash();
      await expect.poll(() => lost).toHaveLength(count);
    }
    expect(lost.map((one) => one.startedAgain)).toEqual([true, true, true, false]);
    expect((await ask('GET', '/library')).status).toBe(503);
    await made.startAgain();
    expect((await ask('GET', '/library')).status).toBe(200);
    clock = 61_000;
    newest().crash();
    await expect.poll(() => lost.at(-1)?.startedAgain).toBe(true);
  });

  test('answers a reading anew, and says of a change that it may not have been made', async () => {
    const children: EventEmitter[] = [];
    const deaf = (): ServiceChild => {
      const child = Object.assign(new EventEmitter(), { postMessage: () => undefined, kill: () => true });
      children.push(child);
      return child as unknown as ServiceChild;
    };
    const made = new ServiceHost(deaf, () => undefined);
    void made.start(NOTHING);
    const change = made.fetch(new Request('app://stillroom/api/materials', { method: 'POST' }));
    children[0]?.emit('exit', 9);
    const refused = await change;
    expect(refused.status).toBe(503);
    expect(await refused.json()).toMatchObject({ code: 'internal', title: expect.stringMatching(/stopped/) });
  });
});

describe('closing', () => {
  test('waits for the limit and not longer, ends the process, and says so', async () => {
    const kill = vi.fn(() => true);
    const deaf = Object.assign(new EventEmitter(), { postMessage: () => undefined, kill });
    const made = new ServiceHost(
      () => deaf as unknown as ServiceChild,
      () => undefined,
    );
    void made.start(NOTHING);
    await expect(made.close(30)).rejects.toMatchObject({ message: expect.stringMatching(/was not closed/) });
    expect(kill).toHaveBeenCalledOnce();
  });
});
