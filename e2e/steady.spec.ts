import { readFileSync } from 'node:fs';
import type { Page, Worker } from '@playwright/test';
import { chromium } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openTab, type Tab } from './tab.ts';
import { RATE, RECORDING, RUNNING, record, recorded, SIDES, sidesOf } from './tape.ts';

/** The recorder is no script of the page's own. */
test.use({ bypassCSP: true });

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

const SONG = { progression: '| Dm7 | G7 | Cmaj7 |', at: '1.1', position: '5' };
const SHORT = { ...SONG, progression: '| Dm7 G7 |' };
/** The tempo of a first visit: every eighth is a whole number of samples. */
const TEMPO = 90;
const BAR = (4 * 60) / TEMPO;
const SECONDS = 3 * BAR;
/** The last sounds die away: a file goes on for two seconds more. */
const END = 2.5;

async function open(page: Page, song = SONG): Promise<void> {
  await record(page);
  await page.goto(`./#${new URLSearchParams(song)}`);
  await page.mouse.move(4, 4);
  await page.mouse.move(8, 8);
  await button(page, 'Levels and speed').click();
  const counted = page.getByRole('group', { name: 'Bars counted in' });
  await counted.getByRole('button', { name: 'none' }).click();
  // The file holds it once.
  await page.getByRole('button', { name: /^Round and round/ }).click();
  await expect.poll(() => page.evaluate(RUNNING)).toBe(true);
}

/** Both sides of the file that the page makes of what is played, without a device or a clock. */
async function fileOf(page: Page): Promise<readonly Float32Array[]> {
  const waiting = page.waitForEvent('download');
  await button(page, 'Save WAV').click();
  const bytes = readFileSync((await (await waiting).path()) ?? '').subarray(44);
  const frames = bytes.length / 4;
  return [0, 2].map((side) =>
    Float32Array.from({ length: frames }, (_, i) => bytes.readInt16LE(4 * i + side) / 32_767),
  );
}

const firstSound = (side: Float32Array): number => side.findIndex((x) => Math.abs(x) > 1e-3);

/** How far what was heard is anywhere from what the file holds, full scale 1, and where. */
function apart(heard: readonly Float32Array[], file: readonly Float32Array[]) {
  const [left, right] = heard;
  const [wantedLeft, wantedRight] = file;
  if (!left || !right || !wantedLeft || !wantedRight) throw new Error('two sides');
  const begin = firstSound(left) - firstSound(wantedLeft);
  const worstFrom = (start: number, until: number) => {
    let worst = { by: 0, second: 0 };
    for (let i = 0; i < until; i++) {
      const l = Math.abs((left[start + i] ?? 9) - (wantedLeft[i] ?? 0));
      const r = Math.abs((right[start + i] ?? 9) - (wantedRight[i] ?? 0));
      if (Math.max(l, r) > worst.by) worst = { by: Math.max(l, r), second: i / RATE };
    }
    return worst;
  };
  const starts = [-2, -1, 0, 1, 2].map((more) => begin + more);
  const best = starts.sort((a, b) => worstFrom(a, RATE / 4).by - worstFrom(b, RATE / 4).by)[0] ?? 0;
  return worstFrom(best, wantedLeft.length);
}

/** Keeps a thread from doing anything else. */
const hold = (thread: Pick<Page, 'evaluate'>, milliseconds: number): Promise<void> =>
  thread.evaluate((length) => {
    const until = performance.now() + length;
    while (performance.now() < until);
  }, milliseconds);

const clockOf = (page: Page): Worker => {
  const clock = page.workers().find((worker) => worker.url().includes('clock'));
  if (clock === undefined) throw new Error('no clock');
  return clock;
};

const rest = (page: Page, seconds: number) => page.waitForTimeout(1000 * seconds);

/** Sixteen bits do not hold what was heard any finer. */
const HALF_STEP = 0.6 / 32_767;

/** What lies beyond it is a stumble: the sound is another, or at another moment. */
async function expectAsInFile(page: Page, heard?: readonly Float32Array[]): Promise<void> {
  const { by, second } = apart(heard ?? (await recorded(page)), await fileOf(page));
  expect(by, `as in the file; the worst is at ${second} s`).toBeLessThan(HALF_STEP);
}

test('what is heard is, sample for sample, what the file holds', async ({ page }) => {
  await open(page);
  await button(page, 'Play').click();
  await rest(page, SECONDS + END);
  await expectAsInFile(page);
});

/** Every word from the clock to the band is 100 ms on its way: much longer than a beginning allows for. */
const LATE_WORDS = `{
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message.kind !== 'band') return postMessage.call(this, message, ...rest);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => setTimeout(() => message.port.postMessage(data), 100);
    message.port.onmessage = ({ data }) => port1.postMessage(data);
    postMessage.call(this, { ...message, port: port2 }, [port2]);
  };
}`;

test('a first note that would come too late is not cut: the music begins later, as a whole', async ({
  page,
}) => {
  await page.addInitScript({ content: LATE_WORDS });
  await open(page, SHORT);
  await button(page, 'Play').click();
  await rest(page, BAR + END + 0.1);
  await expectAsInFile(page);
});

