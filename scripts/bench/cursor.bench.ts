import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from '@playwright/test';
import { type Measure, percentile, type Row, type Visit } from './bench.ts';
import { type Phases, phasesOfKeys, type Work, workPerKey } from './trace.ts';

/** Issue 2, section 6: the work of one cursor move, over 500 moves on a progression of 64 bars. */
const MOVES = 500;
const BARS = 64;
const KEYS_A_SECOND = 30;
const TAPS = 120;
const TAPS_A_SECOND = 6;

const CELLS = BARS * 2;

const ROOTS = ['C', 'F', 'Bb', 'Eb', 'Ab', 'Db', 'F#', 'B', 'E', 'A', 'D', 'G'];
const QUALITIES = ['maj7', 'm7', '7b9', '7sus4', 'm7b5', '9', '6', 'm9', 'dim7', '7#9', '', 'm'];

/** Steps of 5 and of 7 go round all twelve: no two chords are alike, and none like the one before. */
const chordAt = (n: number): string =>
  `${ROOTS[(n * 5) % 12]}${QUALITIES[(n * 7 + Math.floor(n / 12)) % 12]}`;

const PROGRESSION = Array.from(
  { length: BARS },
  (_, bar) => `| ${chordAt(bar * 2)} ${chordAt(bar * 2 + 1)} |${bar % 4 === 3 ? '\n' : ''}`,
)
  .join(' ')
  .replaceAll('| |', '|');

const addressOf = (url: string): string => {
  const query = new URLSearchParams({ progression: PROGRESSION, at: '1.1', position: '5' });
  return `${url}#${query}`;
};

const cursorAt = (page: Page): Promise<string | null> =>
  page.locator('[data-chord-cell][aria-current="true"]').getAttribute('data-at');

const open = async ({ url, browser }: Visit, slowdown: number): Promise<Page> => {
  const context = await browser.newContext({
    serviceWorkers: 'block',
    viewport: { width: 1440, height: 900 },
  });
  const page = await context.newPage();
  await page.goto(addressOf(url), { waitUntil: 'networkidle' });
  await page.locator('[data-chord-cell]').first().click();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  return page;
};

/** To the last chord and back, as often as it takes: the key held down at each step. */
const keyOf = (move: number): string =>
  Math.floor(move / (CELLS - 1)) % 2 === 0 ? 'ArrowRight' : 'ArrowLeft';

const hold = async (page: Page, moves: number): Promise<void> => {
  const begin = performance.now();
  for (let move = 0; move < moves; move++) {
    const key = keyOf(move);
    if (move > 0 && keyOf(move - 1) !== key) await page.keyboard.up(keyOf(move - 1));
    await page.keyboard.down(key);
    await sleep(begin + ((move + 1) * 1000) / KEYS_A_SECOND - performance.now());
  }
  await page.keyboard.up(keyOf(moves - 1));
};

/** As `hold`, each key let go at once: all that waits while a key is held down is done with every move. */
const tap = async (page: Page, moves: number): Promise<void> => {
  const begin = performance.now();
  for (let move = 0; move < moves; move++) {
    await page.keyboard.press(keyOf(move));
    await sleep(begin + ((move + 1) * 1000) / TAPS_A_SECOND - performance.now());
  }
};

const expectMoved = async (page: Page): Promise<void> => {
  const cells = await page.locator('[data-chord-cell]').count();
  if (cells !== CELLS) throw new Error(`${cells} chords in the lane, not ${CELLS}`);
  if ((await cursorAt(page)) === '1.1') throw new Error('the arrow keys did not move the cursor');
};

const CATEGORIES = ['devtools.timeline', 'disabled-by-default-devtools.timeline'];

const traceOfMoves = async (visit: Visit, slowdown: number): Promise<string> => {
  const page = await open(visit, slowdown);
  await hold(page, 20);
  await expectMoved(page);
  await page.keyboard.press('Home');
  await visit.browser.startTracing(page, { categories: CATEGORIES });
  await hold(page, MOVES);
  const trace = await visit.browser.stopTracing();
  await page.context().close();
  return trace.toString();
};

const workOfMoves = (trace: string, moves = MOVES): readonly Work[] => {
  const work = workPerKey(trace);
  if (work.length < moves) throw new Error(`${work.length} moves in the trace, not ${moves}`);
  return work;
};

const traceOfTaps = async (visit: Visit): Promise<string> => {
  const page = await open(visit, 1);
  await tap(page, 5);
  await expectMoved(page);
  await visit.browser.startTracing(page, { categories: CATEGORIES });
  await tap(page, TAPS);
  const trace = await visit.browser.stopTracing();
  await page.context().close();
  return trace.toString();
};

/** A page that changes one word by every key: what the machine and Chromium take in any case. */
const BARE = `<p style="contain: strict; height: 2em">0</p><script>
  let presses = 0;
  onkeydown = () => { document.querySelector('p').firstChild.data = String(++presses); };
</script>`;

