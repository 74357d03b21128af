/** @typedef {{ passed: number, failed: number }} Count */

/** @typedef {{ status: string, fullName?: string, failureMessages?: string[] }} UnitTest */
/** @typedef {{ name?: string, status: string, message?: string, assertionResults: UnitTest[] }} UnitFile */
/** @typedef {{ numPassedTests?: number, numFailedTests?: number, testResults?: UnitFile[] }} UnitReport */
/** @typedef {{ title: string, tests: { results: { error?: { message?: string } }[] }[] }} Spec */
/** @typedef {{ title: string, specs?: Spec[], suites?: Suite[] }} Suite */
/** @typedef {{ stats?: { expected: number, unexpected: number, flaky: number }, errors?: unknown[], suites?: Suite[] }} BrowserReport */

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

// A property's counterexample stands within these; a whole stack does not help at the end of a log.
const LINES_TOLD = 8;

/** @param {string} where @param {string} [message] */
const tell = (where, message = '') =>
  [where, ...message.split('\n').slice(0, LINES_TOLD)].join('\n    ').trimEnd();

/**
 * What failed, each with the beginning of its message, for the end of a log of which often only the
 * end is seen.
 * @param {UnitReport} report
 * @returns {readonly string[]}
 */
export const toldOfUnit = ({ testResults = [] }) =>
  testResults
    .filter(({ status }) => status === 'failed')
    .flatMap(({ name = '', message, assertionResults }) => {
      const failed = assertionResults.filter(({ status }) => status === 'failed');
      if (failed.length === 0) return [tell(name, message)];
      return failed.map((test) =>
        tell(`${name} › ${test.fullName ?? ''}`, test.failureMessages?.[0]),
      );
    });

/** @param {Suite} suite @returns {readonly string[]} */
const toldOfSuite = ({ title, specs = [], suites = [] }) => [
  ...specs.flatMap((spec) =>
    spec.tests
      .flatMap(({ results }) => results)
      .flatMap(({ error }) => (error ? [tell(`${title} › ${spec.title}`, error.message)] : [])),
  ),
  ...suites.flatMap(toldOfSuite),
];

/**
 * As for the unit tests; a test that passed only when tried again is told of too.
 * @param {BrowserReport} report
 * @returns {readonly string[]}
 */
export const toldOfBrowser = ({ suites = [] }) => suites.flatMap(toldOfSuite);
