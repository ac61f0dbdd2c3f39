import { expect, test } from './fixtures';

// A number field takes what is kept, and refuses what is finer: nothing is rounded in silence.
test.use({ opening: 'demo' });

test('months are whole: 13.5 is refused at its field, and is not saved as 14', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.locator('[data-index="1"]').click();
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  const months = page.getByRole('textbox', { name: 'After opening' });
  await months.fill('12');
  await months.blur();
  await months.fill('13.5');
  await months.blur();
  await expect(page.getByRole('alert').filter({ hasText: 'A whole number' })).toContainText(
    '12 months counts',
  );
  await expect(months).toHaveValue('13.5');
  await months.fill('13');
  await expect(page.getByRole('alert').filter({ hasText: 'A whole number' })).toHaveCount(0);
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.reload();
  await expect(months).toHaveValue('13');
});

test('a long note is saved while it is typed, without leaving its field', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.locator('[data-index="1"]').click();
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  const notes = page.getByRole('textbox', { name: 'Notes', exact: true });
  await notes.pressSequentially(' Smells of hay.');
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.reload();
  await expect(notes).toHaveValue(/Smells of hay\./);
});

test('a balance reads to the milligram: 0.0005 g is refused, and not taken for 1 mg', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/settings`);
  const step = page.getByRole('textbox', { name: 'Balance readability' });
  await step.fill('0.0015');
  await step.blur();
  await expect(page.getByRole('alert').filter({ hasText: 'Three decimals at most' })).toBeVisible();
  await step.fill('0.0005');
  await step.blur();
  await expect(page.getByRole('alert').filter({ hasText: 'At least 0.001 g' })).toBeVisible();
  await step.fill('0.005');
  await step.blur();
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.reload();
  await expect(step).toHaveValue('0.005');
});
