import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures';

// How many actions a first day takes: a press of the mouse or of a key, a text typed into a field or pasted, a choice
// from a list. What the product does by itself counts as none.

class Hand {
  count = 0;
  constructor(private readonly page: Page) {}

  async click(what: Locator): Promise<void> {
    this.count += 1;
    await what.click();
  }
  async type(into: Locator, text: string): Promise<void> {
    this.count += 1;
    await into.fill(text);
  }
  async press(key: string): Promise<void> {
    this.count += 1;
    await this.page.keyboard.press(key);
  }
  async choose(from: Locator, word: string): Promise<void> {
    this.count += 1;
    await from.selectOption(word);
  }
  async paste(into: Locator, text: string): Promise<void> {
    this.count += 1;
    await into.evaluate((element, pasted) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', pasted);
      element.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
    }, text);
  }
  /** Opens a sheet, sees its first page, and leaves it. */
  async sheet(opening: Locator): Promise<void> {
    await this.click(opening);
    await expect(this.page.getByRole('dialog').locator('canvas[data-drawn=yes]').first()).toBeVisible({
      timeout: 120_000,
    });
    await this.press('Escape');
    await expect(this.page.getByRole('dialog')).toBeHidden();
  }
}

test.slow();

test('a first material with charge, HLB and price takes at most 15 actions', async ({ page }) => {
  const hand = new Hand(page);
  await hand.click(page.getByRole('link', { name: 'Raw materials' }).first());
  await hand.click(page.getByRole('button', { name: 'Add the first material' }));
  await hand.type(page.getByLabel('Trade name'), 'Test Wax Q');
  await hand.type(page.getByLabel('INCI name'), 'Glyceryl Stearate');
  await hand.press('Enter');
  const pane = page.getByRole('complementary', { name: 'Material' });
  await hand.choose(pane.getByLabel('Charge', { exact: true }), 'non-ionic');
  await hand.choose(pane.getByLabel('Add a figure'), 'hlb');
  await hand.type(pane.getByRole('group', { name: 'HLB', exact: true }).getByLabel('Value'), '3.8');
  const offers = page.getByRole('region', { name: 'Suppliers and prices' });
  await hand.click(offers.getByRole('button', { name: 'Add a supplier or price…' }));
  await hand.type(offers.getByLabel('Supplier', { exact: true }), 'Fernmill Supplies');
  await hand.type(offers.getByLabel('Pack', { exact: true }), '5');
  await hand.type(offers.getByLabel('Price of the pack'), '64');
  await hand.click(offers.getByRole('button', { name: 'Add supplier' }));
  await expect(offers.getByText('Fernmill Supplies')).toBeVisible();
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  expect(hand.count).toBeLessThanOrEqual(15);
});

const CREAM = [
  'Phase\tMaterial\tINCI\t% w/w',
  'A\tSpring water\tAqua\tq.s.',
  'A\tSoft glycerin\tGlycerin\t4',
  'B\tWax One\tGlyceryl Stearate\t2.5',
  'B\tWax Two\tCeteareth-20\t2',
  'B\tSeed oil\tHelianthus Annuus Seed Oil\t12',
  'C\tKeeper\tPhenoxyethanol\t1',
].join('\n');

test('from an empty library to all sheets of a first cream takes at most 90 actions', async ({ page }) => {
  const hand = new Hand(page);
  await hand.click(page.getByRole('link', { name: 'Formulas', exact: true }));
  await hand.click(page.getByRole('button', { name: 'New formula' }));
  await hand.type(page.getByRole('dialog').getByLabel('Name'), 'First cream');
  await hand.press('Enter');
  await hand.paste(page.getByRole('combobox', { name: 'Add a material to phase A' }), CREAM);
  await hand.click(page.getByRole('button', { name: 'Add 6 lines, make 6 materials' }));
  await expect(page.locator('[data-line]')).toHaveCount(6);
  for (const step of ['Heat A and B to 75 °C', 'Pour B into A and homogenise', 'Cool to 40 °C and add C']) {
    await hand.click(page.getByRole('button', { name: 'Add step' }));
    await hand.type(page.getByLabel('Instruction').last(), step);
  }
  await hand.sheet(page.getByRole('button', { name: 'Formula sheet…' }));
  await hand.click(page.getByRole('tab', { name: 'Label' }));
  await hand.sheet(page.getByRole('button', { name: 'Print…' }));
  await hand.click(page.getByRole('tab', { name: 'Exposure' }));
  await hand.sheet(page.getByRole('button', { name: 'Print with natural origin…' }));
  await hand.click(page.getByRole('button', { name: 'Record version…' }));
  await hand.type(page.getByRole('dialog').getByLabel('Why this version'), 'First trial');
  await hand.press('Enter');
  await hand.click(page.getByRole('link', { name: 'Versions' }));
  await hand.click(page.getByRole('button', { name: 'Product file…' }));
  // Its sheet lies over the dialog that it was opened from.
  await hand.click(page.getByRole('button', { name: 'Show as one document' }));
  await expect(page.locator('canvas[data-drawn=yes]').first()).toBeVisible({ timeout: 120_000 });
  for (const left of [1, 0]) {
    await hand.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(left);
  }
  await hand.click(page.getByRole('link', { name: 'Make a batch of this version' }));
  await hand.type(page.getByLabel('Batch mass'), '1');
  await hand.click(page.getByRole('button', { name: 'Make batch' }));
  await hand.sheet(page.getByRole('button', { name: 'Batch record…' }));
  await hand.click(page.getByRole('link', { name: 'Raw materials' }).first());
  const materials = ['Spring water', 'Soft glycerin', 'Wax One', 'Wax Two', 'Seed oil', 'Keeper'];
  for (const name of materials) {
    await hand.click(page.getByRole('row').filter({ hasText: name }).first());
    await expect(page.getByRole('heading', { name })).toBeVisible();
    await hand.sheet(page.getByRole('button', { name: 'Print', exact: true }));
  }
  expect(hand.count).toBeLessThanOrEqual(90);
});
