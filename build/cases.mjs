// Runs worked examples from case files: npm run cases -- FILE.json [FILE…]
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
const files = process.argv.slice(2);

if (files.length === 0) {
  console.error('Name at least one file of cases: npm run cases -- FILE.json [FILE…]');
  process.exit(2);
}
if (!existsSync(resolve(root, 'node_modules/tsx'))) {
  console.error('The dependencies are not installed yet. Run “npm install” in the project’s folder first.');
  process.exit(2);
}

const script = resolve(root, 'tests/reference/run-cases.ts');
const env = { ...process.env, INIT_CWD: process.env.INIT_CWD ?? process.cwd() };
const run = spawnSync(process.execPath, ['--import', 'tsx', script, ...files], {
  cwd: root,
  env,
  stdio: 'inherit',
});
if (run.error) console.error(`The cases could not be run: ${run.error.message}`);
process.exit(run.status ?? 1);
