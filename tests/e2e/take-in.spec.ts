import type { Page } from '@playwright/test';
import { blankMaterial } from '@core/materials/material';
import { writeXlsx } from '@core/tables/xlsx/write-xlsx';
import { appendFileSync, readFileSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { germanShelf } from '../unit/imports/german-shelf';
import { expect, expectNoAxeViolations, test } from './fixtures';
import { picture } from './pictures';

const choose = (page: Page, name: string, bytes: Buffer | string) =>
  page
    .getByLabel('Table', { exact: true })
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(bytes) });
const kind = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Rows shown' }).getByRole('button', { name });

test('a messy shelf of 400 rows comes in, its 11 bad rows come back with why, and again nothing changes', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Raw materials', exact: true }).click();
  await page.getByRole('link', { name: 'Take in a table…' }).first().click();
  await choose(page, 'Rohstoffe.csv', germanShelf());
  await expect(page.getByRole('heading', { name: 'What would become of 400 rows' })).toBeVisible();
  await expect(kind(page, '389 new')).toBeVisible();
  await expect(kind(page, '11 refused')).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByLabel('What Ladung is taken as')).toHaveValue('charge');
  await expect(page.getByLabel('What Charge is taken as')).toHaveValue('');
  await expectNoAxeViolations(page);
  await picture(page, 'take-in');

  // One word is told what it means: its row comes in with the others.
  await page.getByLabel('What “geladen” means').selectOption('anionic');
  await expect(kind(page, '390 new')).toBeVisible();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the refused rows as CSV' }).click();
  const refused = readFileSync(await (await saved).path(), 'utf8').split('\r\n');
  expect(refused[0]).toContain('Why it was refused');
  expect(refused.filter((line) => line !== '')).toHaveLength(1 + 10);

  await page.getByRole('button', { name: 'Take in 390 materials' }).click();
  await expect(page.getByText('Taken in: 390 materials added, 0 changed.')).toBeVisible();
  await page.getByRole('link', { name: 'See them on the shelf' }).click();
  await expect(page.getByRole('status').filter({ hasText: '390 materials' })).toBeVisible();

  // The word is remembered, and nothing is new.
  await page.getByRole('link', { name: 'Take in a table…' }).first().click();
  await choose(page, 'Rohstoffe.csv', germanShelf());
  await expect(kind(page, '390 unchanged')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take in 0 materials' })).toBeDisabled();
});

test('several tables are taken in one after another; the others can be forgotten', async ({
  page,
  stillroom,
}) => {
  await page.goto(`${stillroom.host.origin}/#/take-in`);
  const table = (name: string, rows: string) => ({
    ...{ name, mimeType: 'text/csv', buffer: Buffer.from(`Name;INCI name\n${rows}`) },
  });
  await page
    .getByLabel('Table', { exact: true })
    .setInputFiles([
      table('waxes.csv', 'Larkspur Wax;Cetyl Alcohol'),
      table('oils.csv', 'Larkspur Oil;Helianthus Annuus Seed Oil'),
      table('rest.csv', 'Larkspur Gum;Xanthan Gum'),
    ]);
  const queue = page.getByRole('group', { name: 'Files chosen together' });
  await expect(queue).toContainText('File 1 of 3; next comes oils.csv.');
  await page.getByRole('button', { name: 'Take in 1 material' }).click();
  await expect(page.getByText('Taken in: 1 material added, 0 changed.')).toBeVisible();
  await queue.getByRole('button', { name: 'Go on to the next file' }).click();
  await expect(page.getByRole('heading', { name: 'oils.csv' })).toBeVisible();
  await queue.getByRole('button', { name: 'Forget the others' }).click();
  await expect(queue).toBeHidden();
  await page.getByRole('button', { name: 'Take in 1 material' }).click();
  await expect(page.getByText('Taken in: 1 material added, 0 changed.')).toBeVisible();
  const { rows } = (await stillroom.host.get('/api/materials?text=larkspur')) as {
    rows: { tradeName: string }[];
  };
  expect(rows.map(({ tradeName }) => tradeName).sort()).toEqual(['Larkspur Oil', 'Larkspur Wax']);
});

