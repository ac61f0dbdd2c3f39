import { requireNode } from './steps/node-version.mjs';

requireNode();
const { node, root, runScript, say } = await import('./steps/run.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { ensureOutput } = await import('./steps/output.mjs');
const { ensureBrowser } = await import('./steps/browser.mjs');
const { join } = await import('node:path');

/**
 * Draws every screen in every window, light and dark, with all that opens, as contact sheets to look at. Takes what the
 * tests to draw are called, and one width: `npm run pictures -- 'an empty library' 390`.
 */
await runScript(async () => {
  await ensureDependencies();
  await ensureOutput();
  const program = await ensureBrowser();
  const folder = join(root, 'test-results-pictures');
  say(`Drawing every screen into ${folder}`);
  const only = process.argv[2] ?? 'nothing scrolls away';
  const args = [
    'test',
    '--config',
    'build/playwright.config.ts',
    'tests/e2e/screens.spec.ts',
    '--grep',
    only,
  ];
  return node('node_modules/@playwright/test/cli.js', args, {
    env: {
      STILLROOM_BROWSER: program,
      STILLROOM_CONTACT_SHEETS: folder,
      STILLROOM_CONTACT_WIDTH: process.argv[3] ?? '',
    },
  });
});
