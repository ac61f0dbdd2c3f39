import { expect, test } from './fixtures';

test.use({ opening: 'demo' });

test('a finding is accepted with a reason that stays, and looked at again; a check switched off is silent, and says so', async ({
  page,
  stillroom,
}) => {
  const openDayCream = async (): Promise<void> => {
    await page.goto(`${stillroom.host.origin}/#/formulas`);
    await page.getByRole('link', { name: 'Hedgerow Day Cream', exact: true }).click();
  };
  const finding = page.getByRole('heading', { name: /heat is the weak side/ });
  await openDayCream();
  await expect(finding).toBeVisible();
  await page.getByRole('button', { name: /^Accept: .*heat is the weak side/ }).click();
  await page.getByRole('button', { name: 'Accept the finding' }).click();
  await expect(page.getByRole('alert')).toHaveText('Write why this finding may stand.');
  await page.getByLabel('Why it may stand').fill('Held for twelve weeks at 40 °C.');
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
