import type { Locator, Page } from '@playwright/test';
import { openTool, pick, result, way } from './calculator-steps';
import { expect, test } from './fixtures';

test.use({ opening: 'demo' });

const method = (page: Page, key: string): Locator => page.locator(`[data-method=${key}]`);
async function pickChain(page: Page, chain: string, head: string, units?: string): Promise<void> {
  await page.getByLabel('Fatty chain').selectOption(chain);
  await page.getByLabel('Head', { exact: true }).selectOption(head);
  if (units) await page.getByLabel('Oxyethylene units').fill(units);
}

test('HLB of picked molecules agrees with published ones, and each method says why it gives none', async ({
  page,
}) => {
  await openTool(page, 'hlb');
  // Oleth-20 15.3, steareth-2 4.9: a supplier's reference guide to HLB values (stored reference cases).
  await pickChain(page, 'c18-1', 'peg-ether', '20');
  await expect(method(page, 'ethoxylate')).toHaveText('15.3');
  await pickChain(page, 'c18', 'peg-ether', '2');
  await expect(method(page, 'mass')).toHaveText('4.9');
  // Sodium lauryl sulfate 40: Davies 1957 (from memory). Griffin's methods stand aside for an anionic.
  await pickChain(page, 'c12', 'sulfate-na');
  await expect(method(page, 'davies')).toHaveText('40.0');
  await expect(method(page, 'ethoxylate')).toHaveText('none');
  await expect(page.getByText('Griffin’s methods describe non-ionics only.').first()).toBeVisible();
  await pickChain(page, 'c16', 'trimethyl-ammonium');
  await expect(method(page, 'davies')).toHaveText('none');
  await expect(page.getByText(/quaternary ammonium/).first()).toBeVisible();
});

test('groups found in a structure can be corrected, and the groups counted by hand', async ({ page }) => {
  await openTool(page, 'hlb');
  // Glyceryl stearate 3.7, by Davies: 1 ester, 2 hydroxyls, 20 carbons (Davies 1957, from memory).
  await pickChain(page, 'c18', 'glyceryl');
  await expect(method(page, 'davies')).toHaveText('3.7');
  await page.getByLabel('Count of -OH, free').fill('1');
  await expect(method(page, 'davies')).toHaveText('1.8');
  await page.getByRole('button', { name: 'Back to the groups found' }).click();
  await expect(method(page, 'davies')).toHaveText('3.7');
  await way(page, 'Groups');
  await expect(page.getByText('No group is counted yet.')).toBeVisible();
  await page.getByLabel('Count of ester, free').fill('1');
  await page.getByLabel('Count of -OH, free').fill('2');
  await page.getByLabel('Count of -CH- , -CH2- , CH3- , =CH-').fill('20');
  await expect(method(page, 'davies')).toHaveText('3.7');
});

test('a SMILES is read in the browser; one that is none, a mixture, or 500 atoms long says what to do', async ({
  page,
}) => {
  await openTool(page, 'hlb');
  await way(page, 'SMILES');
  const field = page.getByRole('textbox', { name: 'SMILES' });
  const says = page.getByRole('alert');
  for (const [smiles, message] of [
    ['CCC(', 'its brackets do not pair'],
    ['notamolecule', 'cannot be read'],
    ['CCCCCCCCCCCCO.CCCCCCCCCCCCCCCCO', /mixture/],
    ['C'.repeat(500), '500 heavy atoms; 400 are the most'],
  ] as const) {
    await field.fill(smiles);
    await field.blur();
    await expect(says.filter({ hasText: message })).toBeVisible();
    await expect(field).toHaveValue(smiles);
    await expect(page.locator('[data-method]')).toHaveCount(0);
    await expect(page.getByText('NaN')).toHaveCount(0);
  }
  // Sorbitan laurate, 8.5 by Davies' groups (Davies 1957, from memory).
  await field.fill('CCCCCCCCCCCC(=O)OCC(O)C1OCC(O)C1O');
  await field.blur();
  await expect(says).toHaveCount(0);
  await expect(method(page, 'davies')).toHaveText('8.5');
});

