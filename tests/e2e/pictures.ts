import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';

/** Takes a picture for the README, when STILLROOM_PICTURES names the folder to put it in; nothing otherwise. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env.STILLROOM_PICTURES;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`) });
}
