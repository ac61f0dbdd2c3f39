import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import { blankMaterial, type Material } from '@core/materials/material';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { picture } from './pictures';

test.use({ ownHost: true, opening: 'demo' });

type Host = { get(path: string): Promise<unknown>; put?(path: string, body: unknown): Promise<unknown> };

async function materialsOf(host: Host): Promise<{ id: string; tradeName: string }[]> {
  return ((await host.get('/api/materials?limit=500')) as { rows: { id: string; tradeName: string }[] }).rows;
}

test('a list is saved as a spreadsheet, as it is filtered', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials?charge=cationic`);
  await page.getByRole('button', { name: 'Save as a table…' }).click();
  await expectNoAxeViolations(page);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the table' }).click();
  const file = await saved;
  expect(file.suggestedFilename()).toBe('Raw materials.xlsx');
  const [sheet] = readXlsx(readFileSync(await file.path()));
  const charge = sheet!.rows[0]!.cells.indexOf('Charge');
  expect(sheet!.rows.slice(1).map(({ cells }) => cells[charge])).toContain('cationic');
  expect(new Set(sheet!.rows.slice(1).map(({ cells }) => cells[charge]))).toEqual(new Set(['cationic']));
});

test('a pack goes out, and comes back into a library that has changed since, with one real clash', async ({
  page,
  stillroom,
}) => {
  const { host } = stillroom;
  const [one] = await materialsOf(host);
  const change = async (notes: string): Promise<void> => {
    await page.goto(`${host.origin}/#/materials/${one!.id}`);
    await page.getByRole('button', { name: 'Edit', exact: true }).click();
    await page.getByLabel('Notes').fill(notes);
    await expect(async () => {
      expect(((await host.get(`/api/materials/${one!.id}`)) as Material).notes).toBe(notes);
    }).toPass();
  };
  // The pack is made by the screen.
  await page.goto(`${host.origin}/#/materials`);
  await page.getByRole('checkbox', { name: `Select ${one!.tradeName}` }).check();
  await page.getByRole('button', { name: 'Make a pack…' }).click();
  await page.getByRole('dialog').getByLabel('Name').fill('Spring pack');
  await expectNoAxeViolations(page);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  const pack = await (await saved).path();
  await page.keyboard.press('Escape');
  const file = { name: 'Spring pack.stillroom.zip', mimeType: 'application/zip', buffer: readFileSync(pack) };

  // A colleague's library, beside ours: made of the pack, and changed there.
  await page.goto(`${host.origin}/#/library/meet`);
  await page.getByLabel('A pack, or a library as a document').setInputFiles(file);
  await expect(page.getByRole('heading', { name: 'Spring pack' })).toBeVisible();
  await expect(page.getByText('It holds nothing that you do not have.')).toBeVisible();
  await page.getByRole('button', { name: 'Make a library of its own of it…' }).click();
  await page.getByLabel('Name of the library').fill('Colleague');
  await page.getByRole('button', { name: 'Make and open it' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Colleague' })).toBeVisible();
  await change('what the colleague found');

  // Ours goes on too, and then meets the colleague's.
  await page.goto(`${host.origin}/#/library`);
  await page.getByRole('button', { name: basename(stillroom.library), exact: true }).click();
  await expect(page.getByRole('link', { name: `Library ${basename(stillroom.library)}` })).toBeVisible();
  await change('what we found');
  await page.goto(`${host.origin}/#/library/meet`);
  await page.getByRole('button', { name: 'Another library…' }).click();
  const dialog = page.getByRole('dialog');
  for (const name of ['Documents', 'Stillroom'])
    await dialog.getByRole('list').getByRole('button', { name, exact: true }).click();
  await dialog
    .getByRole('list')
    .getByRole('button', { name: /^Colleague/ })
    .click();
  await dialog.getByRole('button', { name: 'Compare with this library' }).click();
  await expect(page.getByRole('heading', { name: 'Record by record' })).toBeVisible();
  await page.getByRole('button', { name: `What differs in ${one!.tradeName}` }).click();
  await expect(page.getByText('what the colleague found')).toBeVisible();
  await expect(page.getByText('changed on both sides').first()).toBeVisible();
  await expectNoAxeViolations(page);
  await page
    .getByLabel(`What is done with ${one!.tradeName}`)
    .selectOption({ label: 'merge; theirs where both changed' });
  // Of a single field, another side than of the rest.
  const notes = page.getByRole('radiogroup', { name: `Notes of ${one!.tradeName}` });
  await expect(notes.getByRole('radio', { name: 'Take theirs' })).toBeChecked();
  await notes.getByRole('radio', { name: 'Keep ours' }).check();
  await expect(page.getByRole('button', { name: 'Merge: 0 added, 0 changed' })).toBeVisible();
  await notes.getByRole('radio', { name: 'Take theirs' }).check();
  const merge = page.getByRole('button', { name: 'Merge: 0 added, 1 changed' });
  await expect(merge).toBeVisible();
  await picture(page, 'merge');
  await merge.click();
  await expect(page.getByText(/Done: 0 added, 1 changed/)).toBeVisible();
  expect(((await host.get(`/api/materials/${one!.id}`)) as Material).notes).toBe('what the colleague found');
  await page.getByRole('button', { name: 'Undo all of it' }).click();
  await expect(page.getByText('Undone: the library is as it was before.')).toBeVisible();
  expect(((await host.get(`/api/materials/${one!.id}`)) as Material).notes).toBe('what we found');
});

