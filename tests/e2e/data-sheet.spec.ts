import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Material } from '@core/materials/material';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { hangingPdf, lockedPdf, longPdf, scannedPdf } from './hostile-pdfs';
import { picture } from './pictures';
import { larkspurSheet } from './screens/datasheet-screens';

const choose = (page: Page, name: string, bytes: Uint8Array) =>
  page
    .getByLabel('Data sheet', { exact: true })
    .setInputFiles({ name, mimeType: 'application/pdf', buffer: Buffer.from(bytes) });
const proposals = (page: Page) => page.getByRole('list', { name: 'What the sheet says' });

test('a data sheet becomes a material, every value shown on its page, and is taken back', async ({
  page,
  stillroom,
}) => {
  const { host } = stillroom;
  await page.goto(`${host.origin}/#/take-in`);
  await page.getByRole('link', { name: 'Read a supplier’s data sheet instead…' }).click();
  await choose(page, 'Larkspur Wax Q.pdf', await larkspurSheet());
  await expect(page.locator('canvas[data-drawn=yes]')).toBeVisible();
  await expect(page.getByLabel('HLB', { exact: true }).and(page.locator('.input'))).toHaveValue('11.5');
  await expect(page.getByLabel('Usage, from–to').and(page.locator('.input'))).toHaveValue('2 – 5');
  // Its pH is that of a dilution: shown, and left unless it is taken.
  await expect(page.getByRole('checkbox', { name: 'pH of the material' })).not.toBeChecked();
  await page.getByLabel('HLB', { exact: true }).and(page.locator('.input')).focus();
  await expect(page.locator('.paper .mark')).toBeVisible();
  await expectNoAxeViolations(page);
  await picture(page, 'data-sheet');

  // A value that its maker knows better.
  const melting = page.getByLabel('Melting or drop point').and(page.locator('.input'));
  await melting.fill('sixty');
  await page.getByRole('button', { name: /Make a material with \d+ values/ }).click();
  await expect(page.getByText('Some of the values you chose cannot be read yet.')).toBeVisible();
  await melting.fill('59 – 63');
  await page.getByRole('button', { name: /Make a material with \d+ values/ }).click();
  await expect(page.getByText('with the sheet attached.')).toBeVisible();
  const { rows } = (await host.get('/api/materials?text=larkspur')) as { rows: { id: string }[] };
  const made = (await host.get(`/api/materials/${rows[0]!.id}`)) as Material;
  expect(made.tradeName).toBe('Larkspur Wax Q');
  expect(made.composition.map(({ inci, lowPpm }) => [inci, lowPpm])).toEqual([
    ['Cetearyl Alcohol', 720_000],
    ['Ceteareth-20', 280_000],
  ]);
  expect(made.figures.hlb).toMatchObject({ value: 11.5, source: 'Larkspur Wax Q, page 1' });
  expect(made.figures.meltingPoint).toMatchObject({ low: 59, high: 63 });
  expect(made.usage).toMatchObject({ minPpm: 20_000, maxPpm: 50_000, source: 'Larkspur Wax Q, page 1' });
  expect(made.documents).toMatchObject([{ title: 'Larkspur Wax Q', kind: 'specification' }]);

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: /Make a material with/ })).toBeVisible();
  expect(((await host.get('/api/materials?text=larkspur')) as { rows: unknown[] }).rows).toEqual([]);
});

test.describe('with materials on the shelf', () => {
  test.use({ opening: 'demo' });

  test('a sheet read into a material changes what is taken, and shows what stood there', async ({
    page,
    stillroom,
  }) => {
    const { host } = stillroom;
    const { rows } = (await host.get('/api/materials?limit=1')) as { rows: { id: string }[] };
    const id = rows[0]!.id;
    const before = (await host.get(`/api/materials/${id}`)) as Material;
    await page.goto(`${host.origin}/#/materials/${id}`);
    await page.getByRole('link', { name: 'Read a data sheet…' }).click();
    await choose(page, 'Larkspur Wax Q.pdf', await larkspurSheet());
    // Its name stays unless that is taken too.
    await expect(page.getByRole('checkbox', { name: 'Trade name' })).not.toBeChecked();
    await page.getByRole('button', { name: /^Take \d+ values/ }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByRole('button', { name: /^Take \d+ values/ })).toBeVisible();
    const after = (await host.get(`/api/materials/${id}`)) as Material;
    expect({ ...after, revision: 0, updatedAt: '' }).toEqual({ ...before, revision: 0, updatedAt: '' });
  });

  test('two sheets of one material are taken one after the other', async ({ page, stillroom }) => {
    const { host } = stillroom;
    const { rows } = (await host.get('/api/materials?limit=1')) as { rows: { id: string }[] };
    const id = rows[0]!.id;
    await page.goto(`${host.origin}/#/data-sheet?material=${id}`);
    const sheet = (name: string, bytes: Uint8Array) => ({
      ...{ name, mimeType: 'application/pdf', buffer: Buffer.from(bytes) },
    });
    // Not one byte the same, so that both are attached.
    const [one, two] = [await larkspurSheet(), Buffer.concat([await larkspurSheet(), Buffer.from('\n')])];
    await page
      .getByLabel('Data sheet', { exact: true })
      .setInputFiles([sheet('Specification.pdf', one), sheet('Leaflet.pdf', two)]);
    await page.getByRole('button', { name: /^Take \d+ values/ }).click();
    await page.getByRole('button', { name: 'Go on to the next file' }).click();
    await expect(page.getByRole('heading', { name: 'Leaflet.pdf' })).toBeVisible();
    await page.getByRole('button', { name: /^Take \d+ values/ }).click();
    await expect(page.getByText('with the sheet attached.')).toBeVisible();
    const { documents } = (await host.get(`/api/materials/${id}`)) as Material;
    expect(documents.slice(-2).map(({ title }) => title)).toEqual(['Specification', 'Leaflet']);
  });
});

