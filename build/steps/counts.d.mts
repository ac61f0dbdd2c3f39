export interface Counts {
  passed: number;
  failed: number;
  skipped: number;
  /** Each failed test with the first lines of why, where a runner reported them. */
  failures?: string[];
}
/** A stage that is one question: passed or failed by its exit code. */
export function stageCounts(code: number): Counts;
/** Test counts of Vitest's JSON report, and what failed in words. */
export function vitestCounts(report: string, since: number, code: number): Counts;
/** Test counts of Playwright's JSON report, and what failed; one that passed only when repeated counts as failed. */
export function playwrightCounts(report: string, since: number, code: number): Counts;
