import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run, runModule } from './run.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];

const ELSEWHERE = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

const onPath = () =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => NAMES.map((name) => join(folder, name)));

/**
 * A Chromium that is on this machine already: CHROMIUM_PATH, then the usual places.
 * @returns {string | undefined}
 */
export const findChromium = () =>
  process.env['CHROMIUM_PATH'] || [...onPath(), ...ELSEWHERE].find((path) => existsSync(path));

/** A downloaded browser may lack libraries of the system. @param {string | undefined} path */
const works = (path) =>
  path !== undefined && spawnSync(path, ['--version'], { timeout: 20_000 }).status === 0;

const playwrightsOwn = async () => {
  const { chromium } = await import('@playwright/test');
  return chromium.executablePath();
};

const fromPlaywright = async () => {
  const own = await playwrightsOwn();
  if (works(own)) return own;
  const code = await runModule('@playwright/test/cli.js', ['install', 'chromium'], {
    timeout: 180_000,
  });
  return code === 0 && works(own) ? own : undefined;
};

const fromDebian = async () => {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return undefined;
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  await run('apt-get', ['update', '-qq'], { env });
  await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { env });
  return findChromium();
};

/**
 * A Chromium that runs, fetched when there is none.
 * @returns {Promise<string | undefined>} its path; undefined when none can be had
 */
export const ensureChromium = async () => {
  const found = findChromium();
  if (works(found)) return found;
  console.log('Fetching a Chromium for the browser tests …');
  return (await fromPlaywright()) ?? (await fromDebian());
};

/**
 * Parts of a whole Chromium's own window that it loads for every page, seen or not: more than half of
 * the work of opening one.
 */
const WINDOW = [
  'PreloadTopChromeWebUI',
  'WebUIOmniboxPopup',
  'WebUIOmniboxFullPopup',
  'WebUIOmniboxAimPopup',
];

/** What Playwright turns off (chromiumSwitches.ts of 1.65): the last list is the one that counts. */
const PLAYWRIGHTS = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
];

/** Arguments for a Chromium that shows pages and nothing else. */
export const LEAN = [`--disable-features=${[...PLAYWRIGHTS, ...WINDOW].join(',')}`];
