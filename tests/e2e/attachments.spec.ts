import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { HostProcess } from './host-process';

test.use({ ownHost: true, expectedErrors: /Failed to load resource|ERR_CONNECTION_REFUSED/ });

/** The check comes in a pause after the library was opened. */
const CHECKED_WITHIN_MS = 45_000;

const papers = ['Organic.pdf', 'Vegan.pdf'].map((name) => ({
  name,
  mimeType: 'application/pdf',
  buffer: Buffer.from(`%PDF-1.4\n% ${name}\n%%EOF\n`),
}));

async function addDocuments(page: Page): Promise<void> {
  for (const paper of papers) {
    await page.getByLabel('Add the document').setInputFiles(paper);
    await expect(page.getByRole('group', { name: paper.name.replace('.pdf', '') }).first()).toBeVisible();
  }
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
}

test('attachments that the disk has lost or damaged are told by name, until they are added again', async ({
  page,
  stillroom: { host, library, folder },
}) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.getByRole('button', { name: 'Add the first material' }).click();
  await page.getByLabel('Trade name').fill('Wax');
  await page.getByLabel('INCI name').fill('Cetyl Alcohol');
  await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();
  await addDocuments(page);
  const address = new URL(page.url()).hash.slice(1);
  await page.goto('about:blank');
  await host.stop();

  const kept = join(library, 'attachments');
  const [first = '', second = ''] = readdirSync(kept, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /[0-9a-f]{64}$/.test(name),
  );
  rmSync(join(kept, first));
  writeFileSync(join(kept, second), '%PDF-1.4 spoilt');

  const again = await HostProcess.start({ args: ['--library', library], folder });
  await again.visit(page);
  const says = '2 attachments of this library are damaged or missing.';
  await expect(page.getByRole('contentinfo')).toContainText(says, { timeout: CHECKED_WITHIN_MS });
  await page.getByRole('contentinfo').getByRole('link', { name: 'Go to the library' }).click();
  const told = page.getByRole('alert').filter({ hasText: says });
  await expect(told).toContainText('“Organic” of Wax (');
  await expect(told).toContainText('“Vegan” of Wax (');
  await expect(told).toContainText('(damaged)');
  await expect(told).toContainText('(missing)');

  await again.visit(page, address);
  const edit = page.getByRole('button', { name: 'Edit', exact: true });
  await edit.or(page.getByLabel('Add the document')).first().waitFor();
  if (await edit.isVisible()) await edit.click();
  for (const paper of papers) await page.getByLabel('Add the document').setInputFiles(paper);
  await again.visit(page, '/library');
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
  await expect(told).toHaveCount(0);
  await page.goto('about:blank');
  expect(await again.stop()).toBe(0);
});
