import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './fixtures';
import { HostProcess, removeFolder, temporaryFolder } from './host-process';

test.describe('with no library yet', () => {
  test.use({ opening: 'nothing' });

  test('offers to start empty, and makes the library where it was asked for', async ({ page, library }) => {
    await expect(page.getByRole('heading', { level: 1 })).toContainText('formulate cosmetics');
    await page.getByRole('button', { name: 'Start an empty library' }).click();
    await expect(page.getByRole('heading', { name: 'An empty shelf' })).toBeVisible();
    expect(existsSync(join(library, 'library.sqlite'))).toBe(true);
  });

  test('offers the demonstration library', async ({ page }) => {
    await page.getByRole('button', { name: 'Open the demonstration library' }).click();
    await expect(page.getByRole('link', { name: 'Hedgerow Day Cream' })).toBeVisible();
  });
});

test('settings are kept: paper, region with its decimal comma, theme', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/settings`);
  await page.getByLabel('Maker’s name').fill('Invented & Co');
  await page.getByLabel('Maker’s name').blur();
  await page.getByLabel('Numbers and dates as in').selectOption('de-DE');
  await expect(page.getByText('1.234,50')).toBeVisible();
  await page.getByLabel('Light or dark').selectOption('dark');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.reload();
  await expect(page.getByLabel('Maker’s name')).toHaveValue('Invented & Co');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
});

test('a second opener gets the library read-only, is told why, and can take over', async ({
  page,
  stillroom,
  browser,
}) => {
  const folder = temporaryFolder();
  const second = await HostProcess.start({ args: ['--library', stillroom.library], folder });
  const other = await browser.newPage();
  await other.goto(second.address);
  await expect(other.getByRole('contentinfo')).toContainText('Read only');
  await other.goto(`${new URL(other.url()).origin}/#/library`);
  await expect(other.getByRole('button', { name: /take over/ })).toBeVisible();
  await expect(other.getByRole('button', { name: 'Back up now' })).toBeDisabled();
  await expect(page.getByRole('contentinfo')).not.toContainText('Read only');
  await other.close();
  expect(await second.stop()).toBe(0);
  removeFolder(folder);
});

test('a file that is no library is refused with what to do, and left alone', async ({ browser }) => {
  const folder = temporaryFolder();
  const place = join(folder, 'odd');
  mkdirSync(place);
  writeFileSync(join(place, 'library.sqlite'), 'this is a letter to a friend');
  const host = await HostProcess.start({ args: ['--library', place], folder });
  const page = await browser.newPage();
  await page.goto(host.address);
  await expect(page.getByRole('alert')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Open the demonstration library' })).toBeVisible();
  await page.close();
  expect(await host.stop()).toBe(0);
  expect(readFileSync(join(place, 'library.sqlite'), 'utf8')).toBe('this is a letter to a friend');
  removeFolder(folder);
});
