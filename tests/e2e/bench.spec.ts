import type { Page } from '@playwright/test';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { picture } from './pictures';
import { chooseFormula } from './choose-formula';

test.use({ opening: 'demo', viewport: { width: 1360, height: 850 } });
test.slow();

const CREAM = 'Hedgerow Day Cream';

async function takeCream(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/bench`);
  await page.getByRole('button', { name: 'Take from a formula' }).click();
  await chooseFormula(page, CREAM);
  await page.getByRole('button', { name: 'Take the oil phase' }).click();
  await expect(page.getByText('From Hedgerow Day Cream')).toBeVisible();
}

async function addEmulsifier(page: Page, name: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Add an emulsifier' }).fill(name);
  await page.getByRole('listbox').getByRole('option').filter({ hasText: name }).first().click();
}

test('proposes systems for the cream’s oils, explains the first, and gives the ratio with its working', async ({
  page,
}) => {
  await takeCream(page);
  await expect(page.getByRole('region', { name: 'Oil phase' })).toContainText('10.7');
  const first = page.getByRole('region', { name: 'Proposed systems' }).locator('ol > li').first();
  await expect(first).toContainText('Offered HLB meets the required');
  await expect(first).toContainText('Griffin');
  await first.getByRole('button', { name: /^Put on the bench/ }).click();
  const offers = page.getByRole('region', { name: 'What it offers' });
  await expect(offers).toContainText('Within the band');
  await offers.getByText('Show the working of the ratio').click();
  await expect(offers).toContainText('(target − low) / (high − low)');
});

for (const when of ['before it is typed into', 'while it is typed into'] as const)
  test(`the formula offered first never mixes with what is typed: it comes late, ${when}`, async ({
    page,
  }) => {
    let release = (): void => undefined;
    const held = new Promise<void>((done) => (release = done));
    // The first list asked for is what the dialog offers; whatever is typed asks for its own.
    await page.route('**/api/formulas?*', async (route) => (await held, route.continue()), { times: 1 });
    await page.goto(`${new URL(page.url()).origin}/#/bench`);
    await page.getByRole('button', { name: 'Take from a formula' }).click();
    const box = page.getByRole('combobox', { name: 'Formula', exact: true });
    await box.focus();
    await expect(page.getByText('There is no formula in the library yet.')).toHaveCount(0);
    if (when === 'while it is typed into') await page.keyboard.type('Hedge');
    release();
    if (when === 'before it is typed into') {
      await expect(box).toHaveValue(/^F-/);
      await page.keyboard.type('Hedge');
    }
    await expect(page.getByRole('option', { name: CREAM }).first()).toBeVisible();
    await expect(box).toHaveValue('Hedge');
    await page.keyboard.type('row');
    await page.keyboard.press('Enter');
    await expect(box).toHaveValue(new RegExp(CREAM));
  });

test('refuses a cationic beside soap, says why, and keeps it out of formulas', async ({ page }) => {
  await takeCream(page);
  await addEmulsifier(page, 'Combeforth Behenyl Wax');
  const use = page.getByRole('button', { name: 'Use in formula' });
  await expect(use).toBeEnabled();
  await addEmulsifier(page, 'Brineholt Stearate Na');
  const findings = page.getByRole('region', { name: 'Charges and climate' });
  await expect(findings).toContainText('forms a salt');
  await expect(findings).toContainText('insoluble salt');
  await expect(use).toBeDisabled();
  await page.getByRole('button', { name: 'Remove Brineholt Stearate Na from the bench' }).click();
  await expect(use).toBeEnabled();
});

test('a share is dragged by keyboard, the mark follows, and Undo takes it back', async ({ page }) => {
  await takeCream(page);
  await addEmulsifier(page, 'Pibberley 60');
  await addEmulsifier(page, 'Pearthistle GS');
  const share = page.getByRole('slider', { name: 'Share of Pibberley 60' });
  await expect(share).toHaveValue('50');
  const plot = page.getByRole('img', { name: /on the HLB scale/ });
  const before = await plot.getAttribute('aria-label');
  await share.focus();
  for (let press = 0; press < 4; press += 1) await page.keyboard.press('ArrowRight');
  await expect(share).toHaveValue('52');
  await expect(page.getByLabel('Level of Pearthistle GS, % of the formula')).toHaveValue('1.92');
  await expect(plot).not.toHaveAttribute('aria-label', before ?? '');
  await page.getByRole('button', { name: 'Undo on the bench' }).click();
  await expect(share).toHaveValue('50');
});

test('out of reach says by how much, and a partner from the shelf reaches it', async ({ page }) => {
  await takeCream(page);
  await addEmulsifier(page, 'Pearthistle GS');
  await addEmulsifier(page, 'Dunnockle Tristearate');
  const offer = page.getByRole('region', { name: 'What it offers' });
  await expect(offer).toContainText('above what this pair reaches');
  await offer
    .getByRole('button', { name: /^Take .* as the partner$/ })
    .first()
    .click();
  await expect(offer).not.toContainText('above what this pair reaches');
  await offer.getByRole('button', { name: 'Set this ratio' }).click();
  await expect(offer).toContainText('Within the band');
});

