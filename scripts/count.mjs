/** @typedef {{ passed: number, failed: number, told: readonly string[] }} Count told = what failed */

/** @typedef {{ status: string, fullName?: string, failureMessages?: string[] }} UnitTest */
/** @typedef {{ name?: string, status: string, message?: string, assertionResults: UnitTest[] }} UnitFile */
/** @typedef {{ numPassedTests?: number, numFailedTests?: number, testResults?: UnitFile[] }} UnitReport */
/** @typedef {{ title: string, tests: { results: { error?: { message?: string } }[] }[] }} Spec */
/** @typedef {{ title: string, specs?: Spec[], suites?: Suite[] }} Suite */
/** @typedef {{ stats?: { expected: number, unexpected: number, flaky: number }, errors?: unknown[], suites?: Suite[] }} BrowserReport */

// A property's counterexample stands within these; a whole stack does not help at the end of a log.
const LINES_TOLD = 8;

/** @param {string} where @param {string} [message] */
const tell = (where, message = '') =>
  [where, ...message.split('\n').slice(0, LINES_TOLD)].join('\n    ').trimEnd();

/** @param {UnitReport} report @returns {readonly string[]} */
const toldOfUnit = ({ testResults = [] }) =>
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

/** @param {BrowserReport} report @returns {readonly string[]} */
const toldOfBrowser = ({ suites = [] }) => suites.flatMap(toldOfSuite);

/**
 * A stage without tests of its own counts as one.
 * @param {number} code exit code
 * @param {string} [name]
 * @param {string} [printed]
 * @returns {Count}
 */
export const countStage = (code, name = '', printed = '') =>
  code === 0
    ? { passed: 1, failed: 0, told: [] }
    : { passed: 0, failed: 1, told: [tell(name, printed.trim())] };

/**
 * A stage that broke down without a failed test, or ran no test, counts as one failure.
 * @param {number} code
 * @param {Count} count
 * @returns {Count}
 */
const orBrokeDown = (code, { passed, failed, told }) => {
  const brokeDown = (code !== 0 && failed === 0) || passed + failed === 0;
  return brokeDown
    ? { passed, failed: failed + 1, told: [...told, `broke down with exit code ${code}`] }
    : { passed, failed, told };
};

/**
 * Counts vitest's JSON report; a file that could not be run counts as one failure. What failed is
 * told with the beginning of its message, for the end of a log of which often only the end is seen.
 * @param {number} code exit code
 * @param {UnitReport} report
 * @returns {Count}
 */
export const countUnit = (code, report) => {
  const { numPassedTests = 0, numFailedTests = 0, testResults = [] } = report;
  const broken = testResults.filter(
    ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  );
  const failed = numFailedTests + broken.length;
  return orBrokeDown(code, { passed: numPassedTests, failed, told: toldOfUnit(report) });
};

/**
 * Counts Playwright's JSON report; a test that passed only when tried again counts as failed.
 * @param {number} code exit code
 * @param {BrowserReport} report
 * @returns {Count}
 */
export const countBrowser = (code, report) => {
  const { expected = 0, unexpected = 0, flaky = 0 } = report.stats ?? {};
  const failed = unexpected + flaky + (report.errors ?? []).length;
  return orBrokeDown(code, { passed: expected, failed, told: toldOfBrowser(report) });
};

/**
 * @param {readonly Count[]} counts
 * @returns {Count}
 */
export const total = (counts) =>
  counts.reduce(
    (sum, { passed, failed, told }) => ({
      passed: sum.passed + passed,
      failed: sum.failed + failed,
      told: [...sum.told, ...told],
    }),
    { passed: 0, failed: 0, told: [] },
  );
