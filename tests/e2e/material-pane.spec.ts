import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';

/** Adds the first material of an empty library, and leaves it open. */
async function addWax(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/materials`);
  await page.getByRole('button', { name: 'Add the first material' }).click();
  await page.getByLabel('Trade name').fill('Wax');
  await page.getByLabel('INCI name').fill('Cetyl Alcohol');
  await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();
}

test.describe('an empty library', () => {
  test('explains itself, takes the first material, saves each edit, and takes it back', async ({ page }) => {
    await expect(page.getByRole('heading', { name: 'An empty shelf' })).toBeVisible();
    await page.getByRole('link', { name: 'Raw materials' }).first().click();
    await page.getByRole('button', { name: 'Add the first material' }).click();
    await page.getByLabel('Trade name').fill('Test Wax Q');
    await page.getByLabel('INCI name').fill('Cetearyl Alcohol');
    await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();

    const pane = page.getByRole('complementary', { name: 'Material' });
    await expect(pane.getByRole('heading', { name: 'Test Wax Q' })).toBeVisible();
    await pane.getByLabel('Charge', { exact: true }).selectOption('non-ionic');
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await pane.getByRole('button', { name: 'Undo' }).click();
    await expect(pane.getByLabel('Charge', { exact: true })).toHaveValue('');
    await pane.getByRole('button', { name: 'Redo' }).click();
    await page.reload();
    await expect(page.getByLabel('Charge', { exact: true })).toHaveValue('non-ionic');
  });

  test('a bad figure stays in its field with a message, and nothing wrong is saved', async ({ page }) => {
    await addWax(page);
    await page.getByLabel('Add a figure').selectOption('hlb');
    const hlb = page.getByRole('group', { name: 'HLB', exact: true }).getByLabel('Value');
    for (const [typed, says] of [
      ['41', 'At most 40'],
      ['-1', 'At least 0'],
      ['about ten', 'is not a number'],
    ] as const) {
      await hlb.fill(typed);
      await hlb.blur();
      await expect(page.getByRole('alert').filter({ hasText: says })).toBeVisible();
      await expect(hlb).toHaveValue(typed);
    }
    await hlb.fill('15,5');
    await hlb.blur();
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.reload();
    await expect(page.getByRole('group', { name: 'HLB', exact: true }).getByLabel('Value')).toHaveValue(
      '15.5',
    );
  });

  test('a supplier can be entered before the price is known, and given one later', async ({ page }) => {
    await addWax(page);
    const offers = page.getByRole('region', { name: 'Suppliers and prices' });
    await offers.getByRole('button', { name: 'Add a supplier or price…' }).click();
    await offers.getByLabel('Supplier', { exact: true }).fill('Fernmill Supplies');
    const price = offers.getByLabel('Price of the pack');
    await price.fill('ask them');
    await price.press('Enter');
    await expect(offers.getByRole('alert')).toContainText('is not a number');
    await expect(price).toBeFocused();
    await price.fill('');
    await offers.getByRole('button', { name: 'Add supplier' }).click();
    await expect(offers.getByRole('row').nth(1)).toContainText('Fernmill Supplies');
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.reload();
    await offers.getByRole('button', { name: /Change the offer of Fernmill Supplies/ }).click();
    await offers.getByLabel('Pack', { exact: true }).fill('25');
    await price.fill('110,50');
    await offers.getByRole('button', { name: 'Change supplier' }).click();
    await expect(offers.getByRole('row').nth(1)).toContainText('€4.42');
  });

  test('a photo of any kind is kept upright, as a JPEG that sheets can print', async ({ page }) => {
    await addWax(page);
    const drawn = (type: string): Promise<string> =>
      page.evaluate((as) => {
        const canvas = Object.assign(document.createElement('canvas'), { width: 40, height: 20 });
        canvas.getContext('2d')?.fillRect(0, 0, 40, 20);
        return canvas.toDataURL(as).split(',')[1] ?? '';
      }, type);
    const kept = page.locator('figure').getByRole('img', { name: 'Wax: what it looks like' });
    const size = () => kept.evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]);

    const webp = Buffer.from(await drawn('image/webp'), 'base64');
    const field = page.getByLabel('Photo of what it looks like');
    await field.setInputFiles({ name: 'wax.webp', mimeType: 'image/webp', buffer: webp });
    await expect(kept).toBeVisible();
    await expect.poll(size).toEqual([40, 20]);
    const type = kept.evaluate(async (image: HTMLImageElement) =>
      (await fetch(image.src)).headers.get('content-type'),
    );
    expect(await type).toBe('image/jpeg');

    // Exif 2.3, 4.6: one entry, orientation (0x0112) 6, "turned a quarter to the right when shown" (from memory).
    const exif = 'ffe1002245786966000049492a00080000000100120103000100000006000000' + '00000000';
    const jpeg = Buffer.from(await drawn('image/jpeg'), 'base64');
    const turned = Buffer.concat([jpeg.subarray(0, 2), Buffer.from(exif, 'hex'), jpeg.subarray(2)]);
    await page.getByRole('button', { name: 'Remove the photo' }).click();
    await field.setInputFiles({ name: 'wax.jpg', mimeType: 'image/jpeg', buffer: turned });
    await expect(kept).toBeVisible();
    await expect.poll(size).toEqual([20, 40]);
  });

  test('a picture that is dropped or pasted is kept; until then the form is drawn', async ({ page }) => {
    await addWax(page);
    const pane = page.getByRole('complementary', { name: 'Material' });
    await pane.getByLabel('Form', { exact: true }).selectOption('pellets');
    await expect(pane.getByRole('img', { name: 'Drawing of its form: pellets' })).toBeVisible();
    /** Hands a drawn PNG to what stands under a selector, as a drop or as the clipboard's. */
    const give = (selector: string, how: 'drop' | 'paste', times = 1) =>
      page.evaluate(
        async ([to, as, many]) => {
          const canvas = Object.assign(document.createElement('canvas'), { width: 30, height: 10 });
          const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
          const carried = new DataTransfer();
          for (let at = 0; at < many; at += 1)
            carried.items.add(new File([blob ?? ''], 'wax.png', { type: 'image/png' }));
          const more = { bubbles: true, cancelable: true };
          const event =
            as === 'drop'
              ? new DragEvent('drop', { dataTransfer: carried, ...more })
              : new ClipboardEvent('paste', { clipboardData: carried, ...more });
          document.querySelector(to)?.dispatchEvent(event);
        },
        [selector, how, times] as const,
      );
    const kept = pane.locator('figure').getByRole('img', { name: 'Wax: what it looks like' });
    await give('.file', 'drop');
    await expect(kept).toBeVisible();
    await page.getByRole('button', { name: 'Remove the photo' }).click();
    await expect(kept).toBeHidden();
    await give('body', 'paste');
    await expect(kept).toBeVisible();
    // A second one is no photo in place of the first, but a paper.
    await give('body', 'paste');
    await expect(pane.getByRole('link', { name: 'wax', exact: true })).toBeVisible();
    // Of several the first is taken, and it is said that the others were left.
    await expect(pane.getByText('One file at a time')).toHaveCount(0);
    for (const [selector, how] of [['.file', 'drop'] as const, ['body', 'paste'] as const]) {
      await give(selector, how, 3);
      const said = 'One file at a time: “wax.png” was taken, the 2 others were left.';
      await expect(pane.getByText(said)).toHaveCount(how === 'drop' ? 1 : 2);
    }
  });

  test('its parts are reached from its head', async ({ page }) => {
    await addWax(page);
    const pane = page.getByRole('complementary', { name: 'Material' });
    await pane.getByLabel('Go to a part of this page').selectOption('Photo and documents');
    await expect(pane.getByRole('region', { name: 'Photo and documents' })).toBeInViewport();
    await expect(pane.getByLabel('Photo of what it looks like')).toBeFocused();
  });

  test('it is read first and edited on asking, and a figure that cannot be read keeps its field', async ({
    page,
  }) => {
    await addWax(page);
    const pane = page.getByRole('complementary', { name: 'Material' });
    await expect(pane.getByLabel('Trade name')).toBeFocused();
    await pane.getByLabel('Charge', { exact: true }).selectOption('non-ionic');
    await page.getByLabel('Add a figure').selectOption('hlb');
    const hlb = pane.getByRole('group', { name: 'HLB', exact: true }).getByLabel('Value');
    await hlb.fill('ten');
    await page.keyboard.press('Escape');
    await expect(hlb).toBeFocused();
    await hlb.fill('10.5');
    await page.keyboard.press('Escape');
    await expect(pane.getByRole('button', { name: 'Edit', exact: true })).toBeFocused();
    await expect(pane.getByRole('region', { name: 'Figures' }).getByRole('row').nth(1)).toContainText('10.5');
    await expect(pane.getByRole('textbox')).toHaveCount(0);
    await page.reload();
    await expect(pane.getByText('Non-ionic').first()).toBeVisible();
    await page.keyboard.press('e');
    await expect(pane.getByLabel('Trade name')).toBeFocused();
    // What it holds does not go with the letter that asked.
    await expect(pane.getByLabel('Trade name')).toHaveValue('Wax');
    await pane.getByRole('button', { name: 'Done', exact: true }).click();
    await page.keyboard.press('Escape');
    await expect(pane).toBeHidden();
  });

  test('a document has its dates, and one that is past says so', async ({ page }) => {
    await addWax(page);
    const pane = page.getByRole('complementary', { name: 'Material' });
    const pdf = Buffer.from('%PDF-1.4\n%%EOF\n');
    await pane
      .getByLabel('Add the document')
      .setInputFiles({ name: 'Organic.pdf', mimeType: 'application/pdf', buffer: pdf });
    const paper = pane.getByRole('group', { name: 'Organic' });
    await paper.getByLabel('Kind').selectOption('certificate');
    await paper.getByLabel('Its date').fill('2025-03-02');
    await paper.getByLabel('Valid until').fill('2025-03-01');
    await expect(paper.getByRole('alert')).toContainText('before its own date');
    await paper.getByLabel('Valid until').fill('2026-03-01');
    await expect(paper.getByRole('alert')).toBeHidden();
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await pane.getByRole('button', { name: 'Done', exact: true }).click();
    const read = pane.getByRole('region', { name: 'Photo and documents' });
    await expect(read).toContainText('certificate, 2 Mar 2025, valid until 1 Mar 2026');
    await expect(read).toContainText('expired');
    await page.getByRole('link', { name: 'Today' }).first().click();
    const look = page.getByRole('region', { name: 'Needs a look' });
    await expect(look).toContainText('Expired documents');
    await look.getByRole('link', { name: 'Wax: Organic' }).click();
    await expect(read).toBeVisible();
  });

  test('a refused part holds up no other, and leaving asks before anything typed is lost', async ({
    page,
  }) => {
    await addWax(page);
    await page.getByLabel('Add a figure').selectOption('hlb');
    const hlb = page.getByRole('group', { name: 'HLB', exact: true });
    await hlb.getByLabel('How known').selectOption('measured');
    await hlb.getByLabel('Source').fill('Our own trial');
    await hlb.getByLabel('From', { exact: true }).fill('14');
    await hlb.getByLabel('To', { exact: true }).fill('10');
    await hlb.getByLabel('To', { exact: true }).blur();
    await expect(hlb.getByRole('alert').first()).toBeVisible();
    await page.getByLabel('Code', { exact: true }).fill('QA-1');
    await page.keyboard.press('Tab');
    await page.getByRole('link', { name: 'Formulas', exact: true }).click();
    const question = page.getByRole('dialog', { name: 'Your last changes are not saved' });
    await question.getByRole('button', { name: 'Stay here' }).click();
    await expect(hlb.getByLabel('To', { exact: true })).toHaveValue('10');
    await hlb.getByLabel('To', { exact: true }).fill('16');
    await page.getByLabel('Notes', { exact: true }).fill('Typed, and left at once');
    await page.getByRole('link', { name: 'Formulas', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Formulas', level: 1 })).toBeVisible();
    await page.goBack();
    // A material is read first.
    await expect(page.getByText('Typed, and left at once')).toBeVisible();
    await page.getByRole('button', { name: 'Edit', exact: true }).click();
    await expect(page.getByLabel('Code', { exact: true })).toHaveValue('QA-1');
    await expect(page.getByLabel('Notes', { exact: true })).toHaveValue('Typed, and left at once');
    await expect(hlb.getByLabel('To', { exact: true })).toHaveValue('16');
    await expect(hlb.getByLabel('How known')).toHaveValue('measured');
    await expect(hlb.getByLabel('Source')).toHaveValue('Our own trial');
  });

  test('an edit that meets a newer state keeps both, field by field, and can still be taken back', async ({
    page,
    context,
  }) => {
    await addWax(page);
    await expect(page.getByRole('heading', { name: 'Wax' })).toBeVisible();
    const other = await context.newPage();
    await other.goto(page.url());
    await other.getByRole('button', { name: 'Edit', exact: true }).click();
    await other.getByLabel('Appearance').fill('white pellets');
    await page.getByLabel('Code', { exact: true }).fill('QA-2');
    await expect(page.getByLabel('Appearance')).toHaveValue('white pellets');
    await expect(other.getByLabel('Code', { exact: true })).toHaveValue('QA-2');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(other.getByLabel('Code', { exact: true })).toHaveValue('');
    await expect(page.getByLabel('Appearance')).toHaveValue('white pellets');
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect(page.getByRole('contentinfo')).toContainText('Saved at');
    await page.reload();
    await expect(page.getByLabel('Code', { exact: true })).toHaveValue('QA-2');
    await expect(page.getByLabel('Appearance')).toHaveValue('white pellets');
  });

  test('text that looks like markup is shown as text', async ({ page }) => {
    await page.goto(`${new URL(page.url()).origin}/#/materials`);
    await page.getByRole('button', { name: 'Add the first material' }).click();
    await page.getByLabel('Trade name').fill('<img src=x onerror=alert(1)>');
    await page.getByLabel('INCI name').fill('<b>Aqua</b>');
    await page.getByRole('dialog').getByRole('button', { name: 'Add material' }).click();
    await expect(page.getByRole('heading', { name: '<img src=x onerror=alert(1)>' })).toBeVisible();
    await expect(page.locator('main b')).toHaveCount(0);
  });
});
