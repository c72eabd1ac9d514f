import { expect, test } from 'vitest';
import { lastLine, type Report, tallyOfExit, tallyOfReport, total } from '../../tools/tally.ts';

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((each) => ({ status: each })),
});

function report(...testResults: Report['testResults'][number][]): Report {
  const count = (status: string) =>
    testResults.flatMap((each) => each.assertionResults).filter((each) => each.status === status).length;
  return { numPassedTests: count('passed'), numFailedTests: count('failed'), testResults };
}

test('a run with every test passed is counted test by test', () => {
  expect(tallyOfReport(report(file('passed', 'passed', 'passed')), 0)).toEqual({ passed: 2, failed: 0 });
});

test('failed tests are counted once each, and their files not again', () => {
  const run = report(file('failed', 'passed', 'failed', 'failed'), file('passed', 'passed'));
  expect(tallyOfReport(run, 1)).toEqual({ passed: 2, failed: 2 });
});

test('a file that would not load is one failure', () => {
  expect(tallyOfReport(report(file('failed'), file('passed', 'passed')), 1)).toEqual({
    passed: 1,
    failed: 1,
  });
});

test('a run that exits badly is never a pass, whatever its report says', () => {
  expect(tallyOfReport(report(file('passed', 'passed')), 1)).toEqual({ passed: 1, failed: 1 });
});

test('a run that proved nothing, or left no report, is a failure', () => {
  expect(tallyOfReport(report(), 0)).toEqual({ passed: 0, failed: 1 });
  expect(tallyOfReport(undefined, 0)).toEqual({ passed: 0, failed: 1 });
});

test('the last line adds up the steps', () => {
  const sum = total([tallyOfExit(0), tallyOfExit(2), { passed: 40, failed: 3 }]);
  expect(lastLine(sum)).toBe('41 passed, 4 failed');
});
