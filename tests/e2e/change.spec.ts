import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from '@playwright/test';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { openFormula, recordVersion, shareOf } from './formula-steps';
import { picture } from './pictures';

// From a formula that is wrong in more than twenty ways to one that is approved and printed; then a preservative
// swapped in three formulas, and a cream made cheaper without one of its substances.
test.use({ opening: 'demo', viewport: { width: 1440, height: 900 } });
test.slow();

const line = (page: Page, material: string) => page.locator('[data-line]').filter({ hasText: material });

async function setShare(page: Page, material: string, percent: string): Promise<void> {
  const field = shareOf(page, material);
  await field.fill(percent);
  await field.blur();
}

async function pick(page: Page, box: ReturnType<Page['getByRole']>, material: string): Promise<void> {
  await box.fill(material);
  await page
    .getByRole('listbox')
    .getByRole('option', { name: new RegExp(material) })
    .first()
    .click();
}

async function replace(page: Page, from: string, to: string): Promise<void> {
  await line(page, from)
    .getByRole('button', { name: `Replace ${from}`, exact: true })
    .click();
  await pick(page, page.getByRole('combobox', { name: `Replace ${from} with` }), to);
  await expect(line(page, to)).toBeVisible();
}

async function add(page: Page, phase: string, material: string, percent: string): Promise<void> {
  const body = page.locator(`tbody[aria-label="Phase ${phase}"]`);
  await pick(page, body.locator('[data-add]').getByRole('combobox'), material);
  await expect(line(page, material)).toBeVisible();
  await setShare(page, material, percent);
}

async function remove(page: Page, material: string): Promise<void> {
  await line(page, material)
    .getByRole('button', { name: `Remove ${material}`, exact: true })
    .click();
  await expect(line(page, material)).toHaveCount(0);
}

async function savePdf(page: Page, folder: string): Promise<Buffer> {
  const dialog = page.getByRole('dialog').filter({ has: page.getByRole('button', { name: 'Save PDF' }) });
  await expect(dialog.locator('canvas').first()).toBeVisible({ timeout: 60_000 });
  const coming = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save PDF' }).click();
  const download = await coming;
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  return readFileSync(path);
}

