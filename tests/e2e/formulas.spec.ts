import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { chooseFormula } from './choose-formula';
import { firstShare, openFormula, recordVersion, shareOf } from './formula-steps';
import { holdSaves } from './hold-saves';

test.use({ opening: 'demo' });

const openDayCream = (page: Page): Promise<void> => openFormula(page, 'Hedgerow Day Cream');
const footer = (page: Page): Locator => page.getByRole('contentinfo');

async function rowNames(page: Page): Promise<string[]> {
  await expect(page.locator('[data-line]').first()).toBeVisible();
  return page.locator('[data-line] .name').allInnerTexts();
}

test('an edited share saves itself, and undo and redo take it back and forth', async ({ page }) => {
  await openDayCream(page);
  const { field } = await firstShare(page);
  const before = await field.inputValue();
  await field.fill('4,25');
  await expect(page.getByText('Made up to 100 by the q.s. line.')).toBeVisible();
  await field.blur();
  await expect(field).toHaveValue('4.25');
  await expect(footer(page)).toContainText('Saved at');

  await page.keyboard.press('Control+z');
  await expect(field).toHaveValue(before);
  await page.keyboard.press('Control+Shift+z');
  await expect(field).toHaveValue('4.25');
  await expect(footer(page)).toContainText('Saved at');
  await page.reload();
  await expect(field).toHaveValue('4.25');
});

test('a new formula is written by keyboard alone', async ({ page }) => {
  await page.getByRole('link', { name: 'Formulas' }).click();
  await page.getByRole('button', { name: 'New formula' }).click();
  await page.getByRole('dialog').getByLabel('Name').fill('Trial milk');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Trial milk' })).toBeVisible();

  // Its first line is asked for, without a way there through the navigation.
  await expect(page.getByRole('combobox', { name: 'Add a material to phase A' })).toBeFocused();
  await page.keyboard.type('glycerin');
  await expect(page.getByRole('listbox').getByRole('option').first()).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-cell=percent] input').first()).toBeFocused();
  await page.keyboard.type('3');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('combobox', { name: 'Add a material to phase A' })).toBeFocused();
  await page.keyboard.type('aqua');
  await expect(page.getByRole('listbox').getByRole('option').first()).toContainText(/aqua/i);
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-line]')).toHaveCount(2);
  await expect(page.getByText(/97\.00.?% is missing\./)).toBeVisible();

  await page.locator('[data-line]').nth(1).getByRole('checkbox').check();
  await expect(page.getByText('Made up to 100 by the q.s. line.')).toBeVisible();
  await expect(footer(page)).toContainText('Saved at');

  // What can be done with the open formula is found by typing too.
  await page.keyboard.press('Control+k');
  await expect(page.getByRole('combobox', { name: 'Find anything' })).toBeFocused();
  await page.keyboard.type('record a v');
  await expect(page.getByRole('option', { name: /^Record a version of this formula/ })).toHaveAttribute(
    'data-highlighted',
    '',
  );
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'Record a version' })).toBeVisible();
  await page.keyboard.type('First trial');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Version 1 is recorded.')).toBeVisible();
});

test('Alt with the arrows moves a line within its phase and into the next, and the focus goes along', async ({
  page,
}) => {
  await openDayCream(page);
  const at = 1;
  const material = (await rowNames(page))[at] ?? '';
  const field = shareOf(page, material);
  await field.focus();
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(async () => (await rowNames(page)).indexOf(material)).toBe(at - 1);
  await expect(field).toBeFocused();

  const phaseA = page.locator('[data-phase]').first();
  const inA = await phaseA.locator('[data-line]').count();
  for (let step = at - 1; step < inA; step += 1) await page.keyboard.press('Alt+ArrowDown');
  await expect(phaseA.locator('[data-line]')).toHaveCount(inA - 1);
  await expect(page.locator('[data-phase]').nth(1).locator('.name').first()).toHaveText(material);
  await expect(field).toBeFocused();
});

