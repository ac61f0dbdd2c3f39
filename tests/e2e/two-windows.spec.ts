import type { Page } from '@playwright/test';
import { expect, test, watchErrors } from './fixtures';
import { holdSaves } from './hold-saves';
import { picture } from './pictures';

test.use({ ownHost: true, opening: 'demo' });

/** A second window on the same library, at an address of it. */
async function secondWindow(page: Page, hash: string): Promise<Page> {
  const other = await page.context().newPage();
  await other.goto(`${new URL(page.url()).origin}/${hash}`);
  await other.getByRole('heading', { level: 1 }).first().waitFor();
  return other;
}

const tradeName = (page: Page) => page.getByRole('textbox', { name: 'Trade name' });
/** A material is read first. */
const edit = (page: Page) => page.getByRole('button', { name: 'Edit', exact: true }).click();
const asked = (page: Page) => page.getByRole('alert', { name: 'Changed in another window too' });

/** Opens the material whose row the list shows at a place. @returns its name and address */
async function openMaterial(page: Page, place: number): Promise<{ name: string; hash: string }> {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.locator(`[data-index="${place}"]`).click();
  await edit(page);
  await expect(tradeName(page)).toBeVisible();
  return { name: await tradeName(page).inputValue(), hash: new URL(page.url()).hash };
}

test('a material renamed in one window has its new name in the other’s list, pane and formula', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Hedgerow Day Cream' }).first().click();
  const line = page.locator('[data-cell=material] .name').first();
  const name = (await line.textContent())?.trim() ?? '';
  const formulas = page.url();
  const list = await secondWindow(page, '#/materials');
  const errors = watchErrors(list);
  const pane = await secondWindow(page, `#/materials?text=${encodeURIComponent(name)}`);
  await pane.locator('[data-index="0"]').click();
  await edit(pane);
  await list
    .getByRole('searchbox')
    .or(list.getByPlaceholder(/Search|Find/))
    .first()
    .fill('Moorland');

  await tradeName(pane).fill('Moorland Renamed');
  await expect(line).toHaveText('Moorland Renamed');
  await expect(list.locator('[data-index="0"]')).toContainText('Moorland Renamed');
  await list.locator('[data-index="0"]').click();
  await edit(list);
  await expect(tradeName(list)).toHaveValue('Moorland Renamed');
  await tradeName(pane).fill(name);
  await expect(tradeName(list)).toHaveValue(name);
  await expect(line).toHaveText(name);
  expect(page.url()).toBe(formulas);
  expect(errors).toEqual([]);
});

test('changes of different fields are both kept; the same field changed in both asks, with both values', async ({
  page,
  stillroom,
}) => {
  const { hash } = await openMaterial(page, 2);
  const other = await secondWindow(page, hash);
  await edit(other);
  await expect(tradeName(other)).toBeVisible();
  const saving = await holdSaves(page, '/api/materials/');
  await page.getByRole('textbox', { name: 'Code', exact: true }).fill('HERE-1');
  await tradeName(page).fill('Named here');
  await saving.begun;
  await other.getByRole('textbox', { name: 'Appearance' }).fill('Ivory flakes');
  await tradeName(other).fill('Named there');
  await expect(other.getByRole('contentinfo')).toContainText('Saved at');
  saving.release();

  await expect(asked(page)).toContainText('Named here');
  await expect(asked(page)).toContainText('Named there');
  await expect(tradeName(page)).toHaveValue('Named here');
  await expect(page.getByRole('textbox', { name: 'Appearance' })).toHaveValue('Ivory flakes');
  await expect(other.getByRole('textbox', { name: 'Code', exact: true })).toHaveValue('HERE-1');
  await expect(tradeName(other)).toHaveValue('Named there');
  await picture(page, 'two-windows-asked');
  await asked(page).getByRole('button', { name: 'Keep mine' }).click();
  await expect(asked(page)).toHaveCount(0);
  await expect(tradeName(page)).toHaveValue('Named here');
  await expect(tradeName(other)).toHaveValue('Named here');
  expect(stillroom.host.output()).not.toContain('error');
});

test('settings, the formulas list and the bench follow another window', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/formulas`);
  const other = await secondWindow(page, '#/settings');
  await other.getByRole('combobox', { name: 'Light or dark' }).selectOption('dark');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await other.getByRole('combobox', { name: 'Numbers and dates as in' }).selectOption('de-DE');
  await expect(page.locator('html')).toHaveAttribute('data-region', 'de-DE');
  await other.goto(`${new URL(page.url()).origin}/#/formulas`);
  await other.getByRole('link', { name: 'Hedgerow Day Cream' }).first().click();
  await other.getByRole('textbox', { name: 'Name', exact: true }).fill('Hedgerow Night Cream');
  await expect(page.getByRole('link', { name: 'Hedgerow Night Cream' }).first()).toBeVisible();
});

test('a library closed in one window is closed in the others, which say nothing of it in their consoles', async ({
  page,
}) => {
  const others = await Promise.all(['#/', '#/formulas', '#/batches'].map((hash) => secondWindow(page, hash)));
  const errors = others.map((other) => watchErrors(other));
  await page.goto(`${new URL(page.url()).origin}/#/library`);
  await page.getByRole('button', { name: 'Close library' }).click();
  for (const other of others) await expect(other).toHaveURL(/#\/welcome/);
  await expect(page).toHaveURL(/#\/welcome/);
  // What was asked for as it closed has been answered by now.
  for (const other of others) await other.waitForLoadState('networkidle');
  const uncaught = errors.flat().filter((error) => !/Failed to load resource/.test(error));
  expect(uncaught).toEqual([]);
});
