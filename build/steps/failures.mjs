// What failed, in words short enough to be told again at the end of a long run, whose beginning may be out of reach.
import { relative } from 'node:path';
import { root } from './run.mjs';

const LINES = 12;

function told(where, messages) {
  const why = messages.join('\n').split('\n').slice(0, LINES);
  return [where, ...why.map((line) => `    ${line}`)].join('\n');
}

/** Each failed test of Vitest's JSON report, with the first lines of why; and each file that could not be loaded. */
export function vitestFailures(report) {
  return report.testResults.flatMap((file) => {
    const name = relative(root, file.name ?? '');
    if (file.status === 'failed' && file.assertionResults.length === 0)
      return [told(name, [file.message ?? ''])];
    return file.assertionResults
      .filter(({ status }) => status === 'failed')
      .map((test) => told(`${name} › ${test.fullName}`, test.failureMessages));
  });
}

/** Each test of Playwright's JSON report that failed, or passed only when repeated, with the first lines of why. */
export function playwrightFailures(report) {
  const specsOf = (suite) => [...(suite.specs ?? []), ...(suite.suites ?? []).flatMap(specsOf)];
  return (report.suites ?? [])
    .flatMap(specsOf)
    .filter((spec) => spec.tests.some(({ status }) => status === 'unexpected' || status === 'flaky'))
    .map((spec) => {
      const errors = spec.tests.flatMap(({ results }) => results.flatMap((result) => result.errors));
      return told(
        `${spec.file}:${spec.line} › ${spec.title}`,
        errors.map(({ message }) => message),
      );
    });
}
