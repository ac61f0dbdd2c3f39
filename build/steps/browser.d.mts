/** The browser to test in: STILLROOM_BROWSER, or an installed one, or Playwright's own; undefined without any. */
export function findBrowser(): Promise<string | undefined>;
/** Where a browser of the Chromium family may be on this kind of system, likeliest first. */
export function browserCandidates(
  platform: NodeJS.Platform,
  env: Record<string, string | undefined>,
): string[];
/** How tests and measurements start the browser: quiet, without a network of its own, also as root in a container. */
export const BROWSER_ARGUMENTS: string[];
