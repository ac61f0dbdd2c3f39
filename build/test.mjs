import { requireNode } from './steps/node-version.mjs';

const HELP = `Usage: npm test -- [options]

  --only A,B   run these stages only, of:
               typecheck, lint, format, build, vitest, attack, browser
  --help       show this help`;

requireNode();
const { Halt, node, runScript, say, wasInterrupted } = await import('./steps/run.mjs');
const { readFlags } = await import('./steps/flags.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { buildOutput } = await import('./steps/output.mjs');
const { checkStages, startChecks } = await import('./steps/checks.mjs');
const { tellMissingCheckers } = await import('./steps/checkers.mjs');
const { playwrightCounts, stageCounts, vitestCounts } = await import('./steps/counts.mjs');
const { ensureBrowser } = await import('./steps/browser.mjs');

const ATTACK_ROUNDS = '24';

async function vitest() {
  const report = 'test-results/vitest.json';
  const args = ['run', '--config', 'build/vitest.config.ts', '--reporter=default', '--reporter=json'];
  const since = Date.now();
  const code = await node('node_modules/vitest/vitest.mjs', [...args, `--outputFile.json=${report}`]);
  return vitestCounts(report, since, code);
}

async function browser() {
  const program = await ensureBrowser();
  console.log(`Testing in ${program}`);
  const since = Date.now();
  const args = ['test', '--config', 'build/playwright.config.ts'];
  const code = await node('node_modules/@playwright/test/cli.js', args, {
    env: { STILLROOM_BROWSER: program },
  });
  return playwrightCounts('test-results/playwright.json', since, code);
}

/** In order: what is quick and tells most comes first; what runs the built output comes after the build. */
const STAGES = [
  ...checkStages,
  { name: 'build', title: 'Build', run: async () => stageCounts(await buildOutput()) },
  { name: 'vitest', title: 'Unit, reference, property, durability and shell tests', run: vitest },
  {
    name: 'attack',
    title: `Attacking libraries: ${ATTACK_ROUNDS} rounds of each kind`,
    run: async () => stageCounts(await node('build/attack.mjs', ['--rounds', ATTACK_ROUNDS])),
  },
  { name: 'browser', title: 'Browser tests', run: browser },
];

function chosenStages(only) {
  if (only === undefined) return STAGES;
  const names = only.split(',');
  const unknown = names.find((name) => !STAGES.some((stage) => stage.name === name));
  if (unknown !== undefined) throw new Halt(`There is no stage “${unknown}”.\n\n${HELP}`);
  return STAGES.filter((stage) => names.includes(stage.name));
}

/** What each chosen stage does: the static checks are all under way by then. */
function prepared(stages) {
  const checks = stages.filter((stage) => stage.command);
  const waits = startChecks(checks);
  return stages.map((stage) => {
    const wait = waits[checks.indexOf(stage)];
    if (wait) return { stage, run: async () => stageCounts(await wait()) };
    return {
      stage,
      run: () => {
        say(stage.title);
        return stage.run();
      },
    };
  });
}

async function runStages(stages) {
  const results = [];
  for (const { stage, run } of prepared(stages)) {
    if (wasInterrupted()) throw new Halt('Stopped before all tests had run.');
    try {
      results.push({ stage, counts: await run() });
    } catch (error) {
      // One stage that cannot run at all must not hide what the others find.
      console.error(error instanceof Halt ? error.message : error);
      results.push({ stage, counts: { passed: 0, failed: 1, skipped: 0 } });
    }
  }
  return results;
}

function tell(results) {
  for (const { stage, counts } of results) {
    for (const failure of counts.failures ?? []) console.log(`\n✗ ${stage.title}\n  ${failure}`);
  }
  console.log('');
  for (const { stage, counts } of results) {
    const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
    const mark = counts.failed > 0 ? '✗' : '✓';
    console.log(`${mark} ${stage.title}: ${counts.passed} passed, ${counts.failed} failed${skipped}`);
  }
}

await runScript(async () => {
  const { only, help } = readFlags({ only: { type: 'string' }, help: { type: 'boolean' } }, HELP);
  if (help) {
    console.log(HELP);
    return 0;
  }
  const stages = chosenStages(only);
  await ensureDependencies();
  const missing = tellMissingCheckers();
  const results = await runStages(stages);
  tell(results);
  tellMissingCheckers();
  const total = (what) => results.reduce((sum, { counts }) => sum + counts[what], 0);
  // In continuous integration nothing may be left out unnoticed.
  const failed = total('failed') + (process.env.CI ? missing.length : 0);
  console.log(`\n${total('passed')} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
});
