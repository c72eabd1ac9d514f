/** How many things passed and failed. */
export type Tally = { readonly passed: number; readonly failed: number };

/** The parts of Vitest's JSON report that we read. */
export type Report = {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
};

/** Counts a step that has no tests of its own: it is one thing, and its exit code says how it went. */
export function tallyOfExit(exitCode: number): Tally {
  return exitCode === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

/**
 * Counts a test run. A file that fails without a failed test (it would not load, or a hook broke) is one failure,
 * and a run that exits badly, proves nothing or leaves no report is never counted as a pass.
 * @param report Vitest's JSON report, or undefined when the run left none
 */
export function tallyOfReport(report: Report | undefined, exitCode: number): Tally {
  if (!report) return { passed: 0, failed: 1 };
  const brokenFiles = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  ).length;
  const failed = report.numFailedTests + brokenFiles;
  const unexplained = failed === 0 && (exitCode !== 0 || report.numPassedTests === 0);
  return { passed: report.numPassedTests, failed: unexplained ? 1 : failed };
}

/** Adds tallies up. */
export function total(tallies: readonly Tally[]): Tally {
  return tallies.reduce((a, b) => ({ passed: a.passed + b.passed, failed: a.failed + b.failed }), {
    passed: 0,
    failed: 0,
  });
}

/** The last line of a test run. */
export function lastLine({ passed, failed }: Tally): string {
  return `${passed} passed, ${failed} failed`;
}
