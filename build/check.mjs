import { requireNode } from './steps/node-version.mjs';

requireNode();
const { runScript, say } = await import('./steps/run.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { checkStages } = await import('./steps/checks.mjs');

await runScript(async () => {
  await ensureDependencies();
  const failed = [];
  for (const { title, run } of checkStages) {
    say(title);
    if ((await run()) !== 0) failed.push(title);
  }
  console.log(failed.length === 0 ? '\n✓ All checks passed' : `\n✗ Failed: ${failed.join('; ')}`);
  return failed.length === 0 ? 0 : 1;
});
