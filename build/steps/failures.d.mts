interface VitestReport {
  testResults: {
    name?: string;
    status: string;
    message?: string;
    assertionResults: { status: string; fullName: string; failureMessages: string[] }[];
  }[];
}
interface PlaywrightSuite {
  specs?: {
    file: string;
    line: number;
    title: string;
    tests: { status: string; results: { errors: { message: string }[] }[] }[];
  }[];
  suites?: PlaywrightSuite[];
}
/** Each failed test of Vitest's JSON report, with the first lines of why; and each file that could not be loaded. */
export function vitestFailures(report: VitestReport): string[];
/** Each test of Playwright's JSON report that failed, or passed only when repeated, with the first lines of why. */
export function playwrightFailures(report: { suites?: PlaywrightSuite[] }): string[];