test('a bad formula is mended until nothing is found, approved, and its whole file printed', async ({
  page,
  stillroom,
}) => {
  const findings = page.locator('.findings > li');
  await openFormula(page, 'Thistlebog Muddle');
  await test.step('more than twenty different things are found', async () => {
    await expect(page.getByRole('heading', { name: /Benzoates come to/ })).toBeVisible();
    const titles = await page.locator('.findings h3').allInnerTexts();
    expect(new Set(titles).size).toBeGreaterThanOrEqual(20);
    await picture(page, 'muddle');
  });

  await test.step('each is mended, and every step clears something', async () => {
    /** What is found, whatever its figures. */
    const told = async (): Promise<string[]> =>
      (await page.locator('.findings h3').allInnerTexts()).map((title) => title.replace(/[\d.,]+/g, '#'));
    const mend = async (does: () => Promise<void>): Promise<void> => {
      const before = await told();
      await does();
      await expect
        .poll(async () => {
          const after = new Set(await told());
          return before.filter((one) => !after.has(one)).length;
        })
        .toBeGreaterThan(0);
    };
    for (const gone of [
      'Glimmerthwaite Retinyl',
      'Silkwicket Quat Granules',
      'Saltcairn Table Salt',
      'Glimmerthwaite Salicylic',
      'Glimmerthwaite Zinc Oxide',
      'Glimmerthwaite Urea',
      'Waxwhistle C18',
      'Petalhush Linen Morning',
    ])
      await mend(() => remove(page, gone));
    await mend(() => replace(page, 'Dunnockle Sesquioleate', 'Pearthistle GS'));
    await setShare(page, 'Pearthistle GS', '2.2');
    await mend(() => add(page, 'A', 'Brineholt Phosphate KC', '1.5'));
    await mend(() => replace(page, 'Treaclemoor Carbomer Clear', 'Treaclemoor Xanthan Clear'));
    await setShare(page, 'Treaclemoor Xanthan Clear', '0.3');
    await mend(() => replace(page, 'Waxwhistle Carnauba', 'Waxwhistle Bees White'));
    await mend(async () => {
      await replace(page, 'Larderly Benzoate', 'Larderly Phenoxy Blend');
      await setShare(page, 'Larderly Phenoxy Blend', '1');
    });
    await mend(() => add(page, 'B', 'Claspwell EDTA', '0.1'));
    await mend(() => add(page, 'C', 'Glimmerthwaite Tocopherol', '0.3'));
    await add(page, 'C', 'Petalhush Linen Morning', '0.3');
    await mend(() =>
      line(page, 'Wellbucket Purified Water')
        .getByRole('checkbox', { name: /q\.s\. to 100/ })
        .check(),
    );
    await expect(page.getByText('Every check passes.')).toBeVisible();
    await expect(findings.getByRole('heading')).toHaveCount(0);
    await expect(page.getByText(/Total\s*100/)).toBeVisible();
  });

  await test.step('its label prints', async () => {
    await page.getByRole('tab', { name: 'Label' }).click();
    await page.getByRole('button', { name: 'Print…' }).click();
    expect((await savePdf(page, stillroom.folder)).subarray(0, 5).toString()).toBe('%PDF-');
  });

  await test.step('the version is recorded and approved', async () => {
    await recordVersion(page, 'Mended');
    await page.getByRole('link', { name: 'Versions' }).click();
    await page.getByRole('button', { name: 'Approve…' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Approved by').fill('Q. Invented');
    await dialog.getByRole('button', { name: 'Approve version 1' }).click();
    await expect(dialog).toHaveCount(0);
    await expect(page.getByText(/Approved by Q\. Invented on/)).toBeVisible();
    await expectNoAxeViolations(page);
  });

  await test.step('its sheet and its whole file print, and the file is saved as a folder', async () => {
    await page.getByRole('button', { name: 'Print sheet…' }).click();
    expect((await savePdf(page, stillroom.folder)).subarray(0, 5).toString()).toBe('%PDF-');
    await page.getByRole('button', { name: 'Product file…' }).click();
    await expect(page.getByText('No challenge test of the preservation is on file.')).toBeVisible();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a folder (ZIP)' }).click();
    const path = join(stillroom.folder, 'file.zip');
    await (await coming).saveAs(path);
    const files = unzipSync(new Uint8Array(readFileSync(path)));
    for (const name of [
      '00-product-file.pdf',
      '01-formula.pdf',
      '02-label-and-law.pdf',
      '03-exposure.pdf',
      '04-specification-of-the-finished-product.pdf',
      '07-batches.pdf',
    ])
      expect(strFromU8(files[name]?.subarray(0, 5) ?? new Uint8Array()), name).toBe('%PDF-');
    await page.getByRole('button', { name: 'Show as one document' }).click();
    const whole = await savePdf(page, stillroom.folder);
    expect(whole.includes('/Outlines')).toBe(true);
  });
});

test('a preservative is swapped in three formulas at once, and all of them taken back with one Undo', async ({
  page,
  stillroom,
}) => {
  const { rows } = (await stillroom.host.get('/api/materials?text=Larderly+Phenoxy+Blend')) as {
    rows: { id: string; tradeName: string }[];
  };
  const blend = rows.find(({ tradeName }) => tradeName === 'Larderly Phenoxy Blend')?.id ?? '';
  await page.goto(`${stillroom.host.origin}/#/materials/${blend}`);
  await page.getByRole('link', { name: 'Swap it for another' }).click();
  await page.getByRole('radio', { name: 'Take Larderly Benzyl Blend' }).check();
  const boxes = page.getByRole('checkbox', { name: /^Swap it in / });
  await expect(boxes.first()).toBeVisible();
  // What each candidate would do to the law stands beside it.
  const candidate = page.getByRole('row', { name: /^Take Larderly Benzyl Blend/ });
  await expect(candidate).toContainText(/breaks no further limit|%/);
  const names = await boxes.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  expect(names.length).toBeGreaterThanOrEqual(3);
  for (const name of names.slice(3)) await page.getByRole('checkbox', { name, exact: true }).uncheck();
  await expectNoAxeViolations(page);
  await expect(page.getByRole('link', { name: 'Formulas', exact: true })).toHaveAttribute(
    'aria-current',
    'page',
  );
  await page.getByRole('heading', { name: 'What may take its place' }).evaluate((one) => {
    one.scrollIntoView({ block: 'start' });
  });
  await picture(page, 'swap');
  await page.getByRole('button', { name: 'Swap in 3 drafts' }).click();
  const told = page.getByRole('status').filter({ hasText: 'in place of Larderly Phenoxy Blend in 3 drafts' });
  await expect(told).toBeVisible();
  const links = await told.getByRole('link').allInnerTexts();
  await told.getByRole('link').first().click();
  await expect(line(page, 'Larderly Benzyl Blend')).toBeVisible();
  await page.goBack();
  // Back is another visit: the page has forgotten what it did, and finds the others still to be swapped.
  await expect(page.getByRole('heading', { name: 'Swap Larderly Phenoxy Blend' })).toBeVisible();

  await page.getByRole('radio', { name: 'Take Larderly Phenoxy', exact: true }).check();
  await expect(boxes.first()).toBeVisible();
  const left = await boxes.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  expect(left.some((label) => links.some((name) => label.endsWith(name)))).toBe(false);
  await page.getByRole('button', { name: /^Swap in \d+ draft/ }).click();
  await page.getByRole('button', { name: 'Undo the swap everywhere' }).click();
  await expect(page.getByText('Every formula is as it was before the swap.')).toBeVisible();
  const again = await boxes.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  await page.getByRole('radio', { name: 'Take Larderly Phenoxy', exact: true }).check();
  await expect(boxes).toHaveCount(left.length);
  expect(again.length === 0 || again.length === left.length).toBe(true);
});

test('a cream is reformulated 15 % cheaper and without one substance', async ({ page }) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('link', { name: 'Reformulate…' }).click();
  await page.getByRole('button', { name: '15 % less' }).click();
  await page.getByLabel('Without a substance').selectOption('Phenoxyethanol');
  await page.getByRole('button', { name: 'Find the nearest formula' }).click();
  await expect(page.getByRole('heading', { name: 'The nearest formula, proven' })).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByText('What binds:')).toBeVisible();
  await expect(page.getByText('Proven: no formula that meets what you ask is nearer.')).toBeVisible();
  await expect(page.getByRole('group', { name: 'Formulas found' }).getByRole('button')).toHaveCount(6);
  await page.getByRole('group', { name: 'Formulas found' }).getByRole('button').last().click();
  await expect(page.getByText(/Proven to be the next: |not proven to be the next/)).toBeVisible();
  await page.getByRole('group', { name: 'Formulas found' }).getByRole('button').first().click();
  await expectNoAxeViolations(page);
  await picture(page, 'reformulate');
  const cost = page.getByRole('row', { name: /^Raw materials per kg/ });
  const change = await cost.getByRole('cell').last().innerText();
  expect(Number(change.replace('−', '-').replace(/[^\d.-]/g, ''))).toBeLessThanOrEqual(-15);
  await page.getByRole('button', { name: 'Make it the draft' }).click();
  await expect(page.getByRole('heading', { name: 'Hedgerow Day Cream', exact: true })).toBeVisible();
  await expect(line(page, 'Larderly Phenoxy Blend')).toHaveCount(0);
  await expect(page.getByText(/Total\s*100/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(line(page, 'Larderly Phenoxy Blend')).toBeVisible();
});

test('a reformulation that nothing meets says which demands clash, and how far one can go', async ({
  page,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('link', { name: 'Reformulate…' }).click();
  const cost = page.getByLabel('Raw materials, at most');
  await cost.fill('0.2');
  await cost.blur();
  await page.getByRole('button', { name: 'Find the nearest formula' }).click();
  await expect(page.getByRole('heading', { name: 'No formula meets all of this' })).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByText(/These demands clash: .*the cost/)).toBeVisible();
  await expect(page.getByText(/the cost: the least that can be reached is/)).toBeVisible();
});
