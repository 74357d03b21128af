// npm test: installs what is missing, runs every stage, and ends with `N passed, N failed`.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureChromium } from './chromium.mjs';
import { countBrowser, countStage, countUnit, total } from './count.mjs';
import { at, build, ensureModules, runModule } from './run.mjs';

/** @typedef {import('./count.mjs').Count} Count */

const REPORTS = at('.cache', 'reports');

/** @param {string} name */
const report = (name) => {
  try {
    return JSON.parse(readFileSync(at('.cache', 'reports', name), 'utf8'));
  } catch {
    // No report, no tests: that counts as a failure.
    return {};
  }
};

const unit = async () => {
  const code = await runModule('vitest/vitest.mjs', [
    'run',
    '--reporter=default',
    '--reporter=json',
    '--outputFile.json=.cache/reports/unit.json',
  ]);
  return countUnit(code, report('unit.json'));
};

/** @param {Promise<string | undefined>} browser */
const e2e = async (browser) => {
  const chromium = await browser;
  if (chromium === undefined) {
    console.error('No Chromium could be found or fetched; set CHROMIUM_PATH.');
    return countStage(1, 'no Chromium');
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
  return countBrowser(code, report('e2e.json'));
};

/** A stage that prints what is wrong, and no report. @param {string} script @param {string[]} args */
const plain = async (script, ...args) => {
  let printed = '';
  const heard = (/** @type {string} */ text) => {
    printed += text;
  };
  const code = await runModule(script, args, { heard });
  return countStage(code, [script, ...args].join(' '), printed);
};

const BIOME = '@biomejs/biome/bin/biome';

/** @typedef {{ name: string, after?: string, run: () => Promise<Count> }} Stage */

/**
 * One after the other, but what stands side by side at once: the build waits for a single thread most
 * of its time.
 * @type {(browser: Promise<string | undefined>) => readonly (readonly Stage[])[]}
 */
const stagesIn = (browser) => [
  [{ name: 'format', run: () => plain(BIOME, 'format', '.') }],
  [{ name: 'lint', run: () => plain(BIOME, 'lint', '--error-on-warnings', '.') }],
  [{ name: 'types', run: () => plain('typescript/bin/tsc', '--noEmit', '-p', '.') }],
  [
    { name: 'unit', run: unit },
    { name: 'build', run: async () => countStage(await build(), 'build') },
  ],
  [{ name: 'e2e', after: 'build', run: () => e2e(browser) }],
];

/** @param {Stage} stage @param {ReadonlyMap<string, Count>} done */
const runStage = async (stage, done) => {
  console.log(`\n── ${stage.name}`);
  if (stage.after !== undefined && done.get(stage.after)?.failed !== 0) {
    console.log(`not run, because ${stage.after} failed`);
    return countStage(1, stage.name);
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
  // Where none is on the machine it takes half a minute, most of it waiting for the network.
  const browser = ensureChromium().catch(() => undefined);
  for (const stages of stagesIn(browser))
    await Promise.all(
      stages.map(async (stage) => done.set(stage.name, await runStage(stage, done))),
    );
  return [...done.values()];
};

rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });
const counts = (await ensureModules()) === 0 ? await runStages() : [countStage(1, 'packages')];
const { passed, failed, told } = total(counts);
process.exitCode = failed === 0 ? 0 : 1;
for (const what of told) console.log(`\nFAILED ${what}`);
console.log(`\n${passed} passed, ${failed} failed`);
