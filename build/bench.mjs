import { requireNode } from './steps/node-version.mjs';

requireNode();
const { node, root, run, runScript, say } = await import('./steps/run.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { ensureOutput } = await import('./steps/output.mjs');
const { existsSync, mkdirSync } = await import('node:fs');
const { join } = await import('node:path');

const PEER_LIMIT_MS = 8 * 60 * 1000;

/**
 * The folder with better-sqlite3, which we measure ourselves against; undefined where it cannot be had. It is
 * compiled on install, so it is fetched here only, and never with the app's own dependencies.
 */
async function ensurePeer() {
  const folder = join(root, 'node_modules/.bench');
  if (existsSync(join(folder, 'node_modules/better-sqlite3/build/Release/better_sqlite3.node')))
    return folder;
  say('Fetching and compiling better-sqlite3 to compare with (a few minutes, once).');
  mkdirSync(folder, { recursive: true });
  const install = ['install', '--prefix', folder, '--no-audit', '--no-fund', 'better-sqlite3@12'];
  const shell = process.platform === 'win32';
  const code = await run('npm', install, { timeoutMs: PEER_LIMIT_MS, shell });
  return code === 0 ? folder : undefined;
}

await runScript(async () => {
  await ensureDependencies();
  await ensureOutput();
  const peer = await ensurePeer();
  const args = ['tests/bench/run.ts', ...process.argv.slice(2), ...(peer ? ['--peer', peer] : [])];
  return node('node_modules/tsx/dist/cli.mjs', args);
});