test('a line is dragged by the mouse into another phase, and Undo brings it back', async ({ page }) => {
  // Both phases must be in sight: a drag does not scroll.
  await page.setViewportSize({ width: 1280, height: 1400 });
  await openDayCream(page);
  const [, material = ''] = await rowNames(page);
  const phases = page.locator('[data-phase]');
  const before = await phases.nth(1).locator('[data-line]').count();
  const row = page.locator('[data-line]').filter({ hasText: material });
  await row.locator('[draggable]').dragTo(phases.nth(1).locator('[data-line]').first());
  await expect(phases.nth(1).locator('[data-line]')).toHaveCount(before + 1);
  await expect(phases.nth(1)).toContainText(material);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(phases.nth(1).locator('[data-line]')).toHaveCount(before);
  await expect(phases.first()).toContainText(material);
});

test('only one line is q.s. to 100, and the mark moves when asked', async ({ page }) => {
  await openDayCream(page);
  const { material } = await firstShare(page);
  const mark = page.getByRole('checkbox', { name: `${material}: q.s. to 100` });
  await mark.click();
  await expect(page.getByText(/Only one line can be q\.s\. to 100/)).toBeVisible();
  await expect(mark).not.toBeChecked();
  await page.getByRole('button', { name: 'Move q.s. here' }).click();
  await expect(mark).toBeChecked();
  await expect(page.getByRole('checkbox', { name: /q\.s\. to 100/, checked: true })).toHaveCount(1);
  await expect(page.getByText('Made up to 100 by the q.s. line.')).toBeVisible();
});

test('a share out of bounds, too fine or no number is refused at its field and stays there to be put right', async ({
  page,
}) => {
  await openDayCream(page);
  const { field } = await firstShare(page);
  const before = await field.inputValue();
  for (const { typed, says } of [
    { typed: '150', says: /At most 100/ },
    { typed: '-2', says: /At least 0/ },
    { typed: 'a lot', says: /is not a number/ },
    { typed: '1.23456', says: /Four decimals at most/ },
  ]) {
    await field.selectText();
    await field.pressSequentially(typed);
    await field.blur();
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByRole('alert').filter({ hasText: says })).toBeVisible();
    await expect(field).toHaveValue(typed);
  }
  await page.reload();
  await expect(field).toHaveValue(before);
});

