import type { Page, Request } from '@playwright/test';

const underWay = new WeakMap<Page, Set<Request>>();

/** Begins to follow what a page asks for; more often than once does nothing. */
export function followRequests(page: Page): Set<Request> {
  const known = underWay.get(page);
  if (known) return known;
  const requests = new Set<Request>();
  underWay.set(page, requests);
  // The stream of changes stays open for as long as the page does.
  page.on('request', (request) => request.url().endsWith('/api/changes') || requests.add(request));
  page.on('requestfinished', (request) => requests.delete(request));
  page.on('requestfailed', (request) => requests.delete(request));
  return requests;
}

const LOOK_EVERY_MS = 10;

const twoFrames = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/**
 * Waits until nothing is under way and what was asked for is drawn; a new address loads nothing by itself. What the page
 * asks for within two frames is heard before their end is.
 */
export async function settled(page: Page): Promise<void> {
  const requests = followRequests(page);
  await page.locator('main h1, main h2').first().waitFor();
  await twoFrames(page);
  while (requests.size > 0) {
    await page.waitForTimeout(LOOK_EVERY_MS);
    if (requests.size === 0) await twoFrames(page);
  }
}
