import { requireNode } from './steps/node-version.mjs';

requireNode();
const { runScript } = await import('./steps/run.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { checkStages, startChecks } = await import('./steps/checks.mjs');

await runScript(async () => {
  await ensureDependencies();
  const failed = [];
  const waits = startChecks(checkStages);
  for (const [at, { title }] of checkStages.entries()) if ((await waits[at]()) !== 0) failed.push(title);
  console.log(failed.length === 0 ? '\n✓ All checks passed' : `\n✗ Failed: ${failed.join('; ')}`);
  return failed.length === 0 ? 0 : 1;
});
