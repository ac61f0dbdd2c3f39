import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';

/** Adds the first material of an empty library, and leaves it open. */
async function addWax(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.getByRole('button', { name: 'Add the first material' }).click();
  await page.getByLabel('Trade name').fill('Wax');
  await page.getByLabel('INCI name').fill('Cetyl Alcohol');
  await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();
}

test.describe('an empty library', () => {
  test('explains itself, takes the first material, saves each edit, and takes it back', async ({ page }) => {
    await expect(page.getByRole('heading', { name: 'An empty shelf' })).toBeVisible();
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    await page.getByRole('button', { name: 'Add the first material' }).click();
    await page.getByLabel('Trade name').fill('Test Wax 68');
    await page.getByLabel('INCI name').fill('Cetearyl Alcohol');
    await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();

    const pane = page.getByRole('complementary', { name: 'Material' });
    await expect(pane.getByRole('heading', { name: 'Test Wax 68' })).toBeVisible();
    await pane.getByLabel('Charge', { exact: true }).selectOption('non-ionic');
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await pane.getByRole('button', { name: 'Undo' }).click();
    await expect(pane.getByLabel('Charge', { exact: true })).toHaveValue('');
    await pane.getByRole('button', { name: 'Redo' }).click();
    await page.reload();
    await expect(page.getByLabel('Charge', { exact: true })).toHaveValue('non-ionic');
  });

  test('a bad figure stays in its field with a message, and nothing wrong is saved', async ({ page }) => {
    await addWax(page);
    await page.getByLabel('Add a figure').selectOption('hlb');
    const hlb = page.getByRole('group', { name: 'HLB', exact: true }).getByLabel('Value');
    for (const [typed, says] of [
      ['41', 'At most 40'],
      ['-1', 'At least 0'],
      ['about ten', 'is not a number'],
    ] as const) {
      await hlb.fill(typed);
      await hlb.blur();
      await expect(page.getByRole('alert').filter({ hasText: says })).toBeVisible();
      await expect(hlb).toHaveValue(typed);
    }
    await hlb.fill('15,5');
    await hlb.blur();
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.reload();
    await expect(page.getByRole('group', { name: 'HLB', exact: true }).getByLabel('Value')).toHaveValue(
      '15.5',
    );
  });

  test('a supplier can be entered before the price is known, and given one later', async ({ page }) => {
    await addWax(page);
    const offers = page.getByRole('region', { name: 'Suppliers and prices' });
    await offers.getByRole('button', { name: 'Add a supplier or price…' }).click();
    await offers.getByLabel('Supplier', { exact: true }).fill('Fernmill Supplies');
    const price = offers.getByLabel('Price of the pack');
    await price.fill('ask them');
    await price.press('Enter');
    await expect(offers.getByRole('alert')).toContainText('is not a number');
    await expect(price).toBeFocused();
    await price.fill('');
    await offers.getByRole('button', { name: 'Add supplier' }).click();
    await expect(offers.getByRole('row').nth(1)).toContainText('Fernmill Supplies');
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.reload();
    await offers.getByRole('button', { name: /Change the offer of Fernmill Supplies/ }).click();
    await offers.getByLabel('Pack', { exact: true }).fill('25');
    await price.fill('110,50');
    await offers.getByRole('button', { name: 'Change supplier' }).click();
    await expect(offers.getByRole('row').nth(1)).toContainText('€4.42');
  });

  test('a refused part holds up no other, and leaving asks before anything typed is lost', async ({
    page,
  }) => {
    await addWax(page);
    await page.getByLabel('Add a figure').selectOption('hlb');
    const hlb = page.getByRole('group', { name: 'HLB', exact: true });
    await hlb.getByLabel('Known from').selectOption('measured');
    await hlb.getByLabel('Source').fill('Our own trial');
    await hlb.getByLabel('From', { exact: true }).fill('14');
    await hlb.getByLabel('To', { exact: true }).fill('10');
    await hlb.getByLabel('To', { exact: true }).blur();
    await expect(hlb.getByRole('alert').first()).toBeVisible();
    await page.getByLabel('Code', { exact: true }).fill('QA-1');
    await page.keyboard.press('Tab');
    await page.getByRole('link', { name: 'Formulas', exact: true }).click();
    const question = page.getByRole('dialog', { name: 'Your last changes are not saved' });
    await question.getByRole('button', { name: 'Stay here' }).click();
    await expect(hlb.getByLabel('To', { exact: true })).toHaveValue('10');
    await hlb.getByLabel('To', { exact: true }).fill('16');
    await page.getByLabel('Notes', { exact: true }).fill('Typed, and left at once');
    await page.getByRole('link', { name: 'Formulas', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Formulas', level: 1 })).toBeVisible();
    await page.goBack();
    await expect(page.getByLabel('Code', { exact: true })).toHaveValue('QA-1');
    await expect(page.getByLabel('Notes', { exact: true })).toHaveValue('Typed, and left at once');
    await expect(hlb.getByLabel('To', { exact: true })).toHaveValue('16');
    await expect(hlb.getByLabel('Known from')).toHaveValue('measured');
    await expect(hlb.getByLabel('Source')).toHaveValue('Our own trial');
  });

  test('an edit that meets a newer state keeps both: the newer one, and mine one Undo away', async ({
    page,
    context,
  }) => {
    await addWax(page);
    await expect(page.getByRole('heading', { name: 'Wax' })).toBeVisible();
    const other = await context.newPage();
    await other.goto(page.url());
    await other.getByLabel('Appearance').fill('white pellets');
    await other.getByLabel('Appearance').blur();
    await expect(other.getByRole('contentinfo')).toContainText('Saved at');

    await page.getByLabel('Code', { exact: true }).fill('QA-2');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Load the newer state' }).click();
    await expect(page.getByLabel('Appearance')).toHaveValue('white pellets');
    await expect(page.getByLabel('Code', { exact: true })).toHaveValue('');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByLabel('Code', { exact: true })).toHaveValue('QA-2');
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.reload();
    await expect(page.getByLabel('Code', { exact: true })).toHaveValue('QA-2');
    await expect(page.getByLabel('Appearance')).toHaveValue('white pellets');
  });

  test('text that looks like markup is shown as text', async ({ page }) => {
    await page.goto(`${new URL(page.url()).origin}/#/materials`);
    await page.getByRole('button', { name: 'Add the first material' }).click();
    await page.getByLabel('Trade name').fill('<img src=x onerror=alert(1)>');
    await page.getByLabel('INCI name').fill('<b>Aqua</b>');
    await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();
    await expect(page.getByRole('heading', { name: '<img src=x onerror=alert(1)>' })).toBeVisible();
    await expect(page.locator('main b')).toHaveCount(0);
  });
});

test.describe('the demonstration library', () => {
  test.use({ opening: 'demo' });

  test('is searched and narrowed down with counts; Back takes a filter back', async ({ page }) => {
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    const found = page.getByRole('status').filter({ hasText: 'material' });
    const cationic = page
      .getByRole('list', { name: 'Charge' })
      .getByRole('listitem')
      .filter({ hasText: 'cationic' });
    await expect(cationic.locator('.number')).toHaveText(/\d/);
    const promised = await cationic.locator('.number').innerText();
    await cationic.getByRole('checkbox').check();
    await expect(found).toHaveText(`${promised} materials`);
    await expect(page.getByRole('grid', { name: 'Raw materials' }).getByRole('row').nth(1)).toContainText(
      'cationic',
    );
    await expect(page).toHaveURL(/charge=cationic/);
    await page.goBack();
    await expect(page).not.toHaveURL(/charge=cationic/);
    await expect(cationic.getByRole('checkbox')).not.toBeChecked();
  });

  test('what is typed reaches the address, also when a row is opened at once; Back then finds it', async ({
    page,
  }) => {
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    const found = page.getByRole('status').filter({ hasText: 'material' });
    await expect(found).toContainText(/\d/);
    await page.getByLabel('Search materials').pressSequentially('glyceryl');
    await page.getByRole('row').filter({ hasText: 'Glyceryl' }).first().click();
    await expect(page).toHaveURL(/#\/materials\/.+text=glyceryl/);
    await expect(page.getByRole('complementary', { name: 'Material' })).toBeVisible();
    const count = await found.innerText();
    await page.keyboard.press('Escape');
    await expect(page).toHaveURL(/#\/materials\?text=glyceryl/);
    await page.getByRole('link', { name: 'Formulas' }).click();
    await page.goBack();
    await expect(page.getByLabel('Search materials')).toHaveValue('glyceryl');
    await expect(found).toHaveText(count);
  });

  test('is worked through by keyboard: search, move, pick, open, close', async ({ page }) => {
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    await expect(page.getByRole('grid').getByRole('row').nth(1)).toBeVisible();
    await page.keyboard.press('/');
    await expect(page.getByLabel('Search materials')).toBeFocused();
    await page.keyboard.type('glyc');
    await expect(page).toHaveURL(/text=glyc/);
    await page.keyboard.press('ArrowDown');
    await expect(page.locator('[role=row][data-index="0"]')).toBeFocused();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Space');
    await expect(page.getByRole('region', { name: 'Picked materials' })).toContainText('1 picked');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('complementary', { name: 'Material' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('complementary', { name: 'Material' })).toBeHidden();
  });

  test('End goes to the last row, and Escape in the finder leaves the material behind it open', async ({
    page,
  }) => {
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    await page.locator('[role=row][data-index="0"]').focus();
    await page.keyboard.press('End');
    await expect(page.locator('[role=row]:focus')).toHaveAttribute('data-index', /^\d{2,}$/);
    await page.keyboard.press('Home');
    await expect(page.locator('[role=row][data-index="0"]')).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('complementary', { name: 'Material' })).toBeVisible();
    await page.keyboard.press('Control+k');
    await expect(page.getByLabel('Find anything')).toBeFocused();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
    await expect(page.getByRole('complementary', { name: 'Material' })).toBeVisible();
  });

  test('what is typed is found by Back, and kept when the material is closed at once', async ({ page }) => {
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    const box = page.getByLabel('Search materials');
    await box.pressSequentially('glyc');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('complementary', { name: 'Material' })).toContainText(/glyc/i);
    await box.fill('wax');
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await expect(page).toHaveURL(/#\/materials\?text=wax/);
    await box.fill('oil');
    await page.getByRole('button', { name: 'HLB', exact: true }).click();
    await expect(page).toHaveURL(/text=oil.*sortBy=hlb/);
    await page.goBack();
    await expect(page).toHaveURL(/text=oil$/);
    await expect(page.getByRole('columnheader', { name: 'HLB' })).toHaveAttribute('aria-sort', 'none');
    await box.fill('acid');
    await page.getByRole('link', { name: 'Formulas', exact: true }).click();
    // Back before the other screen is there leaves this one for the step before it, as in any browser.
    await expect(page).toHaveURL(/#\/formulas$/);
    await page.goBack();
    await expect(box).toHaveValue('acid');
  });

  test('a search kept under a name comes back whole', async ({ page }) => {
    await page.goto(
      `${new URL(page.url()).origin}/#/materials?charge=non-ionic&hlbFrom=10&hlbTo=16&form=pellets`,
    );
    const found = page.getByRole('status').filter({ hasText: 'material' });
    await expect(found).toContainText(/\d/);
    const count = await found.innerText();
    await page.getByRole('button', { name: 'Save this search' }).click();
    await page.getByLabel('Name').fill('Pellets for o/w');
    await page.getByRole('button', { name: 'Save search' }).click();
    await page.goto(`${new URL(page.url()).origin}/#/materials`);
    await page.getByRole('button', { name: 'Pellets for o/w', exact: true }).click();
    await expect(page).toHaveURL(/hlbFrom=10/);
    await expect(found).toHaveText(count);
  });

  test('refuses to delete a used material and says where it is used', async ({ page }) => {
    await page.goto(`${new URL(page.url()).origin}/#/materials?text=glycerin`);
    await page
      .getByRole('row')
      .filter({ hasText: /Glycerin/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await page.getByRole('button', { name: 'Delete for good' }).click();
    await expect(page.getByRole('dialog').getByRole('alert')).toContainText('is used in');
    await page.getByRole('button', { name: 'Archive instead' }).click();
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  });

  test('the palette finds a material, a formula and a place by typing', async ({ page }) => {
    for (const [typed, says] of [
      ['hedgerow', 'Hedgerow Day Cream'],
      ['ceteareth', 'Ceteareth'],
      ['sett', 'Settings'],
    ] as const) {
      await page.keyboard.press('Control+k');
      await page.getByLabel('Find anything').fill(typed);
      await expect(page.getByRole('listbox').getByRole('option').first()).toContainText(says);
      await page.keyboard.press('Enter');
      await expect(page.getByRole('dialog')).toBeHidden();
    }
    await expect(page.getByRole('heading', { name: 'Settings', level: 1 })).toBeVisible();
  });

  test('Enter in the palette waits for the answer to what was typed', async ({ page }) => {
    await page.route('**/api/materials?*', async (route) => {
      await new Promise((later) => setTimeout(later, 500));
      await route.continue();
    });
    await page.keyboard.press('Control+k');
    await page.getByLabel('Find anything').fill('hedgerow');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { level: 1, name: 'Hedgerow Day Cream' })).toBeVisible();
  });

  test('the palette carries out a command', async ({ page }) => {
    await page.keyboard.press('Control+k');
    await page.getByLabel('Find anything').fill('add raw');
    await expect(page.getByRole('listbox').getByRole('option').first()).toContainText('Add a raw material');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog', { name: 'Add a raw material' })).toBeVisible();
    await expect(page).not.toHaveURL(/do=/);
  });

  test('compares up to six side by side, and marks in words where they differ', async ({ page }) => {
    await page.goto(`${new URL(page.url()).origin}/#/materials?charge=non-ionic&functions=emulsifier`);
    for (const index of [0, 1, 2]) await page.locator(`[role=row][data-index="${index}"] input`).check();
    await page.getByRole('button', { name: 'Compare side by side' }).click();
    await expect(page.getByRole('columnheader')).toHaveCount(4);
    const hlb = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: /^HLB/ }) });
    await expect(hlb).toContainText('differs');
    await page.getByLabel('Only where they differ').check();
    await expect(page.getByRole('rowheader', { name: /^Charge/ })).toHaveCount(0);
  });
});
