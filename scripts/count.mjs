/** @typedef {{ passed: number, failed: number }} Count */

/** @typedef {{ status: string, assertionResults: { status: string }[] }} UnitFile */
/** @typedef {{ numPassedTests?: number, numFailedTests?: number, testResults?: UnitFile[] }} UnitReport */
/** @typedef {{ stats?: { expected: number, unexpected: number, flaky: number }, errors?: unknown[] }} BrowserReport */

/**
 * A stage without tests of its own counts as one.
 * @param {number} code exit code
 * @returns {Count}
 */
export const countStage = (code) =>
  code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };

/**
 * A stage that broke down without a failed test, or ran no test, counts as one failure.
 * @param {number} code
 * @param {Count} count
 * @returns {Count}
 */
const orBrokeDown = (code, { passed, failed }) => {
  const brokeDown = (code !== 0 && failed === 0) || passed + failed === 0;
  return { passed, failed: brokeDown ? failed + 1 : failed };
};

/**
 * Counts vitest's JSON report; a file that could not be run counts as one failure.
 * @param {number} code exit code
 * @param {UnitReport} report
 * @returns {Count}
 */
export const countUnit = (code, { numPassedTests = 0, numFailedTests = 0, testResults = [] }) => {
  const broken = testResults.filter(
    ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  );
  return orBrokeDown(code, { passed: numPassedTests, failed: numFailedTests + broken.length });
};

/**
 * Counts Playwright's JSON report; a test that passed only when tried again counts as failed.
 * @param {number} code exit code
 * @param {BrowserReport} report
 * @returns {Count}
 */
export const countBrowser = (code, { stats, errors = [] }) => {
  const { expected = 0, unexpected = 0, flaky = 0 } = stats ?? {};
  return orBrokeDown(code, { passed: expected, failed: unexpected + flaky + errors.length });
};

/**
 * @param {readonly Count[]} counts
 * @returns {Count}
 */
export const total = (counts) =>
  counts.reduce(
    (sum, { passed, failed }) => ({ passed: sum.passed + passed, failed: sum.failed + failed }),
    { passed: 0, failed: 0 },
  );
