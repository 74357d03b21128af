// npm run bench: builds the program and the measurements, and prints every figure with its limit.
import { pathToFileURL } from 'node:url';
import { ensureChromium } from './chromium.mjs';
import { at, build, ensureModules, runModule } from './run.mjs';

/** The measurements run as built code, as the program does. */
const buildBench = () =>
  runModule('vite/bin/vite.js', [
    'build',
    ...['--ssr', 'scripts/bench/main.ts', '--outDir', '.cache/bench', '--logLevel', 'warn'],
  ]);

const main = async () => {
  if ((await ensureModules()) !== 0 || (await build()) !== 0 || (await buildBench()) !== 0)
    return false;
  const chromium = await ensureChromium();
  if (chromium === undefined) throw new Error('no Chromium: set CHROMIUM_PATH');
  const { serve } = await import('./serve.mjs');
  const { bench } = await import(pathToFileURL(at('.cache', 'bench', 'main.js')).href);
  const { url, close } = await serve({ root: at('dist') });
  const within = await bench(url, chromium);
  await close();
  return within;
};

process.exitCode = (await main()) ? 0 : 1;
