import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import { playedOf, studyNotes } from '#line';
import { gripsOf, STANDARD_GUITAR } from '#neck';
import {
  advanceUntil,
  DEFAULT_MIX,
  DEFAULT_SETTINGS,
  type GuitarSound,
  loopFor,
  makePerformance,
  pitchOf,
  type RenderQuery,
  renderPerformance,
  renderString,
  startTransport,
  toneAt,
} from '#sound';
import { parseProgression } from '#theory';
import { cents, hertz, note, pitchBy, pitchByLag, RATES, TONES } from '../../tests/sound/short.ts';
import type { Measure, Row, Visit } from './bench.ts';

const FRETS = Array.from({ length: 23 }, (_, fret) => fret);

const worst = (errors: readonly number[]): number => Math.max(...errors.map(Math.abs));

const PLACES = TONES.flatMap((tone) => FRETS.map((fret) => ({ tone, midi: tone.open + fret })));

const pitchRows = (rate: number): readonly Row[] => {
  const theory = PLACES.map(({ tone, midi }) =>
    cents(
      pitchOf(loopFor(hertz(midi), rate, toneAt(tone, { midi })), rate, hertz(midi)),
      hertz(midi),
    ),
  );
  const heard = PLACES.map(({ tone, midi }) => {
    const samples = renderString([note(midi)], tone, rate, { seconds: 0.6 });
    return [
      cents(pitchBy(samples, rate, 0.2, 8192), hertz(midi)),
      cents(pitchByLag(samples, rate, 0.2, hertz(midi)), hertz(midi)),
    ] as const;
  });
  const at = `string pitch at ${rate / 1000} kHz, ${PLACES.length} places, worst`;
  return [
    { name: `${at}: theory`, figure: worst(theory), unit: 'cents', limit: 0.01 },
    { name: `${at}: by pitchy`, figure: worst(heard.map(([a]) => a)), unit: 'cents', limit: 1 },
    { name: `${at}: by lag`, figure: worst(heard.map(([, b]) => b)), unit: 'cents', limit: 1 },
  ];
};

const bendRow = (rate: number): Row => {
  const errors = TONES.flatMap((tone) =>
    [1, 5, 12, 19].flatMap((fret) =>
      [1, 2, 3].map((steps) => {
        const midi = tone.open + fret;
        const bend = [
          { at: 0, semitones: 0 },
          { at: 0.4, semitones: steps },
          { at: 1, semitones: steps },
        ];
        const samples = renderString([note(midi, { bend })], tone, rate);
        const wanted = hertz(midi + steps);
        return cents(pitchByLag(samples, rate, 0.5, wanted), wanted);
      }),
    ),
  );
  return {
    name: `bends at ${rate / 1000} kHz, where they arrive, worst`,
    figure: worst(errors),
    unit: 'cents',
    limit: 3,
  };
};

/** Milliseconds of one processor that a call takes for each second of sound, the best of a few. */
const costOf = (seconds: number, render: () => unknown): number => {
  const takes = Array.from({ length: 6 }, () => {
    const { user, system } = process.cpuUsage();
    render();
    const after = process.cpuUsage();
    return (after.user - user + after.system - system) / 1000 / seconds;
  });
  return Math.min(...takes);
};

const SECONDS = 20;

const stringRow = (): Row => {
  const notes = Array.from({ length: SECONDS }, (_, i) => note(55 + (i % 12), { start: i }));
  const [, , tone] = TONES;
  if (tone === undefined) throw new Error('six strings');
  return {
    name: 'one string: computing a second (300 × real time is 3.33)',
    figure: costOf(SECONDS, () => renderString(notes, tone, 48_000, { seconds: SECONDS })),
    unit: 'ms',
    limit: 1000 / 300,
  };
};

const CHART = '| Cmaj7 | A7b9 | Dm7 G7sus4 | C6/9 / F/G / | Em7 | A7 | Dm7 | G7 |';

/** Everything at once: comp, bass, drums, click and the reading as single notes. */
const backing = (sound: GuitarSound): RenderQuery => {
  const { chart } = parseProgression(CHART);
  const played = playedOf(chart);
  const plan = (index: number) => {
    const slot = played.slots.find((one) => one.index === index);
    if (slot?.harmony.kind !== 'chord') return undefined;
    const [grip] = gripsOf(slot.harmony.chord, STANDARD_GUITAR);
    return grip && { grip };
  };
  const line = studyNotes('singles', played, plan, STANDARD_GUITAR);
  return {
    performance: makePerformance({ chart, instrument: STANDARD_GUITAR, feel: 'sixteen', line }),
    instrument: STANDARD_GUITAR,
    mix: { ...DEFAULT_MIX, sound },
    settings: { ...DEFAULT_SETTINGS, tempo: 120, countInBars: 0 },
    rate: 48_000,
  };
};

