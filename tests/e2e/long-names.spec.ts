import type { Page } from '@playwright/test';
import { blankMaterial } from '../../shared-core/materials/material';
import type { Formula } from '../../shared-core/formulas/formula';
import { expect, test } from './fixtures';
import type { HostProcess } from './host-process';
import { faultsOf } from './screens/laws';
import { settled } from './screens/settled';
import { WIDEST_AND_NARROWEST } from './screens/walk';

// A name of as many unbroken letters as a name may have, wherever it is shown: no screen is widened by it, nothing is cut
// without being told whole elsewhere, and nothing goes out of reach.

const LONG = 200;
const unbroken = (letter: string) => letter.repeat(LONG);

interface Named {
  id: string;
}

/** A shelf, a formula, its version and a batch of it, all with names as long as they may be. */
async function longRecords(host: HostProcess) {
  const materials: Named[] = [];
  for (const letter of ['W', 'm', 'x']) {
    const content = {
      ...blankMaterial(unbroken(letter), unbroken('C').slice(0, 150)),
      code: 'K'.repeat(40),
      notes: unbroken('n'),
    };
    materials.push((await host.post('/api/materials', content)) as Named);
  }
  const [first, second] = materials;
  const start = { name: unbroken('F'), productType: 'solution', use: 'leave-on' };
  const formula = (await host.post('/api/formulas', start)) as Formula;
  const [phase, ...others] = formula.phases;
  if (!phase || !first || !second) throw new Error('Nothing was made.');
  const line = (id: string, materialId: string, ppm: number, toHundred: boolean) => ({
    id,
    materialId,
    ppm,
    toHundred,
    note: '',
  });
  const lines = [
    line('01a2217e-5ea0-77aa-88c0-000000000001', first.id, 0, true),
    line('01a2217e-5ea0-77aa-88c0-000000000002', second.id, 50_000, false),
  ];
  const { revision, ...content } = formula;
  const phases = [{ ...phase, title: 'P'.repeat(80), lines }, ...others];
  await host.send('PUT', `/api/formulas/${formula.id}`, { revision, content: { ...content, phases } });
  const version = (await host.post(`/api/formulas/${formula.id}/versions`, {
    reason: unbroken('r'),
    recordedBy: unbroken('b').slice(0, 80),
  })) as Named;
  const batch = (await host.post('/api/batches', {
    formulaId: formula.id,
    versionId: version.id,
    size: { by: 'mass', massMg: 2_500_000 },
    overagePpm: 0,
    readabilityMg: 100,
    note: '',
  })) as Named;
  return {
    materials: materials.map(({ id }) => id),
    formula: formula.id,
    version: version.id,
    batch: batch.id,
  };
}

test.use({ opening: 'empty' });

test('a name of 200 unbroken letters widens no screen and hides nothing', async ({ page, stillroom }) => {
  test.setTimeout(10 * 60_000);
  const { host } = stillroom;
  const made = await longRecords(host);
  const compared = made.materials.map((id) => `id=${id}`).join('&');
  const screens: Record<string, string> = {
    today: '/',
    'the materials list': '/materials',
    'a material': `/materials/${made.materials[0]}`,
    'materials compared': `/compare?${compared}`,
    'the formulas list': '/formulas',
    'a formula': `/formulas/${made.formula}`,
    versions: `/formulas/${made.formula}/versions?view=${made.version}`,
    'formulas compared': `/formulas/compare?id=${made.formula}&id=${made.version}`,
    'the batches list': '/batches',
    'a batch': `/batches/${made.batch}`,
    'a batch being planned': `/batches?version=${made.version}`,
    'the bench': '/bench',
  };
  const faults: string[] = [];
  const look = async (where: string, page: Page, width: number) => {
    await settled(page);
    faults.push(...(await faultsOf(page)).map((fault) => `${where}, ${width} px: ${fault}`));
  };
  for (const window of WIDEST_AND_NARROWEST) {
    await page.setViewportSize(window);
    for (const [where, address] of Object.entries(screens)) {
      await page.goto(`${host.origin}/#${address}`);
      await look(where, page, window.width);
    }
    await page.goto(`${host.origin}/#/materials`);
    await page.keyboard.press('Control+k');
    await page.getByRole('combobox').last().fill('WWW');
    await page.getByRole('listbox').getByRole('option').first().waitFor();
    await look('the finder', page, window.width);
    await page.keyboard.press('Escape');
    for (const [where, address, name] of [
      ['the specification', `/materials/${made.materials[0]}`, 'Print'],
      ['the formula sheet', `/formulas/${made.formula}`, 'Formula sheet…'],
      ['the batch record', `/batches/${made.batch}`, /batch record/i],
      ['the comparison', `/compare?${compared}`, 'Print hand-out'],
    ] as const) {
      await page.goto(`${host.origin}/#${address}`);
      await settled(page);
      await page.getByRole('button', { name }).first().click();
      await page.getByRole('dialog').locator('canvas[data-drawn=yes]').first().waitFor();
      await look(where, page, window.width);
      await page.keyboard.press('Escape');
    }
  }
  expect(faults).toEqual([]);
});
