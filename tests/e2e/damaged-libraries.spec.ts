import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from '@playwright/test';
import { expect, test, watchErrors } from './fixtures';
import { HostProcess, removeFolder, temporaryFolder } from './host-process';
import { ContactSheet } from './screens/contact-sheet';
import { damagedCopy, NOBODY, REFUSED, TOLD, type DamagedLibrary } from './screens/damaged-libraries';
import { press, type Screen } from './screens/openers';
import { every, held, lawsInto, walkScreen, WIDEST_AND_NARROWEST } from './screens/walk';

// What is said when a library cannot be opened, or opens with something to tell: in every window, light and dark, held to
// the same laws as every other screen.

const SHEETS = process.env.STILLROOM_CONTACT_SHEETS;

/** The demonstration with a backup and a few changes in its log only, as left by a host that was killed. */
async function makeLibrary(folder: string): Promise<string> {
  const library = join(folder, 'whole');
  const host = await HostProcess.start({ args: ['--library', library], folder });
  await host.post('/api/library/create', { name: 'whole', kind: 'demonstration' });
  await host.post('/api/library/backups', {});
  for (const recordedBy of ['Noted first', 'Noted then', 'Noted last'])
    await host.send('PATCH', '/api/settings', { recordedBy });
  await host.kill();
  rmSync(join(library, 'library.lock'));
  return library;
}

async function look(page: Page, screen: Screen): Promise<void> {
  if (SHEETS) {
    test.setTimeout(0);
    const sheet = new ContactSheet();
    await walkScreen(page, screen, sheet.look, every(WIDEST_AND_NARROWEST));
    await sheet.write(page.context(), join(SHEETS, 'damaged libraries', screen.name));
    return;
  }
  test.setTimeout(15 * 60_000);
  const faults: string[] = [];
  await walkScreen(page, screen, lawsInto(faults), held(WIDEST_AND_NARROWEST));
  expect(faults).toEqual([]);
}

const welcome = (name: string): Screen => ({ name, route: 'welcome', address: () => '/welcome' });
const libraryPage = (name: string, openers: Screen['openers'] = []): Screen => ({
  name,
  route: 'library',
  address: () => '/library',
  openers,
});

let folder: string;
let whole: string;

test.describe.configure({ mode: 'default' });
test.beforeAll(async () => {
  folder = temporaryFolder();
  whole = await makeLibrary(folder);
});
test.afterAll(() => removeFolder(folder));

async function newPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
  return context.newPage();
}

/** Opens a damaged copy with a host of its own. */
async function withDamaged(
  browser: Browser,
  damaged: DamagedLibrary,
  work: (page: Page, library: string, host: HostProcess) => Promise<void>,
): Promise<void> {
  const place = join(temporaryFolder(), 'place');
  const library = damagedCopy(whole, place, damaged);
  const uid = damaged.asNobody && process.getuid?.() === 0 ? NOBODY : undefined;
  const host = await HostProcess.start({ args: ['--library', library], folder: place, uid });
  const page = await newPage(browser);
  const errors = watchErrors(page);
  await host.visit(page);
  await work(page, library, host);
  // A browser tells of each request that a full disk refuses.
  expect(errors.filter((error) => !error.includes('status of 507'))).toEqual([]);
  await page.context().close();
  expect(await host.stop()).toBe(0);
  removeFolder(join(place, '..'));
}

for (const damaged of REFUSED)
  test(`${damaged.name}: is told with what can be done, and nothing is touched`, async ({ browser }) => {
    await withDamaged(browser, damaged, async (page) => {
      const told = page.getByRole('alert');
      await expect(told).toContainText(damaged.says);
      const offered = await told.getByRole('button').allTextContents();
      expect(offered).toHaveLength(damaged.offers.length);
      for (const [at, name] of damaged.offers.entries()) expect(offered[at]?.trim()).toMatch(name);
      await look(page, welcome(damaged.name));
    });
  });

for (const damaged of REFUSED.filter(({ offers }) => offers.length > 0))
  test(`${damaged.name}: every offer can be kept`, async ({ browser }) => {
    for (const offer of damaged.offers)
      await withDamaged(browser, damaged, async (page) => {
        await page.getByRole('alert').getByRole('button', { name: offer }).click();
        const on = page.getByRole('button', { name: 'Go to the library' });
        await on.or(page.getByRole('navigation')).first().waitFor();
        if (await on.isVisible()) {
          await look(page, welcome(`${damaged.name}, opened`));
          await on.click();
        }
        await expect(
          page
            .getByRole('link', { name: 'Hedgerow Day Cream' })
            .or(page.getByRole('link', { name: /^Hfdgerow|^He/ }))
            .first(),
        ).toBeVisible();
      });
  });