const traceOfBare = async ({ browser }: Visit): Promise<string> => {
  const page = await browser.newPage();
  await page.setContent(BARE);
  await browser.startTracing(page, { categories: CATEGORIES });
  await hold(page, TAPS);
  const trace = await browser.stopTracing();
  if ((await page.locator('p').textContent()) === '0') throw new Error('no key came to the page');
  await page.close();
  return trace.toString();
};

const passedRows = (told: string, work: readonly Work[]): readonly Row[] =>
  [0.5, 0.95].map((share) => ({
    name: `${told}: ${share === 0.5 ? 'median' : '95th percentile'}`,
    figure: percentile(
      work.map(({ passed }) => passed),
      share,
    ),
    unit: 'ms',
  }));

/** Milliseconds in which the question that notes the frames holds some up itself. */
const ASKING = 500;

/** Frames that came more than half a frame late while `during` ran, at 60 a second. */
const missedFrames = async (page: Page, during: () => Promise<void>): Promise<number> => {
  const frames = page.evaluate(
    () =>
      new Promise<number[]>((resolve) => {
        const times: number[] = [];
        const note = (time: number) => {
          times.push(time);
          if (document.body.hasAttribute('data-stop')) resolve(times);
          else requestAnimationFrame(note);
        };
        requestAnimationFrame(note);
      }),
  );
  await sleep(ASKING);
  await during();
  await page.evaluate(() => document.body.setAttribute('data-stop', ''));
  const all = await frames;
  const list = all.filter((time) => time - (all[0] ?? time) > ASKING / 2);
  return list.filter((time, i) => i > 0 && time - (list[i - 1] ?? time) > 1500 / 60).length;
};

/** `used`: after some moves, as the work of a move is measured; else of a page that was just opened. */
const missed = async (visit: Visit, moves: number, used = true): Promise<number> => {
  const page = await open(visit, 1);
  if (used) {
    await hold(page, 20);
    await page.keyboard.press('Home');
  }
  const count = await missedFrames(page, () => (moves === 0 ? sleep(4000) : hold(page, moves)));
  await page.context().close();
  return count;
};

/** What the issue names as the work of a move; the rest is the browser's own housekeeping. */
const NAMED = ['script', 'style', 'layout', 'paint'];

const namedRows = (keys: readonly Phases[], limit: number): readonly Row[] => {
  const named = keys.map((phases) =>
    NAMED.reduce((sum, phase) => sum + (phases.get(phase) ?? 0), 0),
  );
  const name = '  script, style, layout and paint alone';
  return [
    { name: `${name}: median`, figure: percentile(named, 0.5), unit: 'ms' },
    { name: `${name}: 95th percentile`, figure: percentile(named, 0.95), unit: 'ms', limit },
    ...[...(keys[0]?.keys() ?? [])].map((phase) => ({
      name: `  mean of ${phase}`,
      figure: keys.reduce((sum, phases) => sum + (phases.get(phase) ?? 0), 0) / keys.length,
      unit: 'ms',
    })),
  ];
};

/** A frame at 60 a second, ms. */
const FRAME = 1000 / 60;

const rowsFor = async (visit: Visit, slowdown: number, limit: number): Promise<readonly Row[]> => {
  const trace = await traceOfMoves(visit, slowdown);
  const work = workOfMoves(trace);
  const passed = work.map((one) => one.passed);
  const worked = work.map((one) => one.worked);
  const told = slowdown === 1 ? 'one cursor move' : `one cursor move, CPU ${slowdown}× slower`;
  return [
    { name: `${told}: median`, figure: percentile(passed, 0.5), unit: 'ms' },
    { name: `${told}: 95th percentile`, figure: percentile(passed, 0.95), unit: 'ms', limit },
    // Less than the time that passed when other programs wanted the processor too.
    { name: '  on the processor: median', figure: percentile(worked, 0.5), unit: 'ms' },
    { name: '  on the processor: 95th percentile', figure: percentile(worked, 0.95), unit: 'ms' },
    ...namedRows(phasesOfKeys(trace), limit),
    {
      name: `  moves of ${MOVES} that took more than a frame`,
      figure: passed.filter((time) => time > FRAME).length,
      unit: '',
    },
  ];
};

export const measure: Measure = async (visit) => [
  ...passedRows('a bare page, one word by key', workOfMoves(await traceOfBare(visit), TAPS)),
  ...passedRows('one move, the key let go', workOfMoves(await traceOfTaps(visit), TAPS)),
  ...(await rowsFor(visit, 1, 8)),
  ...(await rowsFor(visit, 4, 33)),
  { name: 'frames missed in 4 s at rest', figure: await missed(visit, 0), unit: '' },
  {
    name: 'frames missed in 120 moves, 30 a second',
    figure: await missed(visit, 120),
    unit: '',
    limit: 0,
  },
  {
    name: '  of a page just opened',
    figure: await missed(visit, 120, false),
    unit: '',
    limit: 0,
  },
];
