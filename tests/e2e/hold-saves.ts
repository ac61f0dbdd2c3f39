import type { Page } from '@playwright/test';

/**
 * Holds a window's saves back, as a busy machine does, so that another window can be quicker.
 * @param path what their address holds
 * @returns when the first is under way, and what lets them go
 */
export async function holdSaves(
  page: Page,
  path: string,
): Promise<{ begun: Promise<void>; release(): void }> {
  let release!: () => void;
  let begin!: () => void;
  const released = new Promise<void>((resolve) => (release = resolve));
  const begun = new Promise<void>((resolve) => (begin = resolve));
  await page.route(
    (url) => url.pathname.includes(path),
    async (route) => {
      if (route.request().method() === 'PUT') {
        begin();
        await released;
      }
      await route.continue();
    },
  );
  return { begun, release };
}
