// npm test: installs what is missing, runs every stage, and ends with `N passed, N failed`.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureChromium } from './chromium.mjs';
import { at, build, ensureModules, runModule } from './run.mjs';

/** @typedef {{ passed: number, failed: number }} Count */

const REPORTS = at('.cache', 'reports');

/** @param {string} name */
const report = (name) => {
  try {
    return JSON.parse(readFileSync(at('.cache', 'reports', name), 'utf8'));
  } catch {
    // No report, no tests: `counted` makes a failure of it.
    return {};
  }
};

/** A stage without tests of its own counts as one. @param {number} code @returns {Count} */
const single = (code) => (code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 });

/**
 * Tests count each; a stage that broke down otherwise, or ran nothing, counts as one failure more.
 * @param {number} code
 * @param {Count} count
 * @returns {Count}
 */
const counted = (code, { passed, failed }) => {
  const brokeDown = (code !== 0 && failed === 0) || passed + failed === 0;
  return { passed, failed: brokeDown ? failed + 1 : failed };
};

const unit = async () => {
  const code = await runModule('vitest/vitest.mjs', [
    'run',
    '--reporter=default',
    '--reporter=json',
    '--outputFile.json=.cache/reports/unit.json',
  ]);
  const { numPassedTests = 0, numFailedTests = 0, testResults = [] } = report('unit.json');
  const unread = testResults.filter(
    (/** @type {{ status: string, assertionResults: { status: string }[] }} */ file) =>
      file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed'),
  );
  return counted(code, { passed: numPassedTests, failed: numFailedTests + unread.length });
};

const e2e = async () => {
  const chromium = await ensureChromium();
  if (chromium === undefined) {
    console.error('No Chromium could be found or fetched; set CHROMIUM_PATH.');
    return single(1);
  }
  const code = await runModule(
    '@playwright/test/cli.js',
    ['test', '--config', 'e2e/playwright.config.ts', '--reporter=list,json'],
    {
      env: {
        CHROMIUM_PATH: chromium,
        PLAYWRIGHT_JSON_OUTPUT_FILE: at('.cache', 'reports', 'e2e.json'),
      },
    },
  );
  const { stats = {}, errors = [] } = report('e2e.json');
  const { expected = 0, unexpected = 0, flaky = 0 } = stats;
  return counted(code, { passed: expected, failed: unexpected + flaky + errors.length });
};

/** @param {readonly string[]} args */
const biome = async (...args) => single(await runModule('@biomejs/biome/bin/biome', args));

/** @type {readonly { name: string, after?: string, run: () => Promise<Count> }[]} */
const STAGES = [
  { name: 'format', run: () => biome('format', '.') },
  { name: 'lint', run: () => biome('lint', '--error-on-warnings', '.') },
  {
    name: 'types',
    run: async () => single(await runModule('typescript/bin/tsc', ['--noEmit', '-p', '.'])),
  },
  { name: 'unit', run: unit },
  { name: 'build', run: async () => single(await build()) },
  { name: 'e2e', after: 'build', run: e2e },
];

/** @param {(typeof STAGES)[number]} stage @param {ReadonlyMap<string, Count>} done */
const runStage = async (stage, done) => {
  console.log(`\n── ${stage.name}`);
  if (stage.after !== undefined && done.get(stage.after)?.failed !== 0) {
    console.log(`not run, because ${stage.after} failed`);
    return single(1);
  }
  const start = performance.now();
  const count = await stage.run();
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`${stage.name}: ${count.passed} passed, ${count.failed} failed, ${seconds} s`);
  return count;
};

const runStages = async () => {
  /** @type {Map<string, Count>} */
  const done = new Map();
  for (const stage of STAGES) done.set(stage.name, await runStage(stage, done));
  return [...done.values()];
};

rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });
const counts = (await ensureModules()) === 0 ? await runStages() : [single(1)];
const sum = (/** @type {keyof Count} */ key) =>
  counts.reduce((total, count) => total + count[key], 0);
process.exitCode = sum('failed') === 0 ? 0 : 1;
console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
