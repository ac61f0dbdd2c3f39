import { requireNode } from './steps/node-version.mjs';

requireNode();
const { runScript } = await import('./steps/run.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { buildOutput } = await import('./steps/output.mjs');

await runScript(async () => {
  await ensureDependencies();
  return buildOutput();
});