test('several sheets are read one after another, a bad one among them, and none is left out in silence', async ({
  page,
  stillroom,
}) => {
  const { host } = stillroom;
  const pdf = (name: string, bytes: Uint8Array) => ({
    ...{ name, mimeType: 'application/pdf', buffer: Buffer.from(bytes) },
  });
  await page.goto(`${host.origin}/#/data-sheet`);
  await page
    .getByLabel('Data sheet', { exact: true })
    .setInputFiles([
      pdf('Larkspur Wax Q.pdf', await larkspurSheet()),
      pdf('photo.pdf', Buffer.from([0x89, 0x50, 0x4e, 0x47])),
      pdf('Larkspur again.pdf', await larkspurSheet()),
    ]);
  const queue = page.getByRole('group', { name: 'Files chosen together' });
  await expect(queue).toContainText('File 1 of 3; next comes photo.pdf.');
  await page.getByRole('button', { name: /Make a material with \d+ values/ }).click();
  await expect(page.getByText('with the sheet attached.')).toBeVisible();
  await expectNoAxeViolations(page);
  await queue.getByRole('button', { name: 'Go on to the next file' }).click();
  await expect(page.getByRole('alert')).toContainText('This file is not a PDF, whatever its name says.');
  await expect(queue).toContainText('File 2 of 3; next comes Larkspur again.pdf.');

  // What is chosen meanwhile comes first, and the one that waits still waits.
  await choose(page, 'scan.pdf', await scannedPdf());
  await expect(page.getByRole('alert')).toContainText('This PDF holds pictures of pages, and no text.');
  await expect(queue).toContainText('File 3 of 4; next comes Larkspur again.pdf.');
  await queue.getByRole('button', { name: 'Leave this one, go on to the next' }).click();
  await expect(queue).toContainText('File 4 of 4.');
  await expect(page.getByRole('heading', { name: 'Larkspur again.pdf' })).toBeVisible();
  await expect(queue.getByRole('button')).toHaveCount(0);
});

test('a dropped folder of sheets is read one after another, and what else lies in it is named', async ({
  page,
  stillroom,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-sheets-'));
  mkdirSync(join(folder, 'waxes'));
  writeFileSync(join(folder, '10 Larkspur.pdf'), await larkspurSheet());
  writeFileSync(join(folder, '2 Larkspur.pdf'), await larkspurSheet());
  writeFileSync(join(folder, 'waxes', 'Larkspur.pdf'), await larkspurSheet());
  writeFileSync(join(folder, 'prices.xlsx'), 'no sheet');
  try {
    await page.goto(`${stillroom.host.origin}/#/data-sheet`);
    const place = page.getByText('or drop some, or a folder of them, here');
    const { x, y } = (await place.boundingBox())!;
    // Playwright itself drops no folders; the browser's own protocol does.
    const browser = await page.context().newCDPSession(page);
    const data = { items: [], files: [folder], dragOperationsMask: 1 };
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
      await browser.send('Input.dispatchDragEvent', { type, x: x + 2, y: y + 2, data });
    const queue = page.getByRole('group', { name: 'Files chosen together' });
    await expect(queue).toContainText('File 1 of 3; next comes 10 Larkspur.pdf.');
    await expect(page.getByRole('heading', { name: '2 Larkspur.pdf' })).toBeVisible();
    await expect(page.getByText('One file of another kind was left: “prices.xlsx”.')).toBeVisible();
    await expectNoAxeViolations(page);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('what is no readable sheet is refused with what to do; a long one says what was left', async ({
  page,
  stillroom,
}) => {
  await page.goto(`${stillroom.host.origin}/#/data-sheet`);
  await choose(page, 'picture.pdf', Buffer.from([0x89, 0x50, 0x4e, 0x47]));
  await expect(page.getByRole('alert')).toContainText('This file is not a PDF, whatever its name says.');
  await choose(page, 'scan.pdf', await scannedPdf());
  await expect(page.getByRole('alert')).toContainText('This PDF holds pictures of pages, and no text.');
  await choose(page, 'locked.pdf', await lockedPdf());
  await expect(page.getByRole('alert')).toContainText('This PDF is locked with a password.');
  await choose(page, 'cut.pdf', Buffer.from('%PDF-1.7\nnothing follows'));
  await expect(page.getByRole('alert')).toContainText('This PDF is damaged or cut short.');
  await choose(page, 'long.pdf', await longPdf());
  await expect(page.getByText('The first 40 of 900 pages were read')).toBeVisible();
  await expect(proposals(page)).toContainText('HLB');
});

test('a sheet that is made to hang can be stopped, and the next one is read', async ({ page, stillroom }) => {
  await page.goto(`${stillroom.host.origin}/#/data-sheet`);
  await choose(page, 'slow.pdf', hangingPdf());
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Reading page')).toBeHidden();
  await choose(page, 'Larkspur Wax Q.pdf', await larkspurSheet());
  await expect(proposals(page)).toContainText('HLB');
});
