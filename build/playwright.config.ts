import { resolve } from 'node:path';
import { defineConfig } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from './steps/browser.mjs';

const root = resolve(import.meta.dirname, '..');
const executablePath = await findBrowser();
if (!executablePath) {
  throw new Error('No Chromium, Chrome or Edge found. “npm test” installs one; or set STILLROOM_BROWSER.');
}

export default defineConfig({
  testDir: resolve(root, 'tests/e2e'),
  outputDir: resolve(root, 'test-results'),
  // Three to two cores: host and browser wait for each other, so that an eighth of the time was spared.
  workers: 3,
  fullyParallel: true,
  // Limits end what hangs; they do not time anything. A machine busy with other work takes ten times as long.
  timeout: 5 * 60_000,
  expect: { timeout: 40_000 },
  forbidOnly: Boolean(process.env.CI),
  reporter: [['list'], ['json', { outputFile: resolve(root, 'test-results/playwright.json') }]],
  use: {
    browserName: 'chromium',
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    timezoneId: 'UTC',
    // What never comes is told where it is waited for, not at the end of a long test.
    actionTimeout: 60_000,
    screenshot: 'only-on-failure',
    // A picture and the page's text tell enough of a failure; tracing every action costs time in every test.
    launchOptions: {
      executablePath,
      args: BROWSER_ARGUMENTS,
    },
  },
});
