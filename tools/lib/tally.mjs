// Counting of test cases, from the reports that the test runners write.

/** @typedef {{ passed: number, failed: number, skipped: number, second: number }} Tally second: of the passed, those that did so at a second try */

/** @returns {Tally} */
export const none = () => ({ passed: 0, failed: 0, skipped: 0, second: 0 });

/**
 * @param {readonly Tally[]} tallies
 * @returns {Tally}
 */
export function sum(tallies) {
  const total = none();
  for (const { passed, failed, skipped, second } of tallies) {
    total.passed += passed;
    total.failed += failed;
    total.skipped += skipped;
    total.second += second;
  }
  return total;
}

/**
 * Cases of Vitest's JSON report, of one project: those in the folder of its name. A file that fails before any of its cases
 * could run counts as one failed case.
 * @param {{ testResults: { name: string, status: string, assertionResults: { status: string }[] }[] }} report
 * @param {string} project
 * @returns {Tally}
 */
export function fromVitest(report, project) {
  const tally = none();
  for (const file of report.testResults) {
    if (!file.name.replaceAll("\\", "/").includes(`/tests/${project}/`)) continue;
    for (const { status } of file.assertionResults)
      if (status === "passed") tally.passed += 1;
      else if (status === "failed") tally.failed += 1;
      else tally.skipped += 1;
    if (file.status === "failed" && !file.assertionResults.some(({ status }) => status === "failed"))
      tally.failed += 1;
  }
  return tally;
}

/**
 * Cases of Playwright's JSON report. One that passes only at a second try is told apart: something is wrong with it or with
 * the page, and it is to be mended, but a slow machine alone shall not stop the rest.
 * @param {{ stats: { expected: number, unexpected: number, flaky: number, skipped: number }, errors?: unknown[] }} report
 * @returns {Tally}
 */
export function fromPlaywright({ stats, errors = [] }) {
  return {
    passed: stats.expected + stats.flaky,
    failed: stats.unexpected + errors.length,
    skipped: stats.skipped,
    second: stats.flaky,
  };
}

/**
 * The tally of a test runner that ended with an exit code. An end with an error counts as failed even where each
 * single case passed, and so does a run without a single case: an empty stage proves nothing.
 * @param {Tally} tally
 * @param {number} code
 * @returns {Tally}
 */
export function withExit(tally, code) {
  const silent = tally.failed === 0 && (code !== 0 || tally.passed === 0);
  return silent ? { ...tally, failed: 1 } : tally;
}

/**
 * The last line of `npm test`.
 * @param {Tally} tally
 */
export const closingLine = ({ passed, failed }) => `${String(passed)} passed, ${String(failed)} failed`;
