import { expect, test } from './fixtures';

test.use({ opening: 'demo' });

test('what came of a batch is told, corrected, and found in the list', async ({ page }) => {
  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  const row = (number: string) => page.getByRole('row').filter({ hasText: number });
  await expect(row('B-001')).toContainText('3 Sept 2026');
  await row('B-003').getByRole('link', { name: 'B-003' }).click();
  await page.getByRole('button', { name: 'What came of it…' }).click();
  const dialog = page.getByRole('dialog', { name: 'What came of batch B-003' });
  await dialog.getByLabel('Finished on').fill('2026-09-12');
  await dialog.getByLabel('Bulk obtained').fill('4896');
  await dialog.getByLabel('Bulk obtained').blur();
  // 5 kg and 2 % more were weighed.
  await expect(dialog.getByText('96.0 % of 5.1 kg weighed')).toBeVisible();
  await dialog.getByRole('button', { name: 'Record the outcome' }).click();
  const finished = page.getByRole('region', { name: 'Finished' });
  await expect(finished).toContainText('12 Sept 2026, 4.896 kg, 96.0 % of what was weighed');

  await page.getByRole('button', { name: 'Correct the outcome…' }).click();
  await expect(dialog.getByLabel('Bulk obtained')).toHaveValue('4896');
  await dialog.getByLabel('Bulk obtained').fill('4845');
  await dialog.getByRole('button', { name: 'Record the outcome' }).click();
  await expect(finished).toContainText('95.0 %');
  await expect(finished).toContainText('Told 2 times; the last holds.');
  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  await expect(row('B-003')).toContainText('12 Sept 2026');
});
