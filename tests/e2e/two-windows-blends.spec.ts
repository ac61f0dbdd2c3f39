import { blankMaterial } from '../../shared-core/materials/material';
import type { Formula } from '../../shared-core/formulas/formula';
import type { Material } from '../../shared-core/materials/material';
import { expect, test, watchErrors } from './fixtures';
import { openFormula } from './formula-steps';
import type { HostProcess } from './host-process';

test.use({ opening: 'demo' });

type Parts = [name: string, percent: number][];
const composition = (parts: Parts) =>
  parts.map(([inci, percent]) => ({ inci, lowPpm: percent * 10_000, highPpm: percent * 10_000 }));

async function add(host: HostProcess, name: string, parts: Parts): Promise<Material> {
  const made = { ...blankMaterial(name, ''), composition: composition(parts) };
  return (await host.post('/api/materials', made)) as Material;
}

/** A gel of a blend whose larger half is itself a blend: 0.5 % phenoxyethanol, by way of two of them. */
async function gelOfBlends(host: HostProcess): Promise<{ formula: Formula; inner: Material }> {
  const inner = await add(host, 'Thornwick Mix', [
    ['Aqua', 99],
    ['Phenoxyethanol', 1],
  ]);
  const outer = await add(host, 'Thornwick Base', [
    ['Thornwick Mix', 50],
    ['Glycerin', 50],
  ]);
  const begun = { name: 'Thornwick Gel', productType: 'gel', use: 'leave-on' };
  const { id, revision, ...content } = (await host.post('/api/formulas', begun)) as Formula;
  const line = { id: crypto.randomUUID(), materialId: outer.id, ppm: 1_000_000, toHundred: false, note: '' };
  const phases = content.phases.map((phase, at) => (at === 0 ? { ...phase, lines: [line] } : phase));
  await host.send('PUT', `/api/formulas/${id}`, { revision, content: { ...content, phases } });
  return { formula: (await host.get(`/api/formulas/${id}`)) as Formula, inner };
}

test('what a blend within a blend holds is changed in one window: label, law, findings and totals of the other follow', async ({
  page,
  stillroom,
}) => {
  const { inner } = await gelOfBlends(stillroom.host);
  await openFormula(page, 'Thornwick Gel');
  const beside = (name: string) => page.getByRole('tab', { name }).click();
  const panel = page.getByRole('tabpanel');
  await beside('Label');
  // By hand: half of 99 % is water, half glycerin, half of 1 % phenoxyethanol.
  await expect(panel).toContainText('Glycerin, Aqua, Phenoxyethanol');
  await beside('Law');
  await expect(panel).toContainText('0.5 %; at most 1 %');

  const other = await page.context().newPage();
  const errors = watchErrors(other);
  await other.goto(`${stillroom.host.origin}/#/materials/${inner.id}`);
  await other.getByRole('button', { name: 'Edit', exact: true }).click();
  await other.getByRole('textbox', { name: 'Per cent from, Aqua' }).fill('20');
  await other.getByRole('textbox', { name: 'Per cent to, Aqua' }).fill('20');
  await other.getByRole('textbox', { name: 'Per cent to, Phenoxyethanol' }).fill('80');
  await other.getByRole('textbox', { name: 'Per cent from, Phenoxyethanol' }).fill('80');
  await expect(other.getByRole('contentinfo')).toContainText('Saved at');

  // By hand: half of 80 % is 40 %, of 20 % is 10 %.
  await expect(panel).toContainText('40 %; at most 1 %');
  await beside('Label');
  await expect(panel).toContainText('Glycerin, Phenoxyethanol, Aqua');
  await expect(panel.getByRole('row', { name: /^Phenoxyethanol/ })).toContainText('40.000');
  await expect(panel.getByRole('row', { name: /^Aqua/ })).toContainText('10.000');
  await page.getByRole('tab', { name: /^Checks/ }).click();
  await expect(panel).toContainText('Phenoxyethanol comes to 40 %; at most 1 %');
  expect(errors).toEqual([]);
});