test('a spreadsheet changes what is there, shows how, and is taken back whole', async ({
  page,
  stillroom,
}) => {
  const { host } = stillroom;
  await page.goto(`${host.origin}/#/take-in`);
  const first = writeXlsx([
    { name: 'Read me', head: ['Prices of spring'], rows: [] },
    {
      name: 'Shelf',
      head: ['Name', 'INCI name', 'Ionicity', 'HLB', 'Price (EUR/kg)', 'Supplier'],
      rows: [
        ['Larkspur Wax', 'Cetearyl Glucoside', 'non-ionic', 11.5, 18.4, 'Brookmill'],
        ['Larkspur Quat', 'Behentrimonium Chloride', 'cationic', null, 32, 'Brookmill'],
      ],
    },
  ]);
  await choose(page, 'shelf.xlsx', Buffer.from(first));
  await page.getByLabel('Sheet').selectOption({ label: 'Shelf' });
  await page.getByRole('button', { name: 'Take in 2 materials' }).click();
  await expect(page.getByText('Taken in: 2 materials added, 0 changed.')).toBeVisible();

  await choose(page, 'later.csv', 'Name;HLB\nlarkspur wax;12,5\nLarkspur Quat;');
  await expect(kind(page, '1 changed')).toBeVisible();
  await expect(page.getByRole('group', { name: 'Rows of the table' })).toContainText(
    /HLB 11\.5.*→.*HLB 12\.5/,
  );
  await page.getByRole('button', { name: 'Take in 1 material' }).click();
  await page.getByRole('button', { name: 'Undo all of it' }).click();
  await expect(page.getByText('Undone: 0 materials removed, 1 as they were.')).toBeVisible();
  const { rows } = (await host.get('/api/materials?text=larkspur')) as { rows: { hlb: number | null }[] };
  expect(rows.map(({ hlb }) => hlb).sort()).toEqual([11.5, null]);
});

test('what is no table is refused with what to do', async ({ page, stillroom }) => {
  await page.goto(`${stillroom.host.origin}/#/take-in`);
  await choose(page, 'picture.csv', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1]));
  await expect(page.getByRole('alert')).toContainText('This is not a text file.');
  await choose(page, 'open.csv', 'Name;INCI\n"A;Aqua');
  await expect(page.getByRole('alert')).toContainText(
    'A quotation mark is left open or unpaired near line 2.',
  );
  await choose(page, 'sheet.csv', '%PDF-1.7');
  await expect(page.getByRole('alert')).toContainText('This is a PDF, not a table.');
  // 200 MB of rows: told before any of it is read.
  const large = join(stillroom.folder, 'large.csv');
  const piece = Buffer.from('Larkspur Wax;Cetearyl Glucoside;11,5\n'.repeat(100_000));
  for (let written = 0; written < 200_000_000; written += piece.length) appendFileSync(large, piece);
  await page.getByLabel('Table', { exact: true }).setInputFiles(large);
  await expect(page.getByRole('alert')).toContainText('64 MB is the most');
  unlinkSync(large);
});

test('formulas come in from a sheet each, over materials of the shelf; a limit from a table of its own', async ({
  page,
  stillroom,
}) => {
  const { host } = stillroom;
  for (const [name, inci] of [
    ['Harrow Water', 'Aqua'],
    ['Larkspur Wax', 'Cetearyl Glucoside'],
  ] as const)
    await host.post('/api/materials', blankMaterial(name, inci));
  await page.goto(`${host.origin}/#/take-in?about=formulas`);
  await page.getByLabel('The table holds').selectOption({ label: 'formulas: a sheet each' });
  const head = ['Raw material', '% w/w'];
  const book = writeXlsx([
    {
      name: 'Day Milk',
      head,
      rows: [
        ['Harrow Water', 'q.s.'],
        ['Larkspur Wax', 4],
      ],
    },
    {
      name: 'Night Milk',
      head,
      rows: [
        ['Harrow Water', 'q.s.'],
        ['Larkspur Butter', 4],
      ],
    },
  ]);
  await choose(page, 'milks.xlsx', Buffer.from(book));
  await expect(page.getByRole('heading', { name: 'What would become of 2 formulas' })).toBeVisible();
  await expect(page.getByText('“Larkspur Butter” is not a material of the library.')).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole('button', { name: 'Take in 1 formula' }).click();
  await expect(page.getByText('Taken in: 1 formula added, 0 changed.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo all of it' }).click();
  await expect(page.getByText('Undone: 1 formula removed')).toBeVisible();

  await page.goto(`${host.origin}/#/take-in?about=limits`);
  await choose(
    page,
    'limits.csv',
    'Substance or group;Limit (%);Region;Text and entry\n1-Fictol;1;EU;an invented text',
  );
  await page.getByRole('button', { name: 'Take in 1 limit' }).click();
  await page.getByRole('link', { name: 'See the limits' }).click();
  await expect(page.getByText('1-Fictol').first()).toBeVisible();
});