test('one record comes back from a backup', async ({ page, stillroom }) => {
  const { host } = stillroom;
  const [one] = await materialsOf(host);
  const was = ((await host.get(`/api/materials/${one!.id}`)) as Material).notes;
  await page.goto(`${host.origin}/#/library`);
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText('A backup was made and checked.')).toBeVisible();
  await page.goto(`${host.origin}/#/materials/${one!.id}`);
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  await page.getByLabel('Notes').fill('spoilt');
  await expect(async () => {
    expect(((await host.get(`/api/materials/${one!.id}`)) as Material).notes).toBe('spoilt');
  }).toPass();
  await page.goto(`${host.origin}/#/library`);
  await page.getByRole('link', { name: 'Compare with now…' }).first().click();
  await page.getByLabel(`What is done with ${one!.tradeName}`).selectOption('theirs');
  await page.getByRole('button', { name: 'Restore: 0 added, 1 changed' }).click();
  await expect(page.getByText(/Done: 0 added, 1 changed/)).toBeVisible();
  expect(((await host.get(`/api/materials/${one!.id}`)) as Material).notes).toBe(was);
});

test('two materials that are one are joined, and parted again', async ({ page, stillroom }) => {
  const { host } = stillroom;
  for (const name of ['Larkspur Wax', 'Larkspur-Wax'])
    await host.post('/api/materials', blankMaterial(name, 'Cetearyl Alcohol'));
  await page.goto(`${host.origin}/#/library/look-alikes`);
  await expect(page.getByText('nearly the same name and the same substances')).toBeVisible();
  await expect(page.getByRole('link', { name: /^Petalhush/ })).toHaveCount(0);
  await expect(page.getByText(/pairs?\b/).first()).toBeVisible();
  await expectNoAxeViolations(page);
  await picture(page, 'look-alikes');
  const before = (await materialsOf(host)).length;
  await page
    .getByRole('button', { name: /^Keep / })
    .first()
    .click();
  await expect(page.getByText(/is joined into/)).toBeVisible();
  expect((await materialsOf(host)).length).toBe(before - 1);
  await page.getByRole('button', { name: 'Undo the join' }).click();
  await expect(page.getByText('Undone: both are as they were.')).toBeVisible();
  expect((await materialsOf(host)).length).toBe(before);
});