const backingRow = (sound: GuitarSound): Row => {
  const query = backing(sound);
  const seconds = renderPerformance(query)[0].length / query.rate;
  return {
    name: `full backing, ${sound} guitar: share of one core`,
    figure: costOf(seconds, () => renderPerformance(query)) / 10,
    unit: '%',
    limit: 5,
  };
};

const driftRow = (): Row => {
  const { performance } = backing('clean');
  const settings = { ...DEFAULT_SETTINGS, tempo: 133, countInBars: 0, loop: { first: 1, last: 8 } };
  const { events } = advanceUntil(startTransport(performance, settings, 0, 0), 600);
  const clicks = events.filter(({ part }) => part === 'click');
  const errors = clicks.map(({ seconds }, i) => seconds - (i * 60) / 133);
  return {
    name: `schedule after ten minutes, ${clicks.length} beats: worst error`,
    figure: worst(errors) * 1e6,
    unit: 'µs',
    limit: 1,
  };
};

/** The general-purpose library one would otherwise use, in the browser that it is made for. */
const TONE_PLACES = [0, 3, 5, 7, 10, 12, 15, 19, 22];
const TONE_SECONDS = 0.6;

const blank = async ({ url, browser }: Visit): Promise<Page> => {
  const page = await browser.newPage();
  const address = new URL('/blank', url).href;
  // Its synthesizer loads a blob as a worklet, which our own pages forbid.
  await page.route(address, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>blank</title>' }),
  );
  await page.goto(address);
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('tone/build/Tone.js') });
  return page;
};

const RENDER_TONE = `async ({ notes, seconds, rate }) => {
  const started = performance.now();
  const buffer = await Tone.Offline(async (context) => {
    const synth = new Tone.PluckSynth({ resonance: 0.98 }).toDestination();
    // Without this its worklet comes too late now and then, and the take is silent.
    await context.workletsAreReady();
    await new Promise((resolve) => setTimeout(resolve, 5));
    for (const [hertz, at] of notes) synth.triggerAttack(hertz, at);
  }, seconds, 1, rate);
  const milliseconds = performance.now() - started;
  const samples = notes.length === 1 ? Array.from(buffer.getChannelData(0)) : [];
  return { milliseconds, samples };
}`;

interface ToneTake {
  readonly milliseconds: number;
  readonly samples: readonly number[];
}

const renderTone = (
  page: Page,
  notes: readonly (readonly [hertz: number, at: number])[],
  seconds: number,
): Promise<ToneTake> =>
  page.evaluate(`(${RENDER_TONE})(${JSON.stringify({ notes, seconds, rate: 48_000 })})`);

const TONE_TAKES = 5;

/** Its worklet may come too late for a take, which is then silent: such a take is made again. Nothing if all are. */
const tonePitch = async (page: Page, wanted: number): Promise<readonly number[]> => {
  for (let take = 0; take < TONE_TAKES; take++) {
    const { samples } = await renderTone(page, [[wanted, 0]], TONE_SECONDS);
    const measured = pitchByLag(Float32Array.from(samples), 48_000, 0.1, wanted);
    if (Number.isFinite(measured)) return [cents(measured, wanted)];
  }
  return [];
};

const tonePitches = async (page: Page): Promise<readonly number[]> => {
  const errors: number[] = [];
  for (const { open } of TONES)
    for (const fret of TONE_PLACES) errors.push(...(await tonePitch(page, hertz(open + fret))));
  return errors;
};

const toneRows = async (visit: Visit): Promise<readonly Row[]> => {
  const page = await blank(visit);
  const errors = await tonePitches(page);
  const notes = Array.from({ length: SECONDS }, (_, i) => [hertz(55 + (i % 12)), i] as const);
  const takes: number[] = [];
  for (let i = 0; i < 4; i++) takes.push((await renderTone(page, notes, SECONDS)).milliseconds);
  await page.close();
  return [
    {
      name: `Tone.js plucked string at 48 kHz, ${errors.length} places that sounded, worst: by lag`,
      figure: worst(errors),
      unit: 'cents',
    },
    {
      name: 'Tone.js plucked string, offline in Chromium: computing a second',
      figure: Math.min(...takes) / SECONDS,
      unit: 'ms',
    },
  ];
};

export const measure: Measure = async (visit) => [
  ...RATES.flatMap(pitchRows),
  ...RATES.map(bendRow),
  stringRow(),
  backingRow('clean'),
  backingRow('driven'),
  driftRow(),
  ...(await toneRows(visit)),
];
