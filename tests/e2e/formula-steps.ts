import type { Locator, Page } from '@playwright/test';
import { expect } from './fixtures';

/** A formula's draft, ready to be written in. */
export async function openFormula(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'Formulas', exact: true }).click();
  // Today links formulas too, more than once, and stands until the list is there.
  await expect(page.getByRole('heading', { name: 'Formulas', exact: true, level: 1 })).toBeVisible();
  await page.getByRole('link', { name, exact: true }).click();
  await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
}

export const shareOf = (page: Page, material: string): Locator =>
  page.getByRole('textbox', { name: `Share of ${material}, per cent` });

/** The first line with a share of its own: its material and field. */
export async function firstShare(page: Page): Promise<{ material: string; field: Locator }> {
  const label = await page.locator('[data-cell=percent] label').first().innerText();
  const material = label.replace(/^Share of /, '').replace(/, per cent$/, '');
  return { material, field: shareOf(page, material) };
}

export async function recordVersion(page: Page, reason: string): Promise<void> {
  await page.getByRole('button', { name: 'Record version…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Why this version').fill(reason);
  await dialog.getByRole('button', { name: 'Record version' }).click();
  await expect(dialog).toBeHidden();
}
