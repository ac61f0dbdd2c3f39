import { expect, expectNoAxeViolations, test } from './fixtures';
import { firstShare, openFormula, recordVersion } from './formula-steps';

test.use({ opening: 'demo' });

test('versions are listed and compared, become the draft again, and formulas of their own that can be compared', async ({
  page,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  const { material, field } = await firstShare(page);
  const before = await field.inputValue();
  await recordVersion(page, 'First trial');
  await expect(page.getByText('Version 1 is recorded.')).toBeInViewport();
  await field.fill('4.75');
  await field.blur();
  await page.getByRole('link', { name: 'Versions' }).click();
  await expect(page.getByRole('button', { name: /Version 1/ })).toContainText('First trial');
  const differences = page.getByRole('table', { name: 'Differences from Version 1 to Draft' });
  await expect(differences.getByRole('row', { name: new RegExp(material) })).toContainText('4.75');
  await expectNoAxeViolations(page);

  await page.getByRole('link', { name: 'Back to the draft' }).click();
  await recordVersion(page, 'Second trial');
  await expect(page.getByText('Version 2 is recorded.')).toBeInViewport();
  await page.getByRole('link', { name: 'Versions' }).click();
  await expect(page.getByRole('table', { name: 'Differences from Version 1 to Version 2' })).toContainText(
    '4.75',
  );
  await page.getByRole('button', { name: /Version 1/ }).click();
  await page.getByRole('button', { name: 'New draft from it…' }).click();
  await page.getByRole('button', { name: 'Start from version 1' }).click();
  await expect(field).toHaveValue(before);
  await page.getByRole('link', { name: 'Versions' }).click();
  await page.getByRole('button', { name: 'Copy as a new formula' }).click();
  await expect(page.getByRole('heading', { name: 'Hedgerow Day Cream (from version 2)' })).toBeVisible();

  await page.getByRole('link', { name: 'Formulas', exact: true }).click();
  await page.getByRole('checkbox', { name: 'Pick Hedgerow Day Cream', exact: true }).check();
  await page.getByRole('checkbox', { name: 'Pick Hedgerow Day Cream (from version 2)' }).check();
  await page.getByRole('link', { name: 'Compare side by side' }).click();
  await page.getByLabel('Only where they differ').check();
  await expect(page.getByRole('row', { name: new RegExp(`^${material}`) })).toContainText('4.75');
  await expectNoAxeViolations(page);
});
