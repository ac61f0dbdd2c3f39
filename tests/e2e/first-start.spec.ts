import { blankMaterial } from '../../shared-core/materials/material';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, watchErrors } from './fixtures';
import { HostProcess, removeFolder, temporaryFolder } from './host-process';

test.use({ ownHost: true });

test.describe('with no library yet', () => {
  test.use({ opening: 'nothing' });

  test('offers to start empty, and makes the library where it was asked for', async ({ page, library }) => {
    await expect(page.getByRole('heading', { level: 1 })).toContainText('formulate cosmetics');
    await page.getByRole('button', { name: 'Start an empty library' }).click();
    await expect(page.getByRole('heading', { name: 'An empty shelf' })).toBeVisible();
    expect(existsSync(join(library, 'library.sqlite'))).toBe(true);
  });

  test('makes the library in a folder that is chosen on screen', async ({ browser }) => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'Work'));
    const host = await HostProcess.start({ args: [], folder });
    const page = await browser.newPage();
    await host.visit(page);
    await page.getByLabel('Name of the library').fill('Shelf');
    await page.getByRole('button', { name: 'In another folder…' }).click();
    const dialog = page.getByRole('dialog', { name: 'Where the new library is kept' });
    await dialog.getByRole('button', { name: 'Work', exact: true }).click();
    await expect(dialog.getByText('No folder in it.')).toBeVisible();
    await dialog.getByRole('button', { name: 'Keep it here' }).click();
    await expect(page.getByText('Kept in the folder Work')).toBeVisible();
    await page.getByRole('button', { name: 'Start an empty library' }).click();
    await expect(page.getByRole('heading', { name: 'An empty shelf' })).toBeVisible();
    expect(existsSync(join(folder, 'Work/Shelf/library.sqlite'))).toBe(true);
    await page.close();
    expect(await host.stop()).toBe(0);
    removeFolder(folder);
  });

  test('offers the demonstration library', async ({ page }) => {
    await page.getByRole('button', { name: 'Open the demonstration library' }).click();
    await expect(page.getByRole('link', { name: 'Hedgerow Day Cream' })).toBeVisible();
  });
});

test('folders for backups and other libraries are chosen on screen, under the home folder', async ({
  page,
  stillroom,
}) => {
  mkdirSync(join(stillroom.folder, 'Keep/Safe'), { recursive: true });
  await page.goto(`${new URL(page.url()).origin}/#/library`);
  await page.getByRole('button', { name: 'Keep them in another folder…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Where backups are kept' });
  const rows = dialog.getByRole('list', { name: 'Folders in it' }).getByRole('button');
  await rows.filter({ hasText: 'Keep' }).click();
  // By keys from there on: the first row leads back, the next ones further in.
  await expect(rows.filter({ hasText: 'Back to Home' })).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(dialog.getByText('No folder in it.')).toBeVisible();
  await expect(dialog.getByRole('navigation')).toHaveText(/Home.*Keep.*Safe/);
  await dialog.getByRole('button', { name: 'Keep backups here' }).click();
  await expect(page.getByText(join(stillroom.folder, 'Keep/Safe/library backups'))).toBeVisible();
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText('A backup was made and checked.')).toBeVisible();
  expect(readdirSync(join(stillroom.folder, 'Keep/Safe/library backups'))).not.toEqual([]);

  await page.getByRole('button', { name: 'Open another folder…' }).click();
  const opening = page.getByRole('dialog', { name: 'Open a library' });
  // Only a library can be opened.
  await expect(opening.getByRole('button', { name: 'Open this library' })).toBeDisabled();
  await opening.getByRole('button', { name: /^library/ }).click();
  await opening.getByRole('button', { name: 'Open this library' }).click();
  await expect(opening).toBeHidden();
  await expect(page.getByRole('heading', { level: 1, name: 'library' })).toBeVisible();
});

