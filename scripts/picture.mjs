// npm run picture: builds the program and takes the picture in README.md.
import { ensureChromium, LEAN } from './chromium.mjs';
import { at, build, ensureModules } from './run.mjs';

const STATE = new URLSearchParams({
  progression: '[Verse]\n|: Bm7 | E7 | Amaj7 | F#m7 :|\n[Chorus]\n| D | A/C# | Bm7 | E7sus4 E7 |',
  at: '1.1',
  position: '7',
});

/** @param {string} executablePath @param {string} url */
const take = async (executablePath, url) => {
  const { chromium } = await import('@playwright/test');
  const browser = await chromium.launch({ executablePath, args: LEAN });
  const page = await browser.newPage({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  await page.goto(`${url}#${STATE}`, { waitUntil: 'networkidle' });
  // What comes after the first view belongs in the picture: the transport, and why this form.
  await page.mouse.move(0, 880);
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  await page.getByText('Second best: the D form').waitFor();
  await page.screenshot({ path: at('public', 'workspace.png') });
  await browser.close();
};

if ((await ensureModules()) !== 0 || (await build()) !== 0) process.exit(1);
const chromium = await ensureChromium();
if (chromium === undefined) throw new Error('no Chromium: set CHROMIUM_PATH');
const { serve } = await import('./serve.mjs');
const { url, close } = await serve({ root: at('dist') });
await take(chromium, url);
await close();
