import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { HostProcess } from './host-process';

// Each test starts Stillroom again, with its library, in the run's own folder.
test.use({
  ownHost: true,
  opening: 'demo',
  expectedErrors: /Failed to load resource|ERR_CONNECTION_REFUSED/,
});

const glycerin = (page: Page) => page.getByRole('textbox', { name: /^Share of .*Glycerin.*, per cent/ });

async function openFormula(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Hedgerow Day Cream' }).first().click();
  await expect(glycerin(page)).toBeVisible();
}

/** Stops a host as Ctrl-C does and starts it again at the same port. */
async function startAgain(host: HostProcess, folder: string, library: string): Promise<HostProcess> {
  await host.stop();
  return HostProcess.start({ args: ['--library', library], folder, port: new URL(host.origin).port });
}

test('after a restart an open page takes the new key, and saves what was typed meanwhile', async ({
  page,
  stillroom,
}) => {
  await openFormula(page);
  await stillroom.host.stop();
  await glycerin(page).fill('7.25');
  await expect(page.getByRole('alert', { name: 'No connection' })).toContainText('is not answering');
  const again = await startAgain(stillroom.host, stillroom.folder, stillroom.library);
  const note = page.getByRole('alert', { name: 'No connection' });
  await expect(note).toContainText('started again');
  await expect(glycerin(page)).toHaveValue('7.25');

  await note.getByRole('textbox').fill('http://127.0.0.1:1/?key=someone-elses-key-of-another');
  await note.getByRole('button', { name: 'Continue' }).click();
  await expect(note).toContainText('--port');
  await note.getByRole('textbox').fill(again.address);
  await note.getByRole('button', { name: 'Continue' }).click();
  await expect(note).toHaveCount(0);
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.reload();
  await expect(glycerin(page)).toHaveValue(/^7[.,]25/);
  expect(await again.stop()).toBe(0);
});

test('a tab opened at the new address lets the open page go on by itself', async ({ page, stillroom }) => {
  await openFormula(page);
  const again = await startAgain(stillroom.host, stillroom.folder, stillroom.library);
  await glycerin(page).fill('6.5');
  await expect(page.getByRole('alert', { name: 'No connection' })).toContainText('started again');
  const other = await page.context().newPage();
  await other.goto(again.address);
  await expect(other.getByRole('heading', { level: 1 })).toBeVisible();
  expect(other.url()).not.toContain('key=');
  await other.close();
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await expect(page.getByRole('alert', { name: 'No connection' })).toHaveCount(0);
  expect(await again.stop()).toBe(0);
});

test('what could not be saved outlives a reload, and is offered again', async ({ page, stillroom }) => {
  page.on('dialog', (dialog) => void dialog.accept());
  await openFormula(page);
  await stillroom.host.stop();
  await page.getByLabel('Purpose').fill('For the spring stall');
  await expect(page.getByRole('contentinfo')).toContainText('Not saved.');
  const again = await startAgain(stillroom.host, stillroom.folder, stillroom.library);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('needs its new address');
  await page.goto(again.address);
  const waiting = page.getByRole('region', { name: 'Not saved yet' });
  await waiting.getByRole('link', { name: 'Hedgerow Day Cream' }).click();
  await expect(page.getByLabel('Purpose')).not.toHaveValue('For the spring stall');
  await page.getByRole('button', { name: 'Use it' }).click();
  await expect(page.getByLabel('Purpose')).toHaveValue('For the spring stall');
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await page.getByRole('link', { name: 'Today' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(waiting).toHaveCount(0);
  expect(await again.stop()).toBe(0);
});

test('a share typed just before the tab closes is kept', async ({ page, stillroom }) => {
  await openFormula(page);
  const address = page.url();
  const other = await page.context().newPage();
  await other.goto(address);
  await expect(glycerin(other)).toBeVisible();
  await glycerin(other).fill('8.125');
  await other.close({ runBeforeUnload: true });
  await expect
    .poll(async () => {
      await page.reload();
      await glycerin(page).waitFor();
      return glycerin(page).inputValue();
    })
    .toMatch(/^8[.,]125/);
  await expect(page.getByRole('button', { name: 'Use it' })).toHaveCount(0);
  expect(stillroom.host.output()).not.toContain('error');
});

test('a field of a material left by closing the tab is kept', async ({ page }) => {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.locator('[data-index="3"]').click();
  const code = page.getByRole('textbox', { name: 'Code', exact: true });
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  await code.waitFor();
  const other = await page.context().newPage();
  await other.goto(page.url());
  await other.getByRole('button', { name: 'Edit', exact: true }).click();
  await other.getByRole('textbox', { name: 'Code', exact: true }).fill('SHELF-9');
  await other.close({ runBeforeUnload: true });
  await expect
    .poll(async () => {
      await page.reload();
      await code.waitFor();
      return code.inputValue();
    })
    .toBe('SHELF-9');
});

test('a host that crashes between the edits of two windows: all that was saved is there, and both go on', async ({
  page,
  stillroom: { host, folder, library },
}) => {
  await host.stop();
  const port = new URL(host.origin).port;
  const first = await HostProcess.start({ args: ['--library', library], folder, port });
  await first.visit(page);
  await openFormula(page);
  const other = await page.context().newPage();
  await first.visit(other, '/materials');
  await other.locator('[data-index="3"]').click();
  await other.getByRole('complementary', { name: 'Material' }).waitFor();
  const edit = other.getByRole('button', { name: 'Edit', exact: true });
  const code = other.getByRole('textbox', { name: 'Code', exact: true });
  await edit.or(code).first().waitFor();
  if (await edit.isVisible()) await edit.click();
  const appearance = other.getByRole('textbox', { name: 'Appearance' });

  await page.getByLabel('Purpose').fill('Saved before');
  await expect(page.getByRole('contentinfo')).toContainText('Saved at');
  await appearance.fill('Saved before');
  await expect(other.getByRole('contentinfo')).toContainText('Saved at');
  await first.kill();
  await glycerin(page).fill('7.25');
  await code.fill('SHELF-9');
  for (const window of [page, other])
    await expect(window.getByRole('alert', { name: 'No connection' })).toContainText('is not answering');

  const second = await HostProcess.start({ args: ['--library', library], folder, port });
  await expect(glycerin(page)).toHaveValue('7.25');
  await expect(code).toHaveValue('SHELF-9');
  const tab = await page.context().newPage();
  await tab.goto(second.address);
  await expect(tab.getByRole('heading', { level: 1 })).toBeVisible();
  await tab.close();
  for (const window of [page, other]) {
    await expect(window.getByRole('contentinfo')).toContainText('Saved at');
    await expect(window.getByRole('alert', { name: 'No connection' })).toHaveCount(0);
  }

  // From the disk, once more: what was saved before the crash, and what was typed in both windows after it.
  await second.kill();
  const third = await HostProcess.start({ args: ['--library', library], folder, port });
  const [formula, material] = [page, other].map((window) => new URL(window.url()).hash.slice(1));
  await third.visit(page, formula);
  await page.reload();
  await expect(glycerin(page)).toHaveValue(/^7[.,]25/);
  await expect(page.getByLabel('Purpose')).toHaveValue('Saved before');
  await third.visit(other, material);
  await other.reload();
  await expect(code).toHaveValue('SHELF-9');
  await expect(appearance).toHaveValue('Saved before');
  await page.goto('about:blank');
  await other.close();
  expect(await third.stop()).toBe(0);
});
