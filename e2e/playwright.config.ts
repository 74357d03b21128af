import { defineConfig, devices } from '@playwright/test';
import { findChromium, LEAN } from '../scripts/chromium.mjs';

const executablePath = findChromium();

const HEARD = /(sound|sound-held|steady)\.spec\.ts$/;
const desktop = { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } };

export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  globalSetup: './serve-dist.ts',
  fullyParallel: true,
  forbidOnly: true,
  workers: 3,
  retries: 0,
  // A hung test ends; how fast a machine is does not decide.
  timeout: 60_000,
  use: {
    // A worker between page and server would hide which requests a visit makes.
    serviceWorkers: 'block',
    // Keeping one takes a third of the time: `--trace on` where a failure is looked into.
    trace: 'off',
    launchOptions: { args: LEAN, ...(executablePath !== undefined && { executablePath }) },
  },
  projects: [
    { name: 'screen', testIgnore: HEARD, workers: 2, use: desktop },
    // What is heard waits for the music half of its time: beside it something else can be looked at.
    { name: 'heard', testMatch: HEARD, workers: 2, use: desktop },
  ],
});
