import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { openFormula } from './formula-steps';
import { picture } from './pictures';

test.use({ opening: 'demo' });

const goTo = (page: Page, path: string) => page.goto(`${new URL(page.url()).origin}/#${path}`);
const found = (page: Page) => page.getByRole('status').filter({ hasText: /\d/ }).first();
const rows = (page: Page) => page.locator('[role=row][data-index]');

test('materials are found by what the list shows, by a plural and with a slip of the finger', async ({
  page,
}) => {
  await goTo(page, '/materials');
  const box = page.getByRole('searchbox', { name: 'Search materials' });
  await box.fill('cationic emulsifiers');
  await expect(found(page)).toHaveText(/^[1-9]\d* materials?$/);
  await expect(rows(page).filter({ hasNotText: 'cationic' })).toHaveCount(0);
  await box.fill('cetaryl');
  await expect(page.getByText('Nothing contains “cetaryl”: showing “cetearyl”.')).toBeVisible();
  await expect(rows(page).first()).toContainText(/cetearyl/i);
  await picture(page, 'list-typo');
});

test('a list that finds nothing offers what would find something, and filters in use are chips', async ({
  page,
}) => {
  await goTo(page, '/materials?text=glycerin&charge=cationic&form=pellets');
  await expect(page.getByRole('heading', { name: 'No material matches' })).toBeVisible();
  await picture(page, 'list-nothing');
  await page.getByRole('button', { name: /^Without “glycerin”: \d/ }).click();
  await expect(rows(page).first()).toContainText('cationic');
  await page.getByRole('button', { name: 'Remove the filter Charge: cationic' }).click();
  await expect(page).toHaveURL(/#\/materials\?form=pellets$/);
  await picture(page, 'list-chips');
});

test('formulas are found by an ingredient, sorted, and opened by keyboard alone', async ({ page }) => {
  await goTo(page, '/formulas');
  await expect(rows(page).first()).toBeVisible();
  await picture(page, 'list-formulas');
  const all = await found(page).innerText();
  await page.keyboard.press('/');
  await expect(page.getByRole('searchbox', { name: 'Search formulas' })).toBeFocused();
  await page.keyboard.type('behentrimonium');
  await expect(found(page)).not.toHaveText(all);
  await expect(page).toHaveURL(/text=behentrimonium/);
  await page.keyboard.press('ArrowDown');
  await expect(rows(page).first()).toBeFocused();
  const name = await rows(page).first().getByRole('gridcell').nth(1).innerText();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('checkbox', { name: `Select ${name}` })).toBeFocused();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
  await page.goBack();
  await expect(page.getByRole('searchbox', { name: 'Search formulas' })).toHaveValue('behentrimonium');
});

test('Enter pressed before the answer takes the first of that answer, however slow it is', async ({
  page,
}) => {
  await page.route('**/api/formulas?*', async (route) => {
    await new Promise((done) => setTimeout(done, 700));
    await route.continue();
  });
  await goTo(page, '/formulas/differences');
  const box = page.getByRole('combobox', { name: 'From' });
  // Filled while closed: the list opens with what was typed, not with what was worked on last.
  await box.fill('hedge');
  await page.keyboard.press('Enter');
  await expect(box).toHaveValue(/Hedgerow Day Cream/);
  await box.fill('meadow');
  await page.keyboard.press('Enter');
  await expect(box).toHaveValue(/Meadow Body Milk/);
});

test('a batch is planned of a formula found by typing, and then stands in its list', async ({ page }) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('button', { name: 'Record version…' }).click();
  await page.getByRole('dialog').getByLabel('Why this version').fill('first');
  await page.getByRole('dialog').getByRole('button', { name: 'Record version' }).click();
  await expect(page.getByText('Version 1 is recorded.')).toBeVisible();
  await goTo(page, '/batches?plan=new');
  const box = page.getByRole('combobox', { name: 'Formula' });
  await box.click();
  await box.pressSequentially('hedge');
  const offered = page.getByRole('listbox').getByRole('option');
  await expect(offered).toHaveCount(1);
  await expect(offered).toContainText('Hedgerow Day Cream');
  await picture(page, 'list-formula-picker');
  await page.keyboard.press('Enter');
  await expect(box).toHaveValue(/Hedgerow Day Cream/);
  await page.getByLabel('Batch mass').fill('1');
  await page.getByRole('button', { name: 'Make batch' }).click();
  await expect(page.getByRole('heading', { name: 'Batch B-004' })).toBeVisible();
  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  await expect(rows(page).first()).toContainText('B-004');
  await picture(page, 'list-batches');
  await page.keyboard.press('Control+k');
  await page.getByLabel('Find anything').fill('b004');
  await expect(page.getByRole('option').first()).toContainText('B-004');
});

test('the finder knows places and commands by everyday names, and stays where it is', async ({ page }) => {
  await page.keyboard.press('Control+k');
  const box = page.getByLabel('Find anything');
  await expect(box).toBeFocused();
  const top = (await page.getByRole('dialog').boundingBox())?.y;
  for (const [typed, says] of [
    ['new formula', 'Start a formula'],
    ['optimise', 'Optimise a blend'],
    ['neutralise', 'Neutralise an acid'],
    ['smiles', 'HLB of a structure or blend'],
    ['dark', 'Settings'],
    ['versions', 'Versions of formulas'],
    ['print', 'Print'],
    ['saved searches', 'Saved searches'],
  ] as const) {
    await box.fill(typed);
    await expect(page.getByRole('option').first()).toContainText(says);
    expect((await page.getByRole('dialog').boundingBox())?.y).toBe(top);
  }
  await picture(page, 'list-finder');
});

test('what is typed on the heels of Ctrl+K stands in the finder, and nowhere else', async ({ page }) => {
  await page.goto(page.url().replace(/#.*/, '#/materials'));
  const search = page.getByRole('searchbox', { name: 'Search materials' });
  await search.focus();
  // All in one task: before the finder could be drawn.
  const left = await search.evaluate((field) => {
    const press = (key: string, ctrlKey = false): boolean =>
      field.dispatchEvent(new KeyboardEvent('keydown', { key, ctrlKey, bubbles: true, cancelable: true }));
    press('k', true);
    return [...'dark'].map((key) => press(key));
  });
  expect(left, 'no key is left to the field that had the focus').toEqual([false, false, false, false]);
  const box = page.getByLabel('Find anything');
  await expect(box).toBeFocused();
  await expect(box).toHaveValue('dark');
  await page.keyboard.type(' colours');
  await expect(box).toHaveValue('dark colours');
});