test('shares beyond 100 are said in words, and a version of them is refused with what to do', async ({
  page,
}) => {
  await openDayCream(page);
  const { field } = await firstShare(page);
  await field.fill('100');
  await expect(page.getByText(/too much for the q\.s\. line/)).toBeVisible();
  await page.getByRole('button', { name: 'Record version…' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Record version' }).click();
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText(
    /nothing is left for the q\.s\. line/,
  );
});

test('a name that the library refuses is kept on screen and said at its field', async ({ page }) => {
  await openDayCream(page);
  const name = page.getByLabel('Name', { exact: true });
  await name.fill('x'.repeat(10_000));
  await expect(
    page
      .getByRole('alert')
      .filter({ hasText: /200 characters or fewer/ })
      .first(),
  ).toBeVisible();
  await expect(footer(page)).toContainText('Not saved.');
  await expect(name).toHaveValue(/^x{10000}$/);
  await name.fill('Hedgerow Day Cream II');
  await expect(footer(page)).toContainText('Saved at');
});

test('a field changed in both windows asks with both values, and theirs can be taken and taken back', async ({
  page,
  context,
}) => {
  await openDayCream(page);
  const other = await context.newPage();
  await other.goto(page.url());
  const saving = await holdSaves(page, '/api/formulas/');
  await page.getByLabel('Purpose').fill('Changed here');
  await saving.begun;
  await other.getByLabel('Purpose').fill('Changed in the other window');
  await expect(footer(other)).toContainText('Saved at');
  saving.release();

  const asked = page.getByRole('alert', { name: 'Changed in another window too' });
  await expect(asked).toContainText('Changed here');
  await expect(asked).toContainText('Changed in the other window');
  await asked.getByRole('button', { name: 'Take theirs' }).click();
  await expect(page.getByLabel('Purpose')).toHaveValue('Changed in the other window');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByLabel('Purpose')).toHaveValue('Changed here');
  await expect(other.getByLabel('Purpose')).toHaveValue('Changed here');
  await expect(asked).toHaveCount(0);
  await other.close();
});

test('a version just recorded can be planned at once from the batches', async ({ page }) => {
  await openDayCream(page);
  await recordVersion(page, 'First trial');
  await page.getByRole('link', { name: 'Batches' }).click();
  await page.getByRole('button', { name: 'Plan a batch' }).click();
  await chooseFormula(page, 'Hedgerow Day Cream');
  // By its role: the preview beside it is labelled “…, version 1”.
  await expect(page.getByRole('combobox', { name: 'Version', exact: true })).toContainText(
    'Version 1: First trial',
  );
});

test('a formula with versions is not deleted but can be archived, and brought back', async ({ page }) => {
  await openDayCream(page);
  await recordVersion(page, 'First trial');
  await page.getByRole('link', { name: 'Formulas' }).click();
  await page.getByRole('button', { name: 'Delete Hedgerow Day Cream' }).click();
  await page.getByRole('button', { name: 'Delete formula' }).click();
  await expect(page.getByRole('alert')).toContainText('has recorded versions');
  await page.getByRole('button', { name: 'Archive it instead' }).click();
  await expect(page.getByRole('link', { name: 'Hedgerow Day Cream', exact: true })).toBeHidden();
  await page
    .getByRole('list', { name: 'Status' })
    .getByRole('checkbox', { name: /^archived/ })
    .check();
  await page.getByRole('button', { name: 'Unarchive Hedgerow Day Cream' }).click();
  await expect(page.getByRole('link', { name: 'Hedgerow Day Cream', exact: true })).toBeHidden();
});

test('a 2.5 kg batch adds up exactly, and its line targets sum to it', async ({ page }) => {
  await openDayCream(page);
  await recordVersion(page, 'For the batch');
  await page.getByRole('link', { name: 'Make a batch of it' }).click();
  await page.getByLabel('Batch mass').fill('2,5');
  await expect(page.getByText(/together exactly 2\.5000.kg/)).toBeVisible();
  await page.getByRole('button', { name: 'Make batch' }).click();
  await expect(page.getByRole('heading', { name: 'Batch B-004' })).toBeVisible();
  const targets = await page.locator('tbody tr:not(.phase) td:last-child').allInnerTexts();
  const tenths = targets.map((text) => Math.round(Number(text.replace(/,/g, '')) * 10));
  expect(tenths.reduce((sum, one) => sum + one, 0)).toBe(25_000);
  await expect(page.locator('[data-total]')).toHaveText('2,500.0');
});

test('a batch of nothing, of 50 tonnes or of words is refused at its field, and nothing else entered is lost', async ({
  page,
}) => {
  await openDayCream(page);
  await recordVersion(page, 'For the batch');
  await page.getByRole('link', { name: 'Make a batch of it' }).click();
  const note = page.getByLabel('Note', { exact: true });
  await note.fill('For the course');
  const mass = page.getByLabel('Batch mass');
  for (const { typed, says } of [
    { typed: '0', says: /must weigh something/ },
    { typed: '50000', says: /up to 10 tonnes/ },
    { typed: '-1', says: /must weigh something/ },
    { typed: 'much', says: /is not a number/ },
  ]) {
    await mass.selectText();
    await mass.pressSequentially(typed);
    await mass.press('Enter');
    await expect(mass).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByRole('alert').filter({ hasText: says })).toBeVisible();
    await expect(note).toHaveValue('For the course');
    await expect(page.getByRole('heading', { name: 'Plan a batch' })).toBeVisible();
  }
});
