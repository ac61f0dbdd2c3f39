import type { Limit } from '../../shared-core/limits/limit';
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
  await page.getByRole('checkbox', { name: 'Select Hedgerow Day Cream', exact: true }).check();
  await page.getByRole('checkbox', { name: 'Select Hedgerow Day Cream (from version 2)' }).check();
  await page.getByRole('link', { name: 'Compare side by side' }).click();
  await page.getByLabel('Only where they differ').check();
  await expect(page.getByRole('row', { name: new RegExp(`^${material}`) })).toContainText('4.75');
  await expectNoAxeViolations(page);
});

test('a limit edited after a version was recorded is named on its page, and judges its day as it stood then', async ({
  page,
  stillroom: { host },
}) => {
  await openFormula(page, 'Brook Gel-Cream');
  await recordVersion(page, 'As it went to the first customers');
  await page.getByRole('link', { name: 'Versions' }).click();
  await expect(
    page.getByText('No limit of this library was broken on its day, and none is today.'),
  ).toBeVisible();

  const { limits } = (await host.get('/api/law')) as { limits: Limit[] };
  const limit = limits.find(
    ({ subject, regions }) => subject === 'Phenoxyethanol' && regions.includes('EU'),
  )!;
  const { id, revision, createdAt: _came, updatedAt: _at, ...content } = limit;
  await host.send('PUT', `/api/limits/${id}`, { revision, content: { ...content, percent: 0.5 } });

  const law = page.getByRole('region', { name: /^By the law of its day/ });
  await expect(law.getByText('Changed in the tables of law since it was recorded (1)')).toBeVisible();
  await expect(law.getByRole('listitem').filter({ hasText: 'Phenoxyethanol, limit, changed' })).toContainText(
    /Limit: 1\s% of the product\s*0.5/,
  );
  await expect(law.getByRole('heading', { name: 'Broken today, and not on its day' })).toBeVisible();
  await expect(law).toContainText('Changed in the table since.');
  await law.getByText(/Found today, and not on its day/).click();
  await expectNoAxeViolations(page);
});
