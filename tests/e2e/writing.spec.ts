import type { Locator } from '@playwright/test';
import { expect, test } from './fixtures';
import { openFormula } from './formula-steps';

// Writing a formula, as a walk through one draft: few starts, each action looked at where it shows.

test.use({ opening: 'demo' });

/** Pastes a text where the focus is, as the browser does from the clipboard. */
async function paste(into: Locator, text: string): Promise<void> {
  await into.evaluate((element, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', pasted);
    element.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

test('lines from a spreadsheet are looked at, make what is unknown, and go with one Undo', async ({
  page,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  const lines = page.locator('[data-line]');
  await expect(lines.first()).toBeVisible();
  const before = await lines.count();
  await paste(
    page.getByRole('combobox', { name: 'Add a material to phase A' }),
    'Material\t% w/w\tNote\nGlycerin\t2,5\tvegetable\nUnheard-of wax\t0.5\t\nWater\tq.s.\t\nTotal\t100\t',
  );
  const dialog = page.getByRole('dialog', { name: 'Paste lines into phase A' });
  await expect(dialog.getByRole('row', { name: /^Glycerin/ })).toContainText('Found by INCI name');
  await expect(dialog.getByRole('row', { name: /^Water/ })).toContainText(
    'is q.s. to 100: this comes in with 0 %',
  );
  await dialog.getByLabel('What Water becomes').selectOption('Leave this line out');
  const wax = dialog.getByRole('row', { name: /^Unheard-of wax/ });
  await wax.getByLabel('INCI name').fill('Rhus Verniciflua Peel Wax');
  await dialog.getByRole('button', { name: 'Add 2 lines, make 1 material' }).click();
  await expect(dialog).toBeHidden();

  await expect(lines).toHaveCount(before + 2);
  await expect(page.locator('[data-phase]').first()).toContainText('Rhus Verniciflua Peel Wax');
  await expect(page.getByRole('textbox', { name: 'Share of Unheard-of wax, per cent' })).toHaveValue('0.50');
  await expect(page.getByRole('textbox', { name: /^Note on .*Glycerin/ }).first()).toHaveValue('vegetable');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(lines).toHaveCount(before);
});

test('what is not in the library is made where it is added; a line opens its material, and replacing is asked for', async ({
  page,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  const box = page.getByRole('combobox', { name: 'Add a material to phase A' });
  await box.fill('Marsh silk');
  await expect(page.getByRole('option', { name: 'Create “Marsh silk”' })).toHaveAttribute(
    'aria-selected',
    'true',
  );
  await box.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Add a raw material' });
  await expect(dialog.getByLabel('Trade name')).toHaveValue('Marsh silk');
  await expect(dialog.getByLabel('INCI name')).toBeFocused();
  await page.keyboard.type('Typha Latifolia Extract');
  await page.keyboard.press('Enter');
  const share = page.getByRole('textbox', { name: 'Share of Marsh silk, per cent' });
  await expect(share).toBeFocused();
  await expect(box).toHaveValue('');
  await page.keyboard.type('1');

  await page.getByRole('button', { name: 'Replace Marsh silk' }).click();
  const other = page.getByRole('combobox', { name: 'Replace Marsh silk with' });
  await other.fill('Squalane');
  await other.press('Enter');
  const line = page
    .locator('[data-line]')
    .filter({ has: page.getByText('Hazelthrum Squalane V') })
    .last();
  await expect(line.getByRole('textbox', { name: /^Share of/ })).toHaveValue('1.00');
  await line.getByRole('link', { name: 'Hazelthrum Squalane V' }).click();
  await expect(page.getByRole('heading', { name: 'Hazelthrum Squalane V' })).toBeVisible();
});
