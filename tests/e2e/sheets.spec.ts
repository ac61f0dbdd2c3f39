import type { Download, Locator, Page } from '@playwright/test';
import { unzipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { openFormula } from './formula-steps';

test.use({ opening: 'demo' });

async function bytesOf(download: Download): Promise<Buffer> {
  return readFileSync(await download.path());
}

async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return bytesOf(download);
}

const dialog = (page: Page): Locator => page.getByRole('dialog');

async function openFormulaSheet(page: Page): Promise<void> {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('button', { name: 'Formula sheet…' }).click();
  await expect(dialog(page).getByText(/Page 1 of [1-9]/)).toBeVisible();
}

/** How many of a canvas's pixels are not white: a blank page has none. */
function inked(canvas: Locator): Promise<number> {
  return canvas.evaluate((element: HTMLCanvasElement) => {
    const { data } = element.getContext('2d')?.getImageData(0, 0, element.width, element.height) ?? {
      data: [],
    };
    let count = 0;
    for (let at = 0; at < data.length; at += 4) if ((data[at] ?? 255) < 200) count += 1;
    return count;
  });
}

test('a formula sheet is previewed page by page and saved as a PDF', async ({ page }) => {
  await openFormulaSheet(page);
  const first = page.getByRole('img', { name: /^Page 1 of/ });
  await expect(first).toHaveAttribute('data-drawn', 'yes');
  expect(await inked(first)).toBeGreaterThan(1000);
  await page.getByRole('button', { name: 'Next page' }).click();
  await expect(dialog(page).getByText(/Page 2 of/)).toBeVisible();
  await expect(page.getByRole('img', { name: /^Page 2 of/ })).toHaveAttribute('data-drawn', 'yes');
  const full = await saved(page, 'Save PDF');
  expect(full.subarray(0, 5).toString()).toBe('%PDF-');

  await dialog(page).getByLabel('For sharing').check();
  await dialog(page).getByLabel('Paper').selectOption('US Letter');
  await expect(page.getByRole('button', { name: 'Save PDF' })).toBeEnabled();
  const shared = await saved(page, 'Save PDF');
  expect(shared.subarray(0, 5).toString()).toBe('%PDF-');
  expect(shared.equals(full)).toBe(false);
});

test('printing hands every page to the print dialog, on its paper, and then tidies up', async ({ page }) => {
  await openFormulaSheet(page);
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-print-asked', 'yes');
  });
  await page.getByRole('button', { name: 'Print…' }).click();
  await expect(page.locator('body')).toHaveAttribute('data-print-asked', 'yes');
  const pages = await page.getByRole('img', { name: /^Page/ }).count();
  await expect(page.locator('.print-pages img')).toHaveCount(pages);
  const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(printed.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(pages);
  // A4 in points, as the browser rounds it.
  expect(printed).toMatch(/\/MediaBox\s*\[0 0 59[45]\.\d* 84[12]/);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await expect(page.locator('.print-pages')).toHaveCount(0);
});

test('signs that the typeface lacks are named before printing, and print as their codes when asked', async ({
  page,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await page.getByLabel('Purpose').fill('For the 日 workshop');
  await page.getByRole('button', { name: 'Formula sheet…' }).click();
  await expect(dialog(page).getByRole('listitem')).toHaveText('日 (U+65E5)');
  await page.getByRole('button', { name: 'Print with codes instead' }).click();
  await expect(dialog(page).getByText(/Page 1 of [1-9]/)).toBeVisible();
  await page.keyboard.press('Escape');

  await page.getByRole('link', { name: 'Formulas' }).click();
  for (const name of ['Hedgerow Day Cream', 'Meadow Body Milk'])
    await page.getByLabel(`Select ${name}`).check();
  await page.getByRole('button', { name: 'Print formula sheets…' }).click();
  await expect(dialog(page).getByText('1 sheet made.')).toBeVisible();
  await expect(dialog(page).getByRole('listitem')).toContainText('Hedgerow Day Cream');
  await expectNoAxeViolations(page);
});

test('many sheets are made with progress and saved as one ZIP of PDFs', async ({ page }) => {
  await page.getByRole('link', { name: 'Formulas' }).click();
  for (const name of ['Hedgerow Day Cream', 'Meadow Body Milk', 'Gardener’s Hand Balm'])
    await page.getByLabel(`Select ${name}`).check();
  await page.getByRole('button', { name: 'Print formula sheets…' }).click();
  await expect(dialog(page).getByText('3 sheets made.')).toBeVisible({ timeout: 120_000 });
  const files = Object.values(unzipSync(await saved(page, 'Save ZIP')));
  expect(files).toHaveLength(3);
  for (const file of files) expect(Buffer.from(file.subarray(0, 5)).toString()).toBe('%PDF-');
});

test('making many sheets can be stopped', async ({ page }) => {
  await page.getByRole('link', { name: 'Formulas' }).click();
  await page.getByLabel('Select all shown').check();
  // The second sheet waits until it is asked to stop: what was made before is kept.
  let asked = 0;
  await page.route('**/api/sheets', async (route) => {
    asked += 1;
    if (asked === 1) await route.continue();
  });
  await page.getByRole('button', { name: 'Print formula sheets…' }).click();
  await expect(dialog(page).getByText(/^1 of \d+$/)).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(dialog(page).getByText('Stopped. 1 sheet made before that.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save ZIP' })).toBeEnabled();
});
