import { expect, expectNoAxeViolations, test } from './fixtures';

const SCREENS = [
  ['Today', '/'],
  ['Raw materials', '/materials'],
  ['Formulas', '/formulas'],
  ['Batches', '/batches'],
  ['Emulsion bench', '/bench'],
  ['Settings', '/settings'],
  ['Library', '/library'],
  ['Side by side, nothing picked', '/compare'],
] as const;

for (const opening of ['empty', 'demo'] as const) {
  test.describe(`${opening} library`, () => {
    test.use({ opening });

    for (const colorScheme of ['light', 'dark'] as const) {
      test(`axe finds nothing on any screen, ${colorScheme}`, async ({ page }) => {
        await page.emulateMedia({ colorScheme });
        for (const [name, path] of SCREENS) {
          await test.step(name, async () => {
            await page.goto(`${new URL(page.url()).origin}/#${path}`);
            await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
            await page.waitForLoadState('networkidle');
            await expectNoAxeViolations(page);
          });
        }
      });
    }
  });
}

test.describe('open details', () => {
  test.use({ opening: 'demo' });

  for (const colorScheme of ['light', 'dark'] as const) {
    test(`axe finds nothing in a material, the palette and the adding dialog, ${colorScheme}`, async ({
      page,
    }) => {
      await page.emulateMedia({ colorScheme });
      await page.goto(`${new URL(page.url()).origin}/#/materials`);
      await page.locator('[role=row][data-index="3"]').click();
      await expect(
        page.getByRole('complementary', { name: 'Material' }).getByRole('heading', { level: 2 }),
      ).toBeVisible();
      await expectNoAxeViolations(page);
      await page.keyboard.press('Control+k');
      await expect(page.getByRole('listbox').getByRole('option').first()).toBeVisible();
      await expectNoAxeViolations(page);
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Add material' }).click();
      await expectNoAxeViolations(page);
    });
  }
});
