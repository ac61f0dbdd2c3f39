import { expect, expectNoAxeViolations, test } from './fixtures';
import { openFormula, recordVersion } from './formula-steps';

test.use({ opening: 'demo' });

test('what came of a batch is told, corrected, and found in the list', async ({ page }) => {
  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  const row = (number: string) => page.getByRole('row').filter({ hasText: number });
  await expect(row('B-001')).toContainText('3 Sept 2026');
  await row('B-003').getByRole('link', { name: 'B-003' }).click();
  await page.getByRole('button', { name: 'Record the outcome…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Outcome of batch B-003' });
  await expect(dialog.getByLabel('Finished on')).toBeFocused();
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
  await expect(finished).toContainText('Recorded 2 times; the last one counts.');
  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  await expect(row('B-003')).toContainText('12 Sept 2026');
});

test('photos and certificates of a batch are added, shown in place, dated, removed and put back', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  await page.getByRole('row').filter({ hasText: 'B-003' }).getByRole('link', { name: 'B-003' }).click();
  const own = page.getByRole('region', { name: 'Photos and documents' });
  const dialog = page.getByRole('dialog');
  const add = async (name: string, mimeType: string, buffer: Buffer): Promise<void> => {
    await own.getByLabel(/^Add a photo/).setInputFiles({ name, mimeType, buffer });
  };
  await add('In the beaker.png', 'image/png', await page.screenshot());
  await expect(dialog.getByLabel('Title')).toHaveValue('In the beaker');
  await expect(dialog.getByLabel('Title')).toBeFocused();
  await expect(dialog.getByLabel('Kind')).toHaveValue('photo');
  await expectNoAxeViolations(page);
  await dialog.getByRole('button', { name: 'Add to the batch' }).click();
  const photo = own.getByRole('img', { name: 'In the beaker: the picture' });
  await expect(photo).toBeVisible();
  await expect.poll(() => photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);

  await add('Certificate.pdf', 'application/pdf', Buffer.from('%PDF-1.4\n1 0 obj<<>>endobj\n%%EOF\n'));
  await dialog.getByLabel('Kind').selectOption('Photo');
  await dialog.getByRole('button', { name: 'Add to the batch' }).click();
  await expect(dialog.getByText('A photo must be a picture.')).toBeVisible();
  await dialog.getByLabel('Kind').selectOption('Certificate of analysis');
  await dialog.getByLabel('Its date').fill('2026-09-12');
  await dialog.getByLabel('Valid until').fill('2026-09-11');
  await dialog.getByRole('button', { name: 'Add to the batch' }).click();
  await expect(dialog.getByText('A document cannot be valid until a day before its own date.')).toBeVisible();
  await dialog.getByLabel('Valid until').fill('2026-09-13');
  await dialog.getByRole('button', { name: 'Add to the batch' }).click();
  const paper = own.getByRole('listitem').filter({ hasText: 'Certificate' });
  await expect(paper).toContainText('certificate of analysis, 12 Sept 2026, valid until 13 Sept 2026');
  await expect(paper).toContainText('expired');

  await paper.getByRole('button', { name: 'Change what is said of Certificate' }).click();
  await dialog.getByLabel('Title').fill('Certificate, signed');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(paper).toContainText('Certificate, signed');
  // The reminder leads here.
  await page.getByRole('link', { name: 'Today', exact: true }).click();
  await page.getByRole('link', { name: 'Batch B-003: Certificate, signed' }).click();
  await own.getByRole('button', { name: 'Remove Certificate, signed' }).click();
  await expect(paper).toHaveCount(0);
  await own.getByRole('button', { name: 'Put it back' }).click();
  await expect(paper).toHaveCount(1);
  await expectNoAxeViolations(page);
});

test('a material withdrawn since is said wherever an old version is about to be made, and offered nowhere', async ({
  page,
  stillroom,
}) => {
  await openFormula(page, 'Hedgerow Day Cream');
  await recordVersion(page, 'Before the recall');
  const found = (await stillroom.host.get('/api/materials?text=Larderly+Phenoxy+Blend')) as {
    rows: { id: string; tradeName: string }[];
  };
  const blend = found.rows.find(({ tradeName }) => tradeName === 'Larderly Phenoxy Blend')?.id ?? '';
  await page.goto(`${stillroom.host.origin}/#/materials/${blend}`);
  const pane = page.getByRole('complementary', { name: 'Material' });
  await pane.getByRole('button', { name: 'Edit', exact: true }).click();
  await pane.getByLabel('Withdrawn from').fill('2026-11-01');
  await pane.getByLabel('Why it is withdrawn').fill('Recalled, invented');
  await pane.getByLabel('Why it is withdrawn').blur();
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.getByLabel('Search materials').fill('Larderly Phenoxy Blend');
  await expect(page.getByRole('row').filter({ hasText: 'Larderly Phenoxy Blend' })).toContainText(
    'withdrawn',
  );

  await page.getByRole('link', { name: 'Batches', exact: true }).click();
  await page.getByRole('button', { name: /^Plan a batch/ }).click();
  await page.getByRole('combobox', { name: 'Formula' }).fill('Hedgerow');
  await page.getByRole('option', { name: /Hedgerow Day Cream/ }).click();
  const said = page.getByText(
    'Larderly Phenoxy Blend is withdrawn from 1 Nov 2026: Recalled, invented. Do not use it.',
  );
  await expect(said).toBeVisible();
  await page.getByLabel('Batch mass').fill('1');
  await page.getByRole('button', { name: 'Make batch' }).click();
  await expect(page.getByRole('heading', { name: 'Batch B-004' })).toBeVisible();
  await expect(said).toBeVisible();

  await openFormula(page, 'Meadow Body Milk');
  const box = page.getByRole('combobox', { name: 'Add a material to phase A' });
  await box.fill('Larderly Phenoxy Blend');
  await expect(page.getByRole('option', { name: /^Larderly Phenoxy Blend/ })).toContainText(
    'Withdrawn from 1 Nov 2026. Phenoxyethanol',
  );
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox', { name: 'Find anything' }).fill('Larderly Phenoxy Blend');
  await expect(
    page.getByRole('dialog').getByRole('option', { name: /^Larderly Phenoxy Blend/ }),
  ).toContainText('withdrawn');
  await page.keyboard.press('Escape');
  const used = (await stillroom.host.get('/api/materials?text=Larderly+Benzoate')) as typeof found;
  const benzoate = used.rows.find(({ tradeName }) => tradeName === 'Larderly Benzoate')?.id ?? '';
  await page.goto(`${stillroom.host.origin}/#/swap?material=${benzoate}`);
  await expect(page.getByRole('radio', { name: 'Take Larderly Phenoxy', exact: true })).toBeVisible();
  await expect(page.getByRole('radio', { name: 'Take Larderly Phenoxy Blend' })).toHaveCount(0);
});
