import { expect, test, type Page } from '@playwright/test';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { HostProcess, removeFolder, temporaryFolder } from './host-process';

const PICTURES = process.env.STILLROOM_DAMAGE_PICTURES;

/** A picture to look at, in both colours and at both widths, where somewhere to put it is given. */
async function picture(page: Page, name: string): Promise<void> {
  if (!PICTURES) return;
  mkdirSync(PICTURES, { recursive: true });
  for (const [width, height] of [
    [1440, 900],
    [390, 844],
  ] as const)
    for (const theme of ['light', 'dark']) {
      await page.setViewportSize({ width, height });
      await page.evaluate((to) => (document.documentElement.dataset.theme = to), theme);
      await page.screenshot({ path: join(PICTURES, `${name}-${width}-${theme}.png`) });
    }
}

let folder: string;
let library: string;

/** A library that holds one change in its log, as a process that was stopped leaves it, and as it was before that. */
async function makeLibrary(): Promise<Record<'before' | 'after', { file: Buffer; log: Buffer }>> {
  const kept = () => ({
    file: readFileSync(join(library, 'library.sqlite')),
    log: readFileSync(join(library, 'library.log')),
  });
  const host = await HostProcess.start({ args: ['--library', library], folder });
  await host.post('/api/library/create', { name: 'Shelf', kind: 'empty' });
  const before = kept();
  await host.send('PATCH', '/api/settings', { makerName: 'Invented & Co' });
  await host.send('PATCH', '/api/settings', { makerName: 'Invented & Daughters' });
  const after = kept();
  await host.stop();
  return { before, after };
}

const lay = ({ file, log }: { file: Buffer; log: Buffer }) => {
  writeFileSync(join(library, 'library.sqlite'), file);
  writeFileSync(join(library, 'library.log'), log);
};

async function openIn(page: Page): Promise<HostProcess> {
  const host = await HostProcess.start({ args: ['--library', library], folder });
  await host.visit(page);
  return host;
}

test.beforeEach(() => {
  folder = temporaryFolder();
  library = join(folder, 'Shelf');
});
test.afterEach(() => removeFolder(folder));

test('a library replaced by an older one says so on every screen until its page was read, and names a copy beside it', async ({
  page,
}) => {
  const { before, after } = await makeLibrary();
  lay(before);
  writeFileSync(join(library, 'library (conflict of another computer).log'), after.log);
  const host = await openIn(page);
  const foot = page.getByRole('contentinfo');
  await expect(foot).toContainText('not in this library any more');
  await picture(page, 'foot');
  await foot.getByRole('link', { name: 'Go to the library' }).click();
  const notes = page.getByRole('alert');
  await expect(notes.filter({ hasText: 'not in this library any more' })).toBeVisible();
  await expect(notes.filter({ hasText: 'library (conflict of another computer).log' })).toBeVisible();
  await picture(page, 'notes');
  await page.getByRole('link', { name: 'Materials' }).first().click();
  await expect(foot).not.toContainText('not in this library any more');
  await host.stop();
});

test('a library file that is not as it was written is opened as it is once that is asked for', async ({
  page,
}) => {
  await makeLibrary();
  const file = join(library, 'library.sqlite');
  const bytes = readFileSync(file);
  const at = bytes.indexOf('Invented & Daughters');
  bytes.write('Invented & Godson  ', at);
  copyFileSync(file, join(folder, 'whole.sqlite'));
  writeFileSync(file, bytes);
  const host = await openIn(page);
  await expect(page.getByRole('alert')).toContainText('not as Stillroom wrote it');
  await picture(page, 'as-it-is');
  await page.getByRole('button', { name: 'Open it as it is' }).click();
  await expect(page.getByRole('contentinfo')).toBeVisible();
  await picture(page, 'as-it-is-opened');
  await host.stop();
});

test('a damaged log is told with what of it still holds, and the library opens with that', async ({
  page,
}) => {
  const { after } = await makeLibrary();
  const log = Buffer.from(after.log);
  const last = log.lastIndexOf('Invented');
  log[last] = (log[last] ?? 0) ^ 1;
  lay({ ...after, log });
  const host = await openIn(page);
  await expect(page.getByRole('alert')).toContainText('damaged');
  await picture(page, 'damaged-log');
  await page.getByRole('button', { name: /^Open it with/ }).click();
  await expect(page.getByRole('button', { name: 'Go to the library' })).toBeVisible();
  await picture(page, 'damaged-log-told');
  await host.stop();
});

test('a library that somebody else has open asks before it is taken over', async ({ page }) => {
  await makeLibrary();
  const owner = await HostProcess.start({ args: ['--library', library], folder });
  const host = await openIn(page);
  await page.getByRole('contentinfo').getByRole('link', { name: 'Go to the library' }).click();
  await picture(page, 'locked');
  await page.getByRole('button', { name: 'Take it over…' }).click();
  await picture(page, 'take-over');
  await page.getByRole('dialog').getByRole('button', { name: 'Take it over' }).click();
  await expect(page.getByRole('contentinfo')).not.toContainText('Read only');
  await host.stop();
  await owner.stop();
});
