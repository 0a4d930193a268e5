/** Counts of the test runners, from the reports that they write. */
import { existsSync, readFileSync } from 'node:fs';

/** A runner that left no report ran nothing: that is one failure. */
const NOTHING = { passed: 0, failed: 1, skipped: 0 };

function report(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
}

/** Counts of a vitest run. Files that could not be loaded count as failures. */
export function countUnits(file) {
  const found = report(file);
  if (!found) return NOTHING;
  const broken = found.testResults.filter((suite) => suite.status === 'failed' && suite.assertionResults.length === 0);
  return {
    passed: found.numPassedTests,
    failed: found.numFailedTests + broken.length,
    skipped: found.numPendingTests + found.numTodoTests,
  };
}

/** Counts of a Playwright run. A test that passed only when repeated counts as failed. */
export function countScreens(file) {
  const found = report(file);
  if (!found) return NOTHING;
  const { expected, unexpected, flaky, skipped } = found.stats;
  return { passed: expected, failed: unexpected + flaky + found.errors.length, skipped };
}
