import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { openFormula } from './formula-steps';
import { picture } from './pictures';

// The main job from end to end, as a new user would try it. With STILLROOM_PICTURES set to a folder, the README's
// pictures are taken on the way.
test.use({ opening: 'demo', viewport: { width: 1360, height: 850 } });
test.slow();

function installed(program: string): boolean {
  try {
    execFileSync(program, program === 'qpdf' ? ['--version'] : ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** What poppler and qpdf say of a PDF, where they are; in CI they must be. */
function checkPdf(path: string, contains: string): void {
  expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
  for (const program of ['qpdf', 'pdftotext'])
    if (!installed(program)) {
      if (process.env.CI) throw new Error(`${program} must be there in CI.`);
      console.warn(`SKIPPED: ${program} is not installed, so it was not asked about ${path}.`);
    }
  if (installed('qpdf')) execFileSync('qpdf', ['--check', path], { stdio: 'ignore' });
  if (installed('pdftotext'))
    expect(execFileSync('pdftotext', ['-layout', path, '-']).toString()).toContain(contains);
}

async function savePdf(page: Page, folder: string, contains: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await expect(dialog.locator('canvas').first()).toBeVisible({ timeout: 120_000 });
  const coming = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save PDF' }).click();
  const download = await coming;
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  checkPdf(path, contains);
}

const tick = (page: Page, list: string, word: string): Promise<void> =>
  page
    .getByRole('list', { name: list })
    .getByRole('checkbox', { name: new RegExp(`^${word}`) })
    .check();
const rows = (page: Page): Locator =>
  page.getByRole('grid', { name: 'Raw materials' }).locator('[data-index]');

test('find, compare, write, record, batch and print', async ({ page, stillroom }) => {
  const found = page.getByRole('status').filter({ hasText: 'material' });
  await expect(page.getByRole('link', { name: 'Hedgerow Day Cream' })).toBeVisible();
  await picture(page, 'today');

  await test.step('find all cationic emulsifiers', async () => {
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    await tick(page, 'Charge', 'cationic');
    await tick(page, 'Function', 'emulsifier');
    await expect(found).toHaveText(/^[1-9]\d* materials$/);
    // Until the list has followed: some of its rows are of the filter before.
    await expect(rows(page).filter({ hasNotText: 'cationic' })).toHaveCount(0);
    await page.getByRole('button', { name: 'Clear' }).click();
  });

  await test.step('then the non-ionic ones of HLB 10 to 16 that come as pellets', async () => {
    await tick(page, 'Charge', 'non-ionic');
    await tick(page, 'Form', 'pellets');
    await page.getByLabel('HLB from').fill('10');
    await page.getByLabel('HLB to').fill('16');
    await page.getByLabel('HLB to').press('Enter');
    await expect(page).toHaveURL(/hlbTo=16/);
    await expect(rows(page).nth(2)).toContainText('pellets');
    await expect(async () => {
      const shown = await rows(page).locator('[role=gridcell]:nth-child(5)').allInnerTexts();
      expect(shown.length).toBeGreaterThan(0);
      for (const text of shown) {
        expect(Number(text)).toBeGreaterThanOrEqual(10);
        expect(Number(text)).toBeLessThanOrEqual(16);
      }
    }).toPass();
    await picture(page, 'materials');
  });

  await test.step('compare three, and save the hand-out', async () => {
    for (const index of [0, 1, 2]) await page.locator(`[data-index="${index}"] input`).check();
    await page.getByRole('button', { name: 'Compare side by side' }).click();
    await expect(page.getByRole('columnheader')).toHaveCount(4);
    await picture(page, 'compare');
    await page.getByRole('button', { name: 'Print hand-out' }).click();
    await savePdf(page, stillroom.folder, 'non-ionic'.replace(/^n/, 'N'));
    await page.keyboard.press('Escape');
  });

  await test.step('save the specification of one', async () => {
    await page.getByRole('columnheader').nth(1).getByRole('link').click();
    await page.getByRole('toolbar', { name: 'Material' }).getByRole('button', { name: 'Print' }).click();
    await savePdf(page, stillroom.folder, 'INCI');
    await page.keyboard.press('Escape');
    await picture(page, 'material');
  });

  await test.step('open a formula, change a line, record a version, save its sheet', async () => {
    await openFormula(page, 'Hedgerow Day Cream');
    const share = page.getByRole('textbox', { name: /^Share of .*Glycerin.*, per cent/ });
    await share.fill('4,5');
    await share.blur();
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.getByLabel('Name', { exact: true }).scrollIntoViewIfNeeded();
    await picture(page, 'formula');
    await page.getByRole('button', { name: 'Record version…' }).click();
    await page.getByRole('dialog').getByLabel('Why this version').fill('More glycerin');
    await page.getByRole('dialog').getByRole('button', { name: 'Record version' }).click();
    await expect(page.getByText('Version 1 is recorded.')).toBeVisible();
    await page.getByRole('button', { name: 'Formula sheet…' }).click();
    await savePdf(page, stillroom.folder, 'Hedgerow Day Cream');
    await picture(page, 'sheet');
    await page.keyboard.press('Escape');
  });

  await test.step('make a 2.5 kg batch, and save its record', async () => {
    await page.getByRole('link', { name: 'Make a batch of it' }).click();
    await page.getByLabel('Batch mass').fill('2.5');
    await expect(page.getByText(/together exactly 2\.5000.kg/)).toBeVisible();
    await picture(page, 'plan-batch');
    await page.getByRole('button', { name: 'Make batch' }).click();
    await expect(page.getByRole('heading', { name: 'Batch B-004' })).toBeVisible();
    await page.getByRole('button', { name: /batch record/i }).click();
    await savePdf(page, stillroom.folder, 'B-004');
  });
});
