import { existsSync, readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { playwrightFailures, vitestFailures } from './failures.mjs';
import { root } from './run.mjs';

/** A stage that is one question: passed or failed by its exit code. */
export function stageCounts(code) {
  return { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 };
}

/** Reads a runner's report; undefined when this run wrote none. */
function readReport(report, since) {
  const file = resolve(root, report);
  // File times are coarser than the clock on some systems.
  if (!existsSync(file) || statSync(file).mtimeMs < since - 2000) return undefined;
  return JSON.parse(readFileSync(file, 'utf8'));
}

/** A runner that failed without a failed test (a file that cannot be loaded, a crash) is a failure of its own. */
function checked(counts, code) {
  return code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}

/** Test counts of Vitest's JSON report, and what failed in words. */
export function vitestCounts(report, since, code) {
  const read = readReport(report, since);
  if (!read) return stageCounts(code || 1);
  const unloaded = read.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  const counts = {
    passed: read.numPassedTests,
    failed: read.numFailedTests + unloaded.length,
    skipped: read.numPendingTests + read.numTodoTests,
  };
  return { ...checked(counts, code), failures: vitestFailures(read) };
}

/** Test counts of Playwright's JSON report, and what failed; one that passed only when repeated counts as failed. */
export function playwrightCounts(report, since, code) {
  const read = readReport(report, since);
  if (!read) return stageCounts(code || 1);
  const { expected, unexpected, flaky, skipped } = read.stats;
  const counts = checked({ passed: expected, failed: unexpected + flaky, skipped }, code);
  return { ...counts, failures: playwrightFailures(read) };
}