test('figures off a data sheet give the methods that they suffice for', async ({ page }) => {
  await openTool(page, 'hlb');
  await way(page, 'Figures');
  // Griffin 1954's own example: S 161, A 198 give 3.7 (from memory).
  await page.getByLabel('Saponification value').fill('161');
  await page.getByLabel('Acid value of the fatty acid').fill('198');
  await expect(method(page, 'ester')).toHaveText('3.7');
  await page.getByLabel('Saponification value').fill('220');
  await expect(page.getByText('saponification value (220) is above')).toBeVisible();
  await page.getByLabel('Oxyethylene').fill('140');
  await page.getByLabel('Oxyethylene').blur();
  await expect(page.getByRole('alert').filter({ hasText: 'At most 100 %' })).toBeVisible();
});

test('a computed HLB is saved to a material with its source, and taken back', async ({ page }) => {
  await openTool(page, 'hlb');
  await pickChain(page, 'c18', 'peg-ether', '20');
  await pick(page, 'Compare with the HLB recorded of', 'steareth');
  await expect(method(page, 'known')).toHaveText(/\d/);
  const before = await method(page, 'known').innerText();
  await page.getByRole('button', { name: 'Save to material…' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('It replaces')).toBeVisible();
  await dialog.getByLabel('Figure').selectOption('davies');
  await dialog.getByRole('button', { name: 'Save to material' }).click();
  await expect(dialog.getByText('is saved to')).toBeVisible();
  await expect(method(page, 'known')).toHaveText('7.0');
  await expect(
    page.getByText(/Davies, groups; C18 stearic, stearyl, PEG-n ether.*\(computed\)/),
  ).toBeVisible();
  await dialog.getByRole('button', { name: 'Undo' }).click();
  await expect(dialog.getByText('the material is as it was')).toBeVisible();
  await expect(method(page, 'known')).toHaveText(before);
});

test('HLD of C10E4 and an oil of EACN 8 is zero near 25 °C; unknown EACNs are named', async ({ page }) => {
  await openTool(page, 'hld');
  await page.getByRole('button', { name: 'Type EACN' }).click();
  await page.getByLabel('EACN of oil 1').fill('8');
  await page.getByRole('button', { name: 'Type Cc' }).click();
  await page.getByLabel('Cc of surfactant 1').fill('1,2');
  await expect(page.getByText('K is not entered yet.')).toBeVisible();
  await page.getByLabel('Published K').selectOption('ethoxylated non-ionics');
  await page.getByLabel('Published b').selectOption({ index: 1 });
  await page.getByLabel('Published cT').selectOption({ index: 1 });
  // Marquez R., A Course on HLD/HLDN, module 2: C10E4 inverts with an oil of PACN 8.
  await expect(result(page, 'hld')).toHaveText('0.00');
  await expect(result(page, 'zero')).toHaveText('25.0');
  await expect(page.getByText('HLD passes zero at 25 °C')).toBeVisible();
  await expect(page.getByRole('img', { name: /HLD runs from/ })).toBeVisible();
  await pick(page, 'Add an oil from the library', 'petrolatum');
  await expect(page.getByText(/covers 50\s%; no value known for .*Petrolatum/)).toBeVisible();
  await page.getByLabel('Stored from').fill('50');
  await expect(page.getByRole('alert').filter({ hasText: 'Swap the two temperatures' })).toBeVisible();
});

test('the base for stearic acid is computed from the library, with the caution of the caustic', async ({
  page,
}) => {
  await openTool(page, 'neutralise');
  await pick(page, 'Acid from the library', 'stearic acid');
  await expect(page.getByLabel('Acid value', { exact: true }).last()).toHaveValue('206');
  await pick(page, 'Base from the library', 'limewhin soda 10');
  await page.getByLabel('Level of the acid').fill('2');
  await page.getByLabel('Share to neutralise').fill('50');
  await page.getByLabel('Batch').fill('1000');
  // By the definition of the acid value: 2 × 206 / 56106 × 39.997 × 0.5 / 0.10 = 1.4685 %.
  await expect(result(page, 'percent')).toHaveText('1.469');
  await expect(result(page, 'mass')).toHaveText('14.685');
  await expect(
    page
      .locator('p.caution')
      .filter({ hasText: /Caustic, burns eyes and skin.*never water to it.*Never in aluminium/ }),
  ).toBeVisible();
  await page.reload();
  await expect(result(page, 'percent')).toHaveText('1.469');
  await page.getByRole('button', { name: 'Clear' }).click();
  await expect(page.getByText('Level of the acid is not entered yet.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo Clear' }).click();
  await expect(result(page, 'percent')).toHaveText('1.469');
});

test('a strength is asked for or taken from the library with its range, and a usual share is proposed', async ({
  page,
}) => {
  await openTool(page, 'neutralise');
  await page.getByLabel('From the list of bases').selectOption('Potassium Hydroxide');
  await expect(page.getByText(/flakes of 88 to 91\s%.*enter the strength of yours/)).toBeVisible();
  await pick(page, 'Acid from the library', 'stearic acid');
  await page.getByLabel('Level of the acid').fill('10');
  await page.getByLabel('Usual share for').selectOption('vanishing cream');
  await expect(page.getByLabel('Share to neutralise')).toHaveValue('20');
  await expect(page.getByText('Strength of the base is not entered yet.')).toBeVisible();
  await pick(page, 'Base from the library', 'potash flakes');
  await expect(page.getByLabel('Strength of the base')).toHaveValue('89.5');
  // 10 × 206 / 56106 × 0.2 × 56.105 / 0.895 = 0.4603; / 0.91 = 0.453, / 0.88 = 0.468.
  await expect(result(page, 'percent')).toHaveText('0.460');
  await expect(page.getByText(/0\.453 to 0\.468\s% over its strengths/)).toBeVisible();
});

test('lactic acid to a pH takes the base of the charge balance, and none below its own pH', async ({
  page,
}) => {
  await openTool(page, 'neutralise');
  await page.getByLabel('From the list of acids').selectOption('Lactic Acid');
  await page.getByLabel('From the list of bases').selectOption('Sodium Hydroxide');
  await page.getByLabel('Level of the acid').fill('0.5');
  await page.getByLabel('Acid in what is weighed').fill('100');
  await page.getByLabel('Strength of the base').fill('100');
  await way(page, 'To a pH');
  await page.getByLabel('pH to reach').fill('3');
  // 0.05551 × 0.12131 − 0.001 mol/L of sodium, by hand.
  await expect(result(page, 'percent')).toHaveText('0.023');
  await expect(result(page, 'alone')).toHaveText('2.57');
  await page.getByLabel('pH to reach').fill('2.4');
  await expect(page.getByRole('alert').filter({ hasText: 'The acid alone is at pH 2.57' })).toBeVisible();
});

test('oils off the list and out of the library make a viscosity with its spread, and a formula its density', async ({
  page,
}) => {
  await openTool(page, 'viscosity');
  const oils = page.getByRole('region', { name: 'Viscosity of an oil mixture' });
  const published = oils.getByLabel('Add a published viscosity');
  await published.selectOption({
    label:
      'Isopropyl Myristate, 6 mPa·s at 20 °C (common practice, no source: rough figures of suppliers; not verified)',
  });
  await published.selectOption({ index: 1 });
  await oils.getByLabel('Parts of oil 1').fill('50');
  await oils.getByLabel('Parts of oil 2').fill('50');
  // √(6 × 986) = 76.9; ((∛6 + ∛986) / 2)³ = 203.8, by hand.
  await expect(oils.locator('[data-result=log] strong').first()).toHaveText('76.9');
  await expect(oils.locator('[data-result=cube] strong').first()).toHaveText('203.8');
  await expect(oils.getByText(/The rules leave 76\.9 to 203\.8/)).toBeVisible();
  await oils.getByRole('button', { name: 'Remove oil 2' }).click();
  await expect(oils.locator('[data-result=log] strong').first()).toHaveText('6.0');
  await openTool(page, 'density');
  const density = page.getByRole('region', { name: 'Density of a formula' });
  await density.getByLabel('Take the lines of a formula').fill('day');
  await expect(page.getByRole('option').first()).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(density.getByLabel('Parts of part 1', { exact: true })).toHaveValue(/\d/);
  await page.reload();
  await expect(density.getByLabel('Parts of part 1', { exact: true })).toHaveValue(/\d/);
});

test('a buffer by its salts has the pH of the table, and addresses from before still lead here', async ({
  page,
}) => {
  await page.goto(`${new URL(page.url()).origin}/#/bench?tool=screening`);
  await expect(page).toHaveURL(/calculators\?tool=screening/);
  await openTool(page, 'solutions');
  const pH = page.getByRole('region', { name: 'pH of acids, bases and their salts' });
  await pH.getByLabel('Add from the list').selectOption({ index: 1 });
  await pH.getByLabel('In all of acid or base 1').fill('0.1');
  await pH.getByLabel('Strong base').fill('0.049');
  // Pearse's acetate table: 102 mL of acid with 98 mL of salt, pH 4.6.
  await expect(pH.locator('[data-result=pH] strong').first()).toHaveText(/4\.6\d/);
  await expect(pH.getByText(/without activities/)).toBeVisible();
  await pH.getByRole('button', { name: /Print working/ }).click();
  await expect(page.getByRole('dialog').locator('canvas').first()).toBeVisible({ timeout: 120_000 });
});

test('preserving acids agree with Steinberg 2005, with the spread of pKas and the caution', async ({
  page,
}) => {
  await openTool(page, 'preserve');
  await page.getByLabel('Acid', { exact: true }).selectOption('Sorbic Acid');
  await page.getByLabel('pH of the product').fill('4');
  // 85 % at pH 4: Steinberg D.C., J. Cosmet. Sci. 56, 361-362 (2005), who prints whole per cents.
  await expect(result(page, 'share')).toHaveText('85.2');
  await page.getByLabel('Acid', { exact: true }).selectOption('Benzoic Acid');
  await expect(page.getByText(/60\.2 to 61\.5 over the published pKas/)).toBeVisible();
  await page.getByLabel('Dose, as weighed').fill('0,5');
  await page.getByLabel('Dosed as').selectOption('sodium salt');
  await expect(result(page, 'dose')).toHaveText('0.424');
  await expect(page.getByText('Not proof of preservation: a challenge test, a qualified')).toBeVisible();
});

test('separation and ageing screen with printed examples, and say that they do not prove', async ({
  page,
}) => {
  await openTool(page, 'screening');
  await expect(page.getByText('These screen, they do not prove')).toBeVisible();
  // Sinko, Martin's Physical Pharmacy, 5th ed. 2006 (from memory): 4.1e-8 m/s.
  const creaming = page.getByRole('region', { name: 'Creaming speed (Stokes)' });
  await creaming.getByLabel('Droplet radius').fill('2.5');
  await creaming.getByLabel('Density of the droplet').fill('0.85');
  await creaming.getByLabel('Density of the medium').fill('1');
  await creaming.getByLabel('Viscosity of the medium').fill('50');
  await expect(creaming.locator('[data-result=speed] strong').first()).toHaveText('4.0861 × 10⁻⁸');
  await expect(creaming.getByText('rises (creams)')).toBeVisible();
  // ASTM F1980 illustration (from memory): 365 days at 22 °C are 37 days at 55 °C with Q10 2.
  const ageing = page.getByRole('region', { name: 'Accelerated ageing (Q10)' });
  await ageing.getByLabel('Shelf temperature').fill('22');
  await ageing.getByLabel('Test temperature').fill('55');
  await ageing.getByRole('textbox', { name: 'Q10' }).fill('2');
  await ageing.getByLabel('Time on the shelf').fill('365');
  await expect(ageing.locator('[data-result=weeks] strong').first()).toHaveText('37.1');
  const suspension = page.getByRole('region', { name: /Viscosity of a suspension/ });
  await suspension.getByLabel('Volume fraction').fill('0.7');
  await suspension.getByLabel('Closest packing').fill('0.64');
  await suspension.getByLabel('Intrinsic viscosity').fill('2.5');
  await suspension.getByLabel('Viscosity of the medium').fill('1');
  await expect(suspension.getByRole('alert')).toContainText('the droplets are packed');
});

test('the working prints as a hand-out that the service computes anew', async ({ page }) => {
  await openTool(page, 'hlb');
  await pickChain(page, 'c18-1', 'peg-ether', '20');
  await page.getByRole('button', { name: 'Print working' }).click();
  const dialog = page.getByRole('dialog', { name: 'Working' });
  await expect(dialog.locator('canvas').first()).toBeVisible({ timeout: 120_000 });
  const coming = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save PDF' }).click();
  expect((await coming).suggestedFilename()).toBe('working-hlb-of-an-emulsifier.pdf');
  await page.keyboard.press('Escape');
  await openTool(page, 'density');
  const fill = page.getByRole('region', { name: 'Fill by volume' });
  await fill.getByRole('textbox', { name: 'Volume' }).fill('50');
  await fill.getByLabel('Density').fill('0,95');
  await fill.getByRole('button', { name: /Print working/ }).click();
  await expect(page.getByRole('dialog').locator('canvas').first()).toBeVisible({ timeout: 120_000 });
});
