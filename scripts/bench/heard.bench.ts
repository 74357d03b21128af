import type { Page } from '@playwright/test';
import { RATE, RECORDING, SIDES, sidesOf } from '../../e2e/tape.ts';
import { type Measure, percentile, type Row, type Visit } from './bench.ts';

/** Issue 4: the first sound comes within 50 ms of the key; the cursor follows within a frame. */
const FIRST_SOUND = 50;
const FRAME = 1000 / 60;

const CHART = '| Dm7 | G7 | Cmaj7 | A7 |'.repeat(8);

interface Ear {
  /** Moments (`performance.now`) at which silence ended at the loudspeaker. */
  readonly onsets: number[];
  /** Moments at which the cursor went to another chord. */
  readonly moves: number[];
  readonly keys: number[];
  /** Milliseconds from computing a sample to hearing it, as the browser says. */
  latency: number;
}

declare global {
  interface Window {
    bench?: Ear;
  }
}

/** Listens at the loudspeaker and watches the cursor. Runs in the page before anything else. */
const attend = (): void => {
  const ear: Ear = { onsets: [], moves: [], keys: [], latency: 0 };
  window.bench = ear;
  const { connect } = AudioNode.prototype;
  const listenTo = (node: AudioNode): void => {
    const analyser = new AnalyserNode(node.context, { fftSize: 128 });
    Reflect.apply(connect, node, [analyser]);
    const samples = new Float32Array(analyser.fftSize);
    const { port1, port2 } = new MessageChannel();
    let silentSince = 0;
    port1.onmessage = () => {
      analyser.getFloatTimeDomainData(samples);
      const now = performance.now();
      if (samples.some((sample) => Math.abs(sample) > 1e-4)) {
        if (now - silentSince > 60) ear.onsets.push(now);
        silentSince = now;
      }
      const { context } = node;
      if (context instanceof AudioContext) ear.latency = 1000 * context.outputLatency;
      setTimeout(() => port2.postMessage(0));
    };
    port2.postMessage(0);
  };
  Object.defineProperty(AudioNode.prototype, 'connect', {
    value(this: AudioNode, ...given: unknown[]) {
      if (given[0] instanceof AudioDestinationNode) listenTo(this);
      return Reflect.apply(connect, this, given);
    },
  });
  window.addEventListener('keydown', ({ timeStamp }) => ear.keys.push(timeStamp), true);
  new MutationObserver((changes) => {
    const came = changes.some(
      ({ target }) => target instanceof Element && target.getAttribute('aria-current') === 'true',
    );
    if (came) ear.moves.push(performance.now());
  }).observe(document, { subtree: true, attributeFilter: ['aria-current'] });
};

const open = async ({ url, browser }: Visit, listening = true): Promise<Page> => {
  const context = await browser.newContext({
    serviceWorkers: 'block',
    viewport: { width: 1440, height: 900 },
  });
  const page = await context.newPage();
  if (listening) await page.addInitScript(attend);
  const query = new URLSearchParams({ progression: CHART, at: '1.1', position: '5' });
  await page.goto(`${url}#${query}`, { waitUntil: 'networkidle' });
  await page.mouse.move(4, 4);
  await page.mouse.move(8, 8);
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  return page;
};

const earOf = (page: Page): Promise<Ear> =>
  page.evaluate(() => window.bench ?? { onsets: [], moves: [], keys: [], latency: 0 });

const STARTS = 12;

/** From the key to the first sample that is not silence, and to where it would be heard. */
const firstSounds = async (visit: Visit): Promise<readonly Row[]> => {
  const page = await open(visit);
  // The device is opened with the first key, as it is for a person who has done anything before.
  await page.keyboard.press('ArrowRight');
  await page.waitForTimeout(1500);
  const waits: number[] = [];
  let latency = 0;
  for (let i = 0; i < STARTS; i++) {
    await page.keyboard.press('Space');
    await page.waitForTimeout(700);
    await page.keyboard.press('Space');
    await page.waitForTimeout(1500);
    const ear = await earOf(page);
    const pressed = ear.keys.at(-2) ?? Number.NaN;
    waits.push((ear.onsets.find((onset) => onset > pressed) ?? Number.NaN) - pressed);
    latency = ear.latency;
  }
  await page.context().close();
  return [
    {
      name: `first sound after the key, ${STARTS} times: median`,
      figure: percentile(waits, 0.5),
      unit: 'ms',
      limit: FIRST_SOUND,
    },
    { name: 'first sound after the key: worst', figure: Math.max(...waits), unit: 'ms' },
    { name: 'the browser’s own latency beyond that', figure: latency, unit: 'ms' },
  ];
};

const BARS = 16;
const SECONDS_A_BAR = 1;