test('a page that is busy does not make the music stumble, however long it is', async ({
  page,
}) => {
  await open(page);
  await button(page, 'Play').click();
  for (const milliseconds of [300, 500, 800, 2500]) {
    await rest(page, 0.4);
    await hold(page, milliseconds);
  }
  await rest(page, SECONDS + END - 5.7);
  await expectAsInFile(page);
});

test('the clock itself may be held up for 750 ms: a second is given away ahead', async ({
  page,
}) => {
  await open(page);
  await button(page, 'Play').click();
  for (let times = 0; times < 3; times++) {
    await rest(page, 1.2);
    await hold(clockOf(page), 750);
  }
  await rest(page, SECONDS + END - 5.8);
  await expectAsInFile(page);
});

test('held up for longer it stumbles, and goes on in time, without making up for what it missed', async ({
  page,
}) => {
  await open(page);
  await button(page, 'Only the drums').click();
  await button(page, 'Play').click();
  await rest(page, 1);
  await hold(clockOf(page), 2500);
  await rest(page, SECONDS + END - 3.5);
  const [heard = new Float32Array()] = await recorded(page);
  const [file = new Float32Array()] = await fileOf(page);
  const loudness = (samples: Float32Array, second: number): number => {
    const at = firstSound(samples) + Math.round(second * RATE);
    return Math.max(...samples.slice(at, at + RATE / 10).map(Math.abs));
  };
  const tenths = Array.from({ length: 10 * SECONDS }, (_, i) => i / 10);
  const silent = tenths.filter((at) => loudness(heard, at) < 0.2 * loudness(file, at));
  expect(silent.length, 'it does stumble: the tests above can fail').toBeGreaterThan(2);
  expect(Math.max(...silent) - Math.min(...silent)).toBeLessThan(2.5);
  const whole = Math.max(...tenths.map((at) => loudness(file, at)));
  for (const at of tenths) expect(loudness(heard, at)).toBeLessThan(1.2 * whole);
});

const CURRENT = `document.querySelector('[aria-current="true"]')?.dataset.at`;
const FRAMES = `new Promise((tell) => {
  let frames = 0;
  const count = () => requestAnimationFrame(() => count(frames++));
  count();
  setTimeout(() => tell(frames), 1500);
})`;

/** Presses the button of a name in the first part of the page that begins with some words. */
const press = (tab: Tab, name: string, part = 'body', words = '') =>
  tab.evaluate(
    `[...[...document.querySelectorAll('${part}')]
    .find(({ textContent }) => textContent.startsWith('${words}'))
    .querySelectorAll('button')]
    .find(({ textContent }) => textContent === '${name}').click()`,
    'click',
  );

/** The program in a tab of its own, ready to play without a count-in. */
async function openIn(tab: Tab, url: string): Promise<void> {
  await tab.send('Page.enable');
  await tab.send('Page.setBypassCSP', { enabled: true });
  await tab.send('Page.addScriptToEvaluateOnNewDocument', { source: RECORDING });
  await tab.send('Page.navigate', { url });
  await expect
    .poll(() => tab.evaluate(`document.querySelector('.play') !== null`), { timeout: 20_000 })
    .toBe(true);
  await press(tab, 'Levels and speed');
  await expect
    .poll(() => tab.evaluate(`document.querySelector('.speed-part') !== null`))
    .toBe(true);
  await press(tab, 'none', 'fieldset', 'Bars counted in');
  await tab.evaluate(`document.querySelector('[aria-label^="Round and round"]').click()`, 'click');
  await tab.evaluate(
    `document.body.dispatchEvent(new Event('pointerdown', { bubbles: true }))`,
    'click',
  );
  await expect.poll(() => tab.evaluate(RUNNING)).toBe(true);
}

/** Playwright would keep hidden pages awake. */
const AWAKE = [
  '--disable-background-timer-throttling',
  '--disable-backgrounding-occluded-windows',
  '--disable-renderer-backgrounding',
];

test('a hidden page plays on, and shows where the music is when it is seen again', async ({
  page,
  baseURL,
  launchOptions,
}) => {
  const browser = await chromium.launch({ ...launchOptions, ignoreDefaultArgs: AWAKE });
  const tab = await openTab(browser);
  await openIn(tab, `${baseURL}#${new URLSearchParams(SONG)}`);
  await press(tab, 'Play');
  await rest(page, 0.5);
  await tab.hide();
  expect(await tab.evaluate('document.visibilityState')).toBe('hidden');
  expect(await tab.evaluate(FRAMES), 'it draws no frames').toBe(0);
  expect(await tab.evaluate(CURRENT)).toBe('1.1');
  await rest(page, 2);
  await tab.show();
  await expect.poll(() => tab.evaluate(CURRENT)).toBe('2.1');
  await rest(page, SECONDS + END - 4);
  const heard = sidesOf(await tab.evaluate(SIDES));
  await browser.close();
  await open(page);
  await expectAsInFile(page, heard);
});
