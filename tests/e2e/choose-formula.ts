import type { Page } from '@playwright/test';
import { expect } from './fixtures';

/** Finds a formula by its name where one is asked for, and takes it. */
export async function chooseFormula(page: Page, name: string): Promise<void> {
  const box = page.getByRole('combobox', { name: 'Formula', exact: true });
  await box.fill(name);
  await page.getByRole('listbox').getByRole('option').filter({ hasText: name }).first().click();
  await expect(box).toHaveValue(new RegExp(name));
}