for (const damaged of TOLD)
  test(`${damaged.name}: is told in the frame and where the day begins, until it was read`, async ({
    browser,
  }) => {
    await withDamaged(browser, damaged, async (page) => {
      await expect(page.getByRole('contentinfo')).toContainText(damaged.says);
      if (!damaged.asNobody) await expect(page.getByRole('main')).toContainText(damaged.says);
      await look(page, { name: `${damaged.name}, today`, route: 'home', address: () => '/' });
      await page.getByRole('contentinfo').getByRole('link', { name: 'Go to the library' }).click();
      await expect(page.getByRole('alert')).toContainText(damaged.says);
      await look(page, libraryPage(damaged.name));
    });
  });

test('a library in use elsewhere, and taken over: both windows say so, and what each can do', async ({
  browser,
}) => {
  const untouched: DamagedLibrary = { name: '', says: /./, offers: [], damage: () => undefined };
  await withDamaged(browser, untouched, async (page, library, host) => {
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    const place = temporaryFolder();
    const second = await HostProcess.start({ args: ['--library', library], folder: place });
    const other = await newPage(browser);
    await second.visit(other, '/library');
    await look(
      other,
      libraryPage('in use elsewhere', [press('take it over', ['library/LibraryPage'], 'Take it over…')]),
    );
    await second.post('/api/library/take-over', {});
    await page.goto(`${new URL(page.url()).origin}/#/formulas`);
    await page.getByRole('link', { name: 'Hedgerow Day Cream' }).first().click();
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Hedgerow Night Cream');
    await expect(page.getByRole('contentinfo')).toContainText(/Read only|Not saved/);
    await look(page, { name: 'taken over, while typing', route: 'formula', address: () => '' });
    // Leaving what could not be saved is asked about; another window of that host says the rest.
    const third = await newPage(browser);
    await host.visit(third, '/library');
    await expect(third.getByRole('alert').first()).toContainText('Read only here');
    // Who changed the files is known: it is not told a second time, with other ways out.
    await expect(third.getByRole('alert')).toHaveCount(1);
    await look(third, libraryPage('taken over by another'));
    await third.context().close();
    await other.context().close();
    await second.stop();
    removeFolder(place);
  });
});

test('files changed by another program while open: nothing is written, and both ways out are offered', async ({
  browser,
}) => {
  const untouched: DamagedLibrary = { name: '', says: /./, offers: [], damage: () => undefined };
  await withDamaged(browser, untouched, async (page, library) => {
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    const path = join(library, 'library.log');
    writeFileSync(path, readFileSync(path).subarray(0, 300));
    await page.goto(`${new URL(page.url()).origin}/#/library`);
    await page.evaluate(() => window.dispatchEvent(new Event('focus')));
    await expect(page.getByRole('alert').first()).toContainText('Another program changed');
    await look(page, libraryPage('changed by another program'));
    await page.getByRole('button', { name: 'Save mine as a copy' }).click();
    await expect(page.getByRole('status').filter({ hasText: 'Saved as a copy' })).toBeVisible();
  });
});

test('a full disk: the change is told as not saved, in words, and stays on the screen', async ({
  browser,
}) => {
  const untouched: DamagedLibrary = { name: '', says: /./, offers: [], damage: () => undefined };
  await withDamaged(browser, untouched, async (page) => {
    const title = 'Stillroom could not save the change: the disk is full.';
    const detail =
      'Free some space on the disk that holds the library, then try again. Everything saved before is safe.';
    await page.route('**/api/formulas/*', (route) =>
      route.request().method() === 'PUT'
        ? route.fulfill({
            status: 507,
            contentType: 'application/problem+json',
            body: JSON.stringify({
              type: 'about:blank',
              status: 507,
              code: 'disk-full',
              title,
              detail,
              fields: [],
              facts: {},
            }),
          })
        : route.continue(),
    );
    await page.goto(`${new URL(page.url()).origin}/#/formulas`);
    await page.getByRole('link', { name: 'Hedgerow Day Cream' }).first().click();
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Hedgerow Night Cream');
    await expect(page.getByRole('contentinfo')).toContainText('the disk is full');
    await look(page, { name: 'disk full', route: 'formula', address: () => '' });
    await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue(
      'Hedgerow Night Cream',
    );
  });
});
