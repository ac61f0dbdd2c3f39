import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { openFormula, recordVersion } from './formula-steps';

// What a product's file is made of besides the formula, and what becomes of a version: written, attached and decided on screen.
test.use({ opening: 'demo', viewport: { width: 1440, height: 900 } });

const PDF = Buffer.from('%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n');

test('a claim with its evidence and a report are put on file, and the version’s file holds both', async ({
  page,
  stillroom,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('heading', { name: 'Product file' }).click();
  await page.getByLabel('Add a claim').fill('Softens the skin');
  await page.getByLabel('Add a claim').press('Enter');
  await page.getByLabel('Evidence for claim 1').fill('Panel of twenty, four weeks, invented');
  await page.getByLabel('Kind of report').selectOption('Challenge test report');
  const chooser = page.waitForEvent('filechooser');
  await page.getByText('Add the report').last().click();
  await (
    await chooser
  ).setFiles({ name: 'Challenge, twenty-eight days.pdf', mimeType: 'application/pdf', buffer: PDF });
  await expect(page.getByRole('link', { name: 'Challenge, twenty-eight days' })).toBeVisible();
  const report = page.getByRole('group', { name: 'Challenge, twenty-eight days' });
  await report.getByLabel('Its date').fill('2026-05-04');
  await page.getByLabel('Report for claim 1').selectOption('Challenge, twenty-eight days');
  await page.getByLabel('Good manufacturing practice').fill('Made by ISO 22716, invented');
  await expectNoAxeViolations(page);
  await recordVersion(page, 'With its file');
  await page.getByRole('link', { name: 'Versions' }).click();
  await page.getByRole('button', { name: 'Product file…' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('heading', { name: 'What is missing' })).toBeVisible();
  await expect(dialog.getByText('No challenge test of the preservation is on file.')).toHaveCount(0);
  await expect(dialog.getByText(/has no evidence/)).toHaveCount(0);
  const coming = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save as a folder (ZIP)' }).click();
  const path = join(stillroom.folder, 'file.zip');
  await (await coming).saveAs(path);
  const files = unzipSync(new Uint8Array(readFileSync(path)));
  const kept = Object.keys(files).find((name) => name.startsWith('reports/challenge-test-report'));
  expect(Buffer.from(files[kept ?? ''] ?? []).equals(PDF)).toBe(true);
  expect(strFromU8(files['contents.txt'] ?? new Uint8Array())).toContain('05-claims-and-statements.pdf');
});

test('a version is withdrawn with a reason, which its page and its sheets show, and no batch is made of it', async ({
  page,
}) => {
  await openFormula(page, 'Meadow Body Milk');
  await recordVersion(page, 'To be withdrawn');
  await page.getByRole('link', { name: 'Versions' }).click();
  await page.getByRole('button', { name: 'Withdraw…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Withdrawn by').fill('Q. Invented');
  await dialog.getByRole('button', { name: /^Withdraw version/ }).click();
  await expect(dialog.getByText(/why/i).last()).toBeVisible();
  await dialog.getByLabel('Why it is withdrawn').fill('It separated at 45 °C, invented');
  await dialog.getByRole('button', { name: /^Withdraw version/ }).click();
  await expect(dialog).toHaveCount(0);
  await expect(page.getByText(/Withdrawn by Q\. Invented on/)).toBeVisible();
  await expect(page.getByText(/It separated at 45 °C, invented/)).toBeVisible();
  await expect(page.getByRole('link', { name: 'Make a batch of this version' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Withdraw…' })).toHaveCount(0);
});

test('a version is shown by the law of its day and of today: findings, label and exposure', async ({
  page,
}) => {
  await openFormula(page, 'Meadow Body Milk');
  await recordVersion(page, 'Judged again later');
  await page.getByRole('link', { name: 'Versions' }).click();
  const section = page.getByRole('region', { name: /^By the law of its day/ });
  await expect(section.getByRole('heading', { name: 'Label, European Union' })).toBeVisible();
  await expect(section.getByText('On its day and today', { exact: true })).toBeVisible();
  await section.getByText(/^Found on its day and today/).click();
  await expect(section.getByText(/Only weakly covered: moulds/)).toBeVisible();
  await section.getByText('Exposure and margin of safety of this version').click();
  await expect(section.getByRole('heading', { name: 'With a point of departure' })).toBeVisible();
  await expectNoAxeViolations(page);
});

test('a volume is filled by weight through the density, with its working', async ({ page }) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('tab', { name: 'Figures' }).click();
  const fill = page.getByRole('region', { name: 'Fill by volume' });
  await fill.getByLabel('Volume').fill('50');
  await fill.getByLabel('Density').fill('0.98');
  await fill.getByLabel('Density').blur();
  // 50 mL × 0.98 g/mL
  await expect(fill.getByText('49 g', { exact: true }).first()).toBeVisible();
  await fill.getByText('Working of the fill').click();
  await expect(fill.getByText(/50 × 0\.98/)).toBeVisible();
});

test('a locked line stays locked when the window was closed, and no share of it is moved', async ({
  page,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('button', { name: 'Adjust shares…' }).click();
  const locks = page.getByRole('dialog').getByRole('checkbox', { name: /^Lock / });
  await locks.nth(1).check();
  const label = (await locks.nth(1).getAttribute('aria-label')) ?? '';
  await page.reload();
  await page.getByRole('button', { name: 'Adjust shares…' }).click();
  await expect(page.getByRole('checkbox', { name: label, exact: true })).toBeChecked();
});
