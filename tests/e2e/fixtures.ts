import { AxeBuilder } from '@axe-core/playwright';
import {
  test as base,
  expect,
  type BrowserContext,
  type ConsoleMessage,
  type Page,
  type TestInfo,
} from '@playwright/test';
import { cpSync, existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeLibrary } from '../bench/bench-library';
import { HostProcess, leftovers, removeFolder, temporaryFolder } from './host-process';
import { SharedHost } from './shared-host';

/** What is open when a test begins: nothing yet, a new empty library, the demonstration, or one of 5,000 materials. */
export type Opening = 'nothing' | 'empty' | 'demo' | 'many';

export interface Stillroom {
  host: HostProcess;
  /** The library's folder; for `nothing`, the folder in which the first screen offers to make one. */
  library: string;
  /** The test's temporary folder, parent of the library; with a host of its own, the home of the user too. */
  folder: string;
}

interface Options {
  /** Set with `test.use({ opening: 'demo' })`. */
  opening: Opening;
  /** Set where a test is about the host: its start and end, what it writes, the home of its user. */
  ownHost: boolean;
  /** Matches the console errors that a test provokes on purpose; null when it provokes none. */
  expectedErrors: RegExp | null;
}

interface Fixtures {
  stillroom: Stillroom;
  /** The library's folder. */
  library: string;
}

interface Kept {
  /** A closed library of each kind that was asked for, made once by the real host: each test opens a copy of its own. */
  ready: (kind: Exclude<Opening, 'nothing'>) => Promise<string>;
  /** The host that tests use one after another, started when it is first asked for. */
  shared: () => Promise<SharedHost>;
}

/** Makes a library as its first screen would, in a folder of its own, and closes it. */
async function makeByHost(kind: 'empty' | 'demo'): Promise<string> {
  const folder = temporaryFolder();
  const library = join(folder, 'library');
  const host = await HostProcess.start({ args: ['--library', library], folder });
  const asked = kind === 'demo' ? 'demonstration' : 'empty';
  await host.post('/api/library/create', { name: 'library', kind: asked });
  if ((await host.stop()) !== 0) throw new Error(`No library could be made:\n${host.output()}`);
  return library;
}

type Using = (stillroom: Stillroom) => Promise<void>;

/** Over a host that is started for this test, and must stop cleanly after it. */
async function withOwnHost(ready: string | null, info: TestInfo, use: Using): Promise<void> {
  const folder = temporaryFolder();
  const library = join(folder, 'library');
  if (ready) cpSync(ready, library, { recursive: true });
  const host = await HostProcess.start({ args: ['--library', library], folder });
  await use({ host, library, folder });
  const code = await host.stop();
  await tellOutput(host, info);
  const left = existsSync(library) ? leftovers(library) : [];
  removeFolder(folder);
  expect(code, `the host stops cleanly:\n${host.output()}`).toBe(0);
  expect(left, 'files left behind in the library').toEqual([]);
}

/** Over the host of the worker, in which the library is opened for this test, and must close cleanly after it. */
async function withSharedHost(shared: SharedHost, ready: string, info: TestInfo, use: Using): Promise<void> {
  const { host } = shared;
  const folder = await shared.openCopy(ready);
  const library = join(folder, 'library');
  await use({ host, library, folder });
  await shared.closeLibrary();
  await tellOutput(host, info);
  const left = leftovers(library);
  removeFolder(folder);
  expect(left, 'files left behind in the library').toEqual([]);
}

async function tellOutput(host: HostProcess, info: TestInfo): Promise<void> {
  if (info.status === info.expectedStatus) return;
  await info.attach('host output', { body: host.output(), contentType: 'text/plain' });
}

/** The browser reports each refused API request by itself; a test looks at what the screen says of it. */
function isRefusedRequest(message: ConsoleMessage): boolean {
  return (
    /^Failed to load resource: the server responded with a status of 4\d\d/.test(message.text()) &&
    message.location().url.includes('/api/')
  );
}

/** Collects console errors (blocked content among them) and uncaught exceptions of a page. */
export function watchErrors(page: Page): string[] {
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' && !isRefusedRequest(message)) errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.stack ?? error.message));
  return errors;
}

/** Up to how long each request of a page is held back, by chance: `STILLROOM_SLOW=600`, to find what only a fast machine hides. */
const SLOW_MS = Number(process.env.STILLROOM_SLOW ?? 0);

async function holdBack(context: BrowserContext): Promise<void> {
  if (SLOW_MS === 0) return;
  await context.route('**/*', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, Math.random() * SLOW_MS));
    // The page may have left meanwhile.
    await route.fallback().catch(() => undefined);
  });
}

/**
 * Each test gets a fresh library, open in the real built host, and a page that has already used the printed address. At
 * the end the library, or the test's own host, must close and leave no temporary file, and the page no console error.
 */
export const test = base.extend<Fixtures & Options, Kept>({
  ready: [
    async ({}, use) => {
      const made = new Map<string, Promise<string>>();
      await use((kind) => {
        const before = made.get(kind);
        if (before) return before;
        const now = kind === 'many' ? makeLibrary(5_000, 60) : makeByHost(kind);
        made.set(kind, now);
        return now;
      });
      for (const library of made.values()) removeFolder(dirname(await library));
    },
    { scope: 'worker' },
  ],

  shared: [
    async ({}, use) => {
      let started: Promise<SharedHost> | undefined;
      await use(() => (started ??= SharedHost.start()));
      const shared = await started;
      if (shared) expect(await shared.stop(), `the host stops cleanly:\n${shared.host.output()}`).toBe(0);
    },
    { scope: 'worker' },
  ],

  opening: ['empty', { option: true }],
  ownHost: [false, { option: true }],
  expectedErrors: [null, { option: true }],

  stillroom: async ({ opening, ownHost, ready, shared }, use, info) => {
    const made = opening === 'nothing' ? null : await ready(opening);
    if (ownHost || made === null) await withOwnHost(made, info, use);
    else await withSharedHost(await shared(), made, info, use);
  },

  library: async ({ stillroom }, use) => {
    await use(stillroom.library);
  },

  page: async ({ page, stillroom, expectedErrors }, use) => {
    const errors = watchErrors(page);
    await holdBack(page.context());
    await stillroom.host.visit(page);
    // The router hears of a new address only once its first screen is there.
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await use(page);
    const unexpected = errors.filter((error) => !expectedErrors?.test(error));
    expect(unexpected, 'errors in the page’s console').toEqual([]);
  },
});

/** Fails with the rule, the elements and the help of each accessibility violation that axe finds. */
export async function expectNoAxeViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const found = violations.map(({ id, help, nodes }) => ({
    id,
    help,
    at: nodes.map((node) => `${node.target.join(' ')}: ${node.failureSummary ?? ''}`),
  }));
  expect(found).toEqual([]);
}

export { expect };
