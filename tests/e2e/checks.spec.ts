import { expect, test } from './fixtures';
import { openFormula } from './formula-steps';

test.use({ opening: 'demo' });

test('a finding is accepted with a reason that stays, and looked at again; a check switched off is silent, and says so', async ({
  page,
  stillroom,
}) => {
  const openDayCream = (): Promise<void> => openFormula(page, 'Hedgerow Day Cream');
  const finding = page.getByRole('heading', { name: /heat is the weak side/ });
  await openDayCream();
  await expect(finding).toBeVisible();
  await page.getByRole('button', { name: /^Accept: .*heat is the weak side/ }).click();
  await page.getByRole('button', { name: 'Accept the finding' }).click();
  await expect(page.getByRole('alert')).toHaveText('Say why this finding is acceptable.');
  await page.getByLabel('Why it is acceptable').fill('Held for twelve weeks at 40 °C.');
  await page.getByRole('button', { name: 'Accept the finding' }).click();
  const accepted = page.getByRole('region', { name: 'Accepted findings' });
  await expect(accepted).toContainText('Held for twelve weeks at 40 °C.');
  await expect(finding).toHaveCount(0);
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.reload();
  await expect(accepted).toContainText('Held for twelve weeks at 40 °C.');
  await accepted.getByRole('button', { name: /^Look at it again/ }).click();
  await expect(finding).toBeVisible();
  await expect(accepted).toHaveCount(0);

  await page.goto(`${stillroom.host.origin}/#/settings`);
  await page.getByRole('checkbox', { name: /^Climate: ionic and non-ionic together/ }).uncheck();
  await expect(
    page.getByText(/Switched off: no longer says when the emulsifiers are all ionic/),
  ).toBeVisible();
  await openDayCream();
  await expect(page.getByText(/Switched off in/)).toContainText('Climate: ionic and non-ionic together');
  await expect(finding).toHaveCount(0);
});

test('what checks, limits and exposure say is written as the region writes numbers', async ({
  page,
  stillroom,
}) => {
  await stillroom.host.send('PATCH', '/api/settings', { languageRegion: 'de-DE' });
  const { rows } = (await stillroom.host.get('/api/formulas?text=muddle')) as { rows: { id: string }[] };
  await page.goto(`${stillroom.host.origin}/#/formulas/${rows[0]?.id ?? ''}`);
  // The citations of sources are as they are printed.
  const said = page.getByRole('tabpanel').locator('h3, p:not(.faint), dd, td');
  for (const [tab, holds] of [
    ['Checks', '1,2712 % as Benzoic Acid'],
    ['Law', '1,2712 % as Benzoic Acid'],
    ['Exposure', '1,54 g per day'],
  ] as const) {
    await page.getByRole('tab', { name: tab }).click();
    await expect(said.filter({ hasText: holds }).first()).toBeVisible();
    const texts = await said.allInnerTexts();
    // A point stands between thousands only.
    expect(texts.filter((text) => /\d\.(?!\d{3}(?!\d))\d/.test(text))).toEqual([]);
    // No line is broken between a number and its unit.
    expect(texts.filter((text) => /\d (%|°C|mg|g|kg)(?![\p{L}\p{N}])/u.test(text))).toEqual([]);
  }
});