test('a batch asks for a recorded version first', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/batches?plan=new`);
  await expect(page.getByRole('heading', { name: 'No recorded version to make' })).toBeVisible();
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
  await second.visit(other);
  await expect(other.getByRole('contentinfo')).toContainText('Read only');
  await other.getByRole('contentinfo').getByRole('link', { name: 'Go to the library' }).click();
  await expect(other.getByRole('button', { name: 'Back up now' })).toBeDisabled();
  await expect(page.getByRole('contentinfo')).not.toContainText('Read only');
  const note = other.getByRole('alert').filter({ hasText: 'Read only here' });
  // As British English writes a moment, which is what a new library's settings say.
  await expect(note).toContainText(/opened there on \d{1,2} [A-Z][a-z]{2,3} \d{4}, \d\d:\d\d/);
  await expect(note).not.toContainText(/\d{4}-\d\d-\d\dT/);
  await note.getByRole('button', { name: 'Take it over…' }).click();
  const question = other.getByRole('dialog', { name: 'Take this library over?' });
  await expect(question).toContainText('that window is cut off');
  await expect(question).toContainText('not saved yet is lost');
  await question.getByRole('button', { name: 'Cancel' }).click();
  await expect(other.getByRole('contentinfo')).toContainText('Read only');
  await note.getByRole('button', { name: 'Take it over…' }).click();
  await question.getByRole('button', { name: 'Take it over' }).click();
  await expect(other.getByRole('button', { name: 'Back up now' })).toBeEnabled();
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
  await host.visit(page);
  await expect(page.getByRole('alert')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Open the demonstration library' })).toBeVisible();
  await page.close();
  expect(await host.stop()).toBe(0);
  expect(readFileSync(join(place, 'library.sqlite'), 'utf8')).toBe('this is a letter to a friend');
  removeFolder(folder);
});

/** A library with four materials whose host was killed before it rewrote the file, with a byte of its log flipped. */
async function libraryWithDamagedLog(folder: string, library: string): Promise<Buffer> {
  const host = await HostProcess.start({ args: ['--library', library], folder });
  await host.post('/api/library/create', { name: 'library', kind: 'empty' });
  for (const name of ['One', 'Two', 'Three', 'Four'])
    await host.post('/api/materials', blankMaterial(name, 'Cetyl Alcohol'));
  const { pid } = JSON.parse(readFileSync(join(library, 'library.lock'), 'utf8')) as { pid: number };
  process.kill(pid, 'SIGKILL');
  const log = join(library, 'library.log');
  const damaged = readFileSync(log);
  const at = damaged.indexOf('"Three"') + 1;
  damaged[at] = (damaged[at] ?? 0) ^ 1;
  writeFileSync(log, damaged);
  return damaged;
}

test('a damaged log without a backup: opens with the changes before the damage, and says where all of it is kept', async ({
  browser,
}) => {
  const folder = temporaryFolder();
  const library = join(folder, 'library');
  const damaged = await libraryWithDamagedLog(folder, library);
  const host = await HostProcess.start({ args: ['--library', library], folder });
  const page = await browser.newPage();
  const errors = watchErrors(page);
  await host.visit(page);
  await expect(page.getByRole('alert')).toContainText('change log of this library is damaged');
  await expect(page.getByRole('button', { name: /backup of/ })).toHaveCount(0);
  expect(readFileSync(join(library, 'library.log')).equals(damaged)).toBe(true);
  await page.getByRole('button', { name: 'Open it with the 3 changes before the damage' }).click();
  const told = page.getByRole('alert').filter({ hasText: 'Open with 3 changes from its damaged log' });
  await expect(told).toContainText('2 entries of the log could not be used');
  const [kept = ''] = readdirSync(join(library, 'backups')).filter((name) => name.endsWith('.log'));
  expect(readFileSync(join(library, 'backups', kept)).equals(damaged)).toBe(true);
  await expect(told).toContainText(join(library, 'backups', kept));
  await page.getByRole('button', { name: 'Go to the library' }).click();
  await expect(page.getByRole('heading', { name: '2 materials on the shelf' })).toBeVisible();
  await page.goto(`${new URL(page.url()).origin}/#/library`);
  await expect(page.getByRole('alert')).toContainText('2 entries of the log could not be used');
  expect(errors).toEqual([]);
  await page.close();
  expect(await host.stop()).toBe(0);
  removeFolder(folder);
});

test('a damaged library chosen from the list of recent ones is offered with the same ways to open it', async ({
  browser,
}) => {
  const folder = temporaryFolder();
  await libraryWithDamagedLog(folder, join(folder, 'library'));
  const host = await HostProcess.start({ args: ['--library', join(folder, 'other')], folder });
  const page = await browser.newPage();
  await host.visit(page);
  await page.getByRole('button', { name: 'library', exact: true }).click();
  await expect(page.getByRole('alert')).toHaveCount(1);
  await expect(
    page.getByRole('button', { name: 'Open it with the 3 changes before the damage' }),
  ).toBeVisible();
  await page.close();
  expect(await host.stop()).toBe(0);
  removeFolder(folder);
});
