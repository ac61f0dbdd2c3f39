import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { HostProcess } from './host-process';
import { cameraJpeg, SECRETS } from '../unit/attachments/camera-photo';

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
  // And where they are shown.
  await expect(page.getByText('This file is missing: add the original again.')).toHaveCount(1);
  await expect(page.getByText('This file is damaged: add the original again.')).toHaveCount(1);
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

/** A photo of 40 by 20 pixels, held upright by its camera: it is to be shown as 20 by 40. */
async function photoOf(page: Page): Promise<Buffer> {
  const plain = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(40, 20);
    canvas.getContext('2d')!.fillRect(0, 0, 20, 20);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  return Buffer.from(cameraJpeg(6, Uint8Array.from(plain)));
}

/** The picture at an address: its size as it is shown, and its bytes as letters. */
const shown = (page: Page, address: string) =>
  page.evaluate(async (at) => {
    const picture = new Image();
    picture.src = at;
    await picture.decode();
    const bytes = new Uint8Array(await (await fetch(at)).arrayBuffer());
    const letters = [...bytes].map((byte) => String.fromCharCode(byte)).join('');
    return { width: picture.naturalWidth, height: picture.naturalHeight, letters };
  }, address);

test('a camera’s photo is kept upright and without where it was taken; a page with a script is only ever saved', async ({
  page,
}) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.getByRole('button', { name: 'Add the first material' }).click();
  await page.getByLabel('Trade name').fill('Wax');
  await page.getByLabel('INCI name').fill('Cetyl Alcohol');
  await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();

  const buffer = await photoOf(page);
  expect(SECRETS.every((word) => buffer.toString('latin1').includes(word))).toBe(true);
  const photo = { name: 'photo.jpg', mimeType: 'image/jpeg', buffer };
  await page.getByLabel('Photo of what it looks like').setInputFiles(photo);
  const picture = page
    .getByRole('region', { name: 'Photo and documents' })
    .getByRole('img', { name: 'Wax: what it looks like' });
  await expect(picture).toBeVisible();
  await page.getByLabel('Add the document').setInputFiles({ ...photo, name: 'Label.jpg' });
  const label = page.getByRole('link', { name: 'Label', exact: true });
  for (const address of [await picture.getAttribute('src'), await label.getAttribute('href')]) {
    const { letters, ...size } = await shown(page, address!);
    expect(size).toEqual({ width: 20, height: 40 });
    for (const word of SECRETS) expect(letters).not.toContain(word);
  }

  const script = Buffer.from('<!doctype html><script>document.title = "ran"</script>');
  await page
    .getByLabel('Add the document')
    .setInputFiles({ name: 'Note.html', mimeType: 'text/html', buffer: script });
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Note.html' }).click();
  expect((await saving).suggestedFilename()).toBe('Note.html');
  const address = await page.getByRole('link', { name: 'Note.html' }).getAttribute('href');
  // Asked for as a page, it is saved all the same.
  const again = page.waitForEvent('download');
  await page.goto(new URL(address!, page.url()).href).catch(() => undefined);
  expect((await again).suggestedFilename()).toBe('Note.html');
  expect(await page.title()).not.toBe('ran');
});
