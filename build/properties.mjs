import { requireNode } from './steps/node-version.mjs';

const HELP = `Usage: npm run test:properties -- [options]

Looks for a case that breaks a law: every test that tries many examples, with new ones and more of them.

  --times N   how many times as many examples as npm test tries (default 10)
  --seed N    where the examples begin (default: another each time)
  --help      show this help`;

requireNode();
const { Halt, node, root, runScript, say } = await import('./steps/run.mjs');
const { readFlags } = await import('./steps/flags.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { readdirSync, readFileSync } = await import('node:fs');
const { join, relative } = await import('node:path');

function wholeNumber(text, name) {
  const number = Number(text);
  if (!Number.isSafeInteger(number) || number < 1)
    throw new Halt(`--${name} takes a whole number from 1.\n\n${HELP}`);
  return String(number);
}

/** The test files that try examples. */
function filesWithProperties() {
  return readdirSync(join(root, 'tests'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.test.ts'))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => readFileSync(file, 'utf8').includes(`from 'fast-check'`))
    .map((file) => relative(root, file));
}

await runScript(async () => {
  const flags = { times: { type: 'string' }, seed: { type: 'string' }, help: { type: 'boolean' } };
  const { times = '10', seed = String(1 + (Date.now() % 2_000_000_000)), help } = readFlags(flags, HELP);
  if (help) {
    console.log(HELP);
    return 0;
  }
  const env = { PROPERTY_TIMES: wholeNumber(times, 'times'), PROPERTY_SEED: wholeNumber(seed, 'seed') };
  await ensureDependencies();
  const files = filesWithProperties();
  say(`${files.length} files of laws, ${times} times the examples, from ${seed}`);
  const limit = `--testTimeout=${180_000 * Number(times)}`;
  return node(
    'node_modules/vitest/vitest.mjs',
    ['run', '--config', 'build/vitest.config.ts', limit, ...files],
    { env },
  );
});
