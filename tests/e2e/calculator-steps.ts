import type { Locator, Page } from '@playwright/test';
import { expect } from './fixtures';

const ON_BENCH = ['hlb', 'hld', 'phase-inversion', 'viscosity', 'density'] as const;
const CALCULATORS = ['neutralise', 'preserve', 'solutions', 'screening'] as const;
export const TOOLS = [...ON_BENCH, ...CALCULATORS];

/** Opens a calculator by its address. */
export async function openTool(page: Page, tool: (typeof TOOLS)[number]): Promise<void> {
  const place = ON_BENCH.some((one) => one === tool) ? 'bench' : 'calculators';
  await page.goto(`${new URL(page.url()).origin}/#/${place}?tool=${tool}`);
  await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
}

/** Finds a material by typing and takes the first, by keyboard alone. */
export async function pick(page: Page, label: string, typed: string): Promise<void> {
  await page.getByRole('combobox', { name: label }).fill(typed);
  await expect(page.locator('li[role=option]').first()).toBeVisible();
  await page.keyboard.press('Enter');
}

/** The figure of a result, by its key. */
export const result = (page: Page, key: string): Locator =>
  page.locator(`[data-result=${key}] strong`).first();

/** Chooses one of a few ways by its name. */
export async function way(page: Page, name: string): Promise<void> {
  await page.getByRole('radio', { name, exact: true }).check();
}
