import { expect, test } from './fixtures';

test.use({ opening: 'demo' });

test('F1 opens Using Stillroom, which leads to the glossary; a word is found, and printed as a hand-out', async ({
  page,
  stillroom,
}) => {
  await page.goto(`${stillroom.host.origin}/#/`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('F1');
  await expect(page.getByRole('heading', { name: 'From the shelf to the sheet' })).toBeVisible();
  await page.getByRole('navigation', { name: 'Help' }).getByRole('link', { name: 'Glossary' }).click();
  await page.getByLabel('Find a word').fill('krafft');
  await expect(page.locator('dt').first()).toContainText('Krafft temperature');
  await page.getByRole('button', { name: 'Print hand-out' }).click();
  await expect(page.getByRole('dialog', { name: 'Glossary' }).getByText('Page 1 of 1')).toBeVisible();
});

test('a word is explained beside it, and the finder leads to it', async ({ page, stillroom }) => {
  await page.goto(`${stillroom.host.origin}/#/bench`);
  await page.getByLabel('Target HLB').waitFor();
  await page.getByLabel('Explain this word').first().click();
  const says = page.locator('.popover');
  await expect(says).toContainText('Source:');
  await says.getByRole('link', { name: 'Open the glossary' }).click();
  await expect(page.getByRole('heading', { name: 'Glossary' })).toBeVisible();
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox', { name: 'Find anything' }).fill('drop point');
  await page.getByRole('option', { name: /drop point/ }).click();
  await expect(page.locator('#term-drop-point')).toBeInViewport();
});

test('Ctrl+P opens the sheet of what is on the screen; where there is none it lists what prints', async ({
  page,
  stillroom,
}) => {
  await page.goto(`${stillroom.host.origin}/#/settings`);
  await page.getByRole('heading', { name: 'Settings' }).waitFor();
  await page.keyboard.press('Control+p');
  const finder = page.getByRole('dialog', { name: 'Find' });
  await expect(finder.getByRole('option', { name: /Print a batch record/ })).toBeVisible();
  await page.keyboard.press('Escape');
  await page.goto(`${stillroom.host.origin}/#/materials`);
  await page.getByRole('row').nth(1).click();
  await page.getByRole('button', { name: 'Print', exact: true }).waitFor();
  await page.keyboard.press('Control+p');
  await expect(page.getByRole('dialog', { name: 'Raw-material specification' })).toBeVisible();
});

test('where one goes by keys the keys go on, past the navigation', async ({ page, stillroom }) => {
  await page.goto(`${stillroom.host.origin}/#/`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('Alt+3');
  await expect(page.getByRole('heading', { name: 'Emulsion bench' })).toBeVisible();
  await expect(page.locator('#main')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.locator('#main :focus')).toHaveCount(1);

  await page.keyboard.press('Control+k');
  await expect(page.getByRole('combobox', { name: 'Find anything' })).toBeFocused();
  await page.keyboard.type('plan a b');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Plan a batch' })).toBeVisible();
  await expect(page.locator('#main')).toBeFocused();

  // Who pressed a link of the navigation stays at it, and what asks for something has the focus itself.
  await page.getByRole('link', { name: 'Formulas', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Formulas', exact: true, level: 1 })).toBeVisible();
  await expect(page.getByRole('link', { name: 'Formulas', exact: true })).toBeFocused();
  await page.keyboard.press('Control+k');
  await expect(page.getByRole('combobox', { name: 'Find anything' })).toBeFocused();
  await page.keyboard.type('start a f');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'New formula' }).getByLabel('Name')).toBeFocused();
});
