import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { caseLine, runCaseFile } from '../../shared-core/cases/run-file';
import type { FileResult } from '../../shared-core/cases/run-file';

/** Prints every case of the files named on the command line; exit code 0 only when all passed. */
const files = process.argv.slice(2);
let passed = 0;
let failed = 0;

for (const file of files) {
  const { results, problem } = run(file);
  for (const one of results) console.log(caseLine(one));
  if (problem) console.log(`${file}: ${problem}; fail`);
  const good = results.filter((one) => one.passed).length;
  passed += good;
  failed += results.length - good + (problem ? 1 : 0);
}

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;

function run(file: string): FileResult {
  let text: string;
  try {
    text = readFileSync(pathOf(file), 'utf8');
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    return { file, results: [], problem: `cannot be read: ${why}` };
  }
  return runCaseFile(file, text);
}

/** Npm runs scripts from the project's folder; a file is meant from where the command was typed. */
function pathOf(file: string): string {
  const typed = resolve(process.env.INIT_CWD ?? process.cwd(), file);
  return existsSync(typed) ? typed : resolve(file);
}