test('three emulsifiers have a triangle with a table', async ({ page }) => {
  await takeCream(page);
  await addEmulsifier(page, 'Pearthistle GS');
  await addEmulsifier(page, 'Dunnockle Tristearate');
  await addEmulsifier(page, 'Pibberley 60');
  await expect(page.getByRole('img', { name: /^Triangle of/ })).toBeVisible();
  // The README shows the bench from its top down to the triangle.
  await page.setViewportSize({ width: 1360, height: 1400 });
  await page.getByRole('region', { name: 'Oil phase' }).scrollIntoViewIfNeeded();
  await picture(page, 'bench');
});

test('prints the hand-out, and puts the lines into the formula, where Undo takes them out', async ({
  page,
}) => {
  await takeCream(page);
  const first = page.getByRole('region', { name: 'Proposed systems' }).locator('ol > li').first();
  const put = first.getByRole('button', { name: /^Put on the bench/ });
  const label = await put.getAttribute('aria-label');
  const before = ['Fennelock Cetearyl 20', 'Pearthistle GS'];
  const added = (label ?? '')
    .replace('Put on the bench: ', '')
    .split(' with ')
    .find((name) => !before.includes(name));
  await put.click();
  await page.getByRole('button', { name: 'Print working' }).click();
  const sheet = page.getByRole('dialog', { name: 'Emulsion working' });
  const download = page.waitForEvent('download');
  await sheet.getByRole('button', { name: 'Save PDF' }).click({ timeout: 120_000 });
  expect((await download).suggestedFilename()).toBe('emulsion-working-hedgerow-day-cream.pdf');
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Use in formula' }).click();
  const dialog = page.getByRole('dialog', { name: 'Use in a formula' });
  await expect(dialog.getByLabel('Formula', { exact: true })).toHaveValue(/.+/);
  await dialog.getByRole('button', { name: 'Put into the formula' }).click();
  await expect(page).toHaveURL(/#\/formulas\//);
  const share = page.getByLabel(`Share of ${added}, per cent`, { exact: true });
  await expect(share).toBeVisible();
  await expect(page.getByLabel('Share of Fennelock Cetearyl 20, per cent', { exact: true })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(share).toHaveCount(0);
  await expect(page.getByLabel('Share of Fennelock Cetearyl 20, per cent', { exact: true })).toBeVisible();
});

test('the optimiser proves the cheapest, gives next-best ones, or says which demand to ease', async ({
  page,
}) => {
  await takeCream(page);
  await page.getByRole('link', { name: 'Optimise' }).click();
  await page.getByRole('button', { name: 'Find the best' }).click();
  await expect(page.getByText('Proven best of your shelf')).toBeVisible({ timeout: 120_000 });
  expect(await page.getByRole('button', { name: /^Put on the bench/ }).count()).toBeGreaterThanOrEqual(6);
  await expectNoAxeViolations(page);
  await page.getByLabel('Target HLB').fill('25');
  await page.getByLabel('Target HLB').press('Tab');
  await page.getByRole('button', { name: 'Find the best' }).click();
  await expect(page.getByText('No choice meets every demand')).toBeVisible({ timeout: 120_000 });
  await expect(page.getByText(/the highest reachable is/).first()).toBeVisible();
});

test('a trial series is planned, written on, chosen, and found again', async ({ page, stillroom }) => {
  await takeCream(page);
  await addEmulsifier(page, 'Pibberley 60');
  await addEmulsifier(page, 'Pearthistle GS');
  await page.getByRole('link', { name: 'Trials' }).click();
  await page.getByRole('button', { name: 'Plan and save the series' }).click();
  const series = page.getByRole('region', { name: 'Trial series' });
  await expect(series.getByRole('columnheader')).toHaveCount(6);
  // What one author leaves is kept when the next changes it.
  await stillroom.host.send('PATCH', '/api/settings', { recordedBy: 'N. Invented' });
  const result = series.getByRole('textbox', { name: /^HLB/ }).first();
  await result.fill('Oil ring after a day');
  await result.blur();
  await series.getByRole('radio').nth(2).check();
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.reload();
  await expect(page.getByRole('textbox', { name: /^HLB/ }).first()).toHaveValue('Oil ring after a day');
  await expect(page.getByRole('radio').nth(2)).toBeChecked();

  await page.getByRole('button', { name: 'History' }).click();
  const history = page.getByRole('dialog', { name: /^History of/ });
  await expect(history.getByRole('button', { name: /^Now/ })).toContainText('Trials, Chosen trial');
  await history.getByRole('button', { name: 'Restore Chosen trial' }).click();
  await expect(history.getByRole('status')).toContainText('Undo reverses this');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('radio').nth(2)).not.toBeChecked();
});

test('without oils, or with oils that have no value, the bench says what to do', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/bench`);
  await expect(page.getByText('Enter the oil phase first')).toBeVisible();
  await page.getByRole('combobox', { name: 'Add to the oil phase' }).fill('glycerin');
  await page.getByRole('listbox').getByRole('option').first().click();
  await expect(page.getByText(/None of the oils has a required HLB/)).toBeVisible();
  await expect(page.locator('main')).not.toContainText('NaN');
});
