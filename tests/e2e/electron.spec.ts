import { join, resolve } from 'node:path';
import { _electron, expect, test, type ElectronApplication } from '@playwright/test';
import { electronProgram, hasDisplay } from '../../build/steps/window.mjs';
import { leftovers, removeFolder, temporaryFolder } from './host-process';

const ROOT = resolve(import.meta.dirname, '../..');
const program = electronProgram();
const possible = program !== undefined && hasDisplay();

if (!possible) {
  console.log('\n!! The Electron runtime or a display is missing: the tests in a real window are SKIPPED.');
  console.log('!! Fetch it with “npx install-electron”; on Linux without a display run under xvfb-run.');
  console.log('!! REQUIRE_ELECTRON=1 makes this a failure.\n');
}
test.skip(!possible && !process.env.REQUIRE_ELECTRON, 'The Electron runtime or a display is missing.');

let folder: string;
let app: ElectronApplication;

test.beforeEach(async () => {
  if (!program) throw new Error('REQUIRE_ELECTRON is set, and the Electron runtime is missing.');
  folder = temporaryFolder();
  app = await _electron.launch({
    executablePath: program,
    args: ['.', `--user-data-dir=${join(folder, 'user')}`, '--library', join(folder, 'library')],
    cwd: ROOT,
    // Linux refuses to sandbox what root starts.
    chromiumSandbox: process.getuid?.() !== 0,
  });
});
test.afterEach(() => removeFolder(folder));

test('the window shows the app from its own scheme, sandboxed and offline, and closes its library', async () => {
  const page = await app.firstWindow();
  await expect(page.getByRole('heading').first()).toBeVisible();
  expect(page.url()).toMatch(/^app:\/\/stillroom\//);
  const seen = await page.evaluate(async () => ({
    node: typeof Reflect.get(globalThis, 'process') + typeof Reflect.get(globalThis, 'require'),
    bridge: Object.keys(Reflect.get(globalThis, 'stillroomDesktop') as object).sort(),
    opened: window.open('https://example.invalid/') === null,
    notification: await Notification.requestPermission(),
    outside: await fetch('https://example.invalid/').then(
      () => 'answered',
      () => 'blocked',
    ),
  }));
  expect(seen).toEqual({
    node: 'undefinedundefined',
    bridge: ['chooseLibraryFolder', 'onMenu', 'setTitle', 'showInFolder'],
    opened: true,
    notification: 'denied',
    outside: 'blocked',
  });
  expect(app.windows()).toHaveLength(1);
  const created = await page.evaluate(async () => {
    const body = JSON.stringify({ name: 'library', kind: 'empty' });
    const headers = { 'Content-Type': 'application/json' };
    return (await fetch('/api/library/create', { method: 'POST', headers, body })).status;
  });
  expect(created).toBe(200);
  const ended = new Promise<number | null>((end) => app.process().once('exit', end));
  await app.evaluate(({ app: electronApp }) => electronApp.quit());
  expect(await ended).toBe(0);
  expect(leftovers(join(folder, 'library'))).toEqual([]);
});

test('a page cannot lead the window away', async () => {
  const page = await app.firstWindow();
  await expect(page.getByRole('heading').first()).toBeVisible();
  await page.evaluate(() => {
    const link = document.createElement('a');
    link.href = 'https://example.invalid/';
    document.body.append(link);
    link.click();
    link.remove();
  });
  await page.waitForTimeout(300);
  expect(page.url()).toMatch(/^app:\/\/stillroom\//);
  await app.close();
});