/** How far the cursor's moves are from a steady grid, and how far behind the click. */
const following = async (visit: Visit): Promise<readonly Row[]> => {
  const page = await open(visit);
  await page.getByRole('textbox', { name: 'Tempo' }).fill('240');
  await page.getByRole('button', { name: 'Levels and speed' }).click();
  await page.getByRole('button', { name: 'Mute the click' }).click();
  await page.getByRole('button', { name: 'Only the click' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForTimeout(1000 * (BARS + 4) * SECONDS_A_BAR);
  const { onsets, moves, latency } = await earOf(page);
  await page.context().close();
  const behind = moves.slice(2, BARS + 2).flatMap((move) => {
    const click = onsets.findLast((onset) => onset <= move + 10);
    return click === undefined ? [] : [move - click - latency];
  });
  const middle = percentile(behind, 0.5);
  return [
    { name: 'cursor behind the sound: median', figure: middle, unit: 'ms' },
    {
      name: `cursor at ${behind.length} changes: 9 in 10 within a frame of that`,
      figure: percentile(
        behind.map((one) => Math.abs(one - middle)),
        0.9,
      ),
      unit: 'ms',
      limit: FRAME,
    },
  ];
};

/** Milliseconds for which the page is kept from doing anything, one after the other. */
const HOLDS = [300, 500, 800, 1500];

/**
 * The longest time between two clicks beyond what the tempo asks for, from the moments at which the
 * samples are computed: the page itself may be the one that is held up.
 */
const stumbles = async (visit: Visit, holds: readonly number[]): Promise<Row> => {
  const context = await visit.browser.newContext({ serviceWorkers: 'block', bypassCSP: true });
  const page = await context.newPage();
  await page.addInitScript({ content: RECORDING });
  const query = new URLSearchParams({ progression: CHART, at: '1.1', position: '5' });
  await page.goto(`${visit.url}#${query}`, { waitUntil: 'networkidle' });
  await page.mouse.move(4, 4);
  await page.mouse.move(8, 8);
  await page.getByRole('textbox', { name: 'Tempo' }).fill('240');
  await page.getByRole('button', { name: 'Levels and speed' }).click();
  await page.getByRole('button', { name: 'Mute the click' }).click();
  await page.getByRole('button', { name: 'Only the click' }).click();
  await page.getByRole('button', { name: 'Mute the count-in' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForTimeout(2000);
  for (const milliseconds of holds) {
    await page.waitForTimeout(300);
    await page.evaluate((length) => {
      const until = performance.now() + length;
      while (performance.now() < until);
    }, milliseconds);
  }
  await page.waitForTimeout(holds.length === 0 ? 7000 : 3000);
  const [left = new Float32Array()] = sidesOf(await page.evaluate<readonly string[]>(SIDES));
  await context.close();
  const onsets = onsetsIn(left);
  const beat = RATE / 4;
  const errors = onsets.slice(1).map((onset, i) => Math.abs(onset - (onsets[i] ?? 0) - beat));
  const busy = holds.length === 0 ? 'page at rest' : `page held up for ${holds.join(', ')} ms`;
  return {
    name: `longest stumble, ${onsets.length} clicks, ${busy}`,
    figure: onsets.length > 16 ? (1000 * Math.max(...errors)) / RATE : Number.NaN,
    unit: 'ms',
    // Clicks and accents rise differently by a sample.
    limit: 2000 / RATE,
  };
};

/** First samples of clicks: where the level passes a threshold after a silence. */
function onsetsIn(samples: Float32Array): readonly number[] {
  const onsets: number[] = [];
  let quiet = RATE;
  for (const [i, value] of samples.entries()) {
    if (Math.abs(value) > 1e-4) {
      if (quiet > RATE / 20) onsets.push(i);
      quiet = 0;
    } else quiet++;
  }
  return onsets;
}

const MINUTES = 3;

/** What the page keeps in memory after minutes of playing, beside what it kept after the first. */
const memory = async (visit: Visit): Promise<readonly Row[]> => {
  // The ear remembers what it hears.
  const page = await open(visit, false);
  const session = await page.context().newCDPSession(page);
  const kept = async (): Promise<number> => {
    // What the first round lets go of may hold something else.
    for (let round = 0; round < 2; round++) await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    return usedSize / 1e6;
  };
  await page.getByRole('textbox', { name: 'Tempo' }).fill('300');
  await page.getByRole('textbox', { name: 'Loop' }).fill('1-4');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForTimeout(60_000);
  const early = await kept();
  await page.waitForTimeout(MINUTES * 60_000);
  const late = await kept();
  await page.context().close();
  return [
    { name: 'kept in memory after a minute of playing', figure: early, unit: 'MB' },
    {
      name: `more than that after ${MINUTES} more minutes`,
      figure: Math.max(0, late - early),
      unit: 'MB',
      limit: 1,
    },
  ];
};

export const measure: Measure = async (visit) => [
  ...(await firstSounds(visit)),
  ...(await following(visit)),
  await stumbles(visit, []),
  await stumbles(visit, HOLDS),
  ...(await memory(visit)),
];
