import { expect, test } from './fixtures';

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
    await expect(page.getByRole('region', { name: 'Selected materials' })).toContainText('1 selected');
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
    await page.getByRole('button', { name: 'Delete it' }).click();
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
    await page.route('**/api/find?*', async (route) => {
      await new Promise((later) => setTimeout(later, 500));
      await route.continue();
    });
    await page.keyboard.press('Control+k');
    await page.getByLabel('Find anything').fill('hedgerow');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { level: 1, name: 'Hedgerow Day Cream' })).toBeVisible();

    // Closed before the answer: nobody is taken anywhere any more.
    const answered = page.waitForResponse(/api\/find\?text=sett/);
    await page.keyboard.press('Control+k');
    await page.getByLabel('Find anything').fill('sett');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await answered;
    await expect(page.getByRole('dialog')).toBeHidden();
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
    for (const row of ['Supplier', 'Latest price per kg'])
      await expect(page.getByRole('rowheader', { name: row })).toBeVisible();
    await expect(page.getByRole('table').getByRole('img').first()).toBeVisible();
    await page.getByLabel('Only where they differ').check();
    await expect(page.getByRole('rowheader', { name: /^Charge/ })).toHaveCount(0);
    const another = page.getByRole('combobox', { name: 'Add a material to the comparison' });
    await another.pressSequentially('glycerin');
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('columnheader')).toHaveCount(5);
  });
});

test('a library without materials says so under a filter too, with the way to add the first', async ({
  page,
}) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials?charge=cationic&text=wax`);
  await expect(page.getByRole('heading', { name: 'Nothing on the shelf yet' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Add the first material' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'No material matches' })).toHaveCount(0);
});
