import { describe, expect, it } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import {
  AHEAD_SECONDS,
  type Ahead,
  aheadOf,
  type BandEvent,
  BLOCK,
  bandEventOf,
  changeAhead,
  DEFAULT_MIX,
  DEFAULT_SETTINGS,
  makeBand,
  makePerformance,
  renderBand,
  schedule,
  scheduleAhead,
  startTransport,
  takeBack,
  tonesOf,
  WAKE_SECONDS,
  withMaster,
  withSettings,
} from '#sound';
import { chart } from '../line/short.ts';

const HOUR = 3600;
const SETTINGS = {
  ...DEFAULT_SETTINGS,
  tempo: 133,
  countInBars: 1,
  loop: { first: 1, last: 4 },
};

const performance = makePerformance({
  chart: chart('| Cmaj7 | A7b9 | Dm7 | G7sus4 G7 |'),
  instrument: STANDARD_GUITAR,
  feel: 'sixteen',
});

const begun = (): Ahead => aheadOf(startTransport(performance, SETTINGS, 0, 0));

describe('an hour of practice', () => {
  it('asks the clock to remember no more than a second, also when the tempo is changed all the time', () => {
    let ahead = begun();
    let most = 0;
    let furthest = 0;
    for (let wake = 0; wake < 10 * HOUR; wake++) {
      const now = wake / 10;
      if (wake % 50 === 0) {
        const settings = { ...SETTINGS, tempo: 100 + (wake % 60) };
        ahead = changeAhead(ahead, now, (transport) => withSettings(transport, settings)).ahead;
      }
      ahead = scheduleAhead(ahead, now).ahead;
      most = Math.max(most, ahead.slices.length + ahead.transport.marks.length);
      furthest = Math.max(furthest, ahead.transport.until - now);
    }
    expect(ahead.transport.pass.round).toBeGreaterThan(400);
    expect(furthest).toBeLessThan(AHEAD_SECONDS + 0.05);
    expect(most).toBeLessThanOrEqual(AHEAD_SECONDS / WAKE_SECONDS + 2);
  });

  it('leaves the band no more to play and to sound after a quarter of it than after a minute', () => {
    const rate = 2000;
    const band = makeBand(tonesOf(STANDARD_GUITAR), withMaster(DEFAULT_MIX, 1), rate);
    const left = new Float32Array(BLOCK);
    const right = new Float32Array(BLOCK);
    let ahead = begun();
    const most = { queue: 0, hits: 0 };
    const early = { ...most };
    for (let now = 0; now < HOUR / 4; now = band.frame / rate) {
      const step = scheduleAhead(ahead, now);
      ahead = step.ahead;
      const events: readonly BandEvent[] = step.given.flatMap(({ slice, events: given }) =>
        given.map((event) => ({ ...bandEventOf(event, rate, 0), slice })),
      );
      schedule(band, events);
      renderBand(band, left, right);
      most.queue = Math.max(most.queue, band.queue.length);
      most.hits = Math.max(most.hits, ...band.parts.map(({ hits }) => hits.length));
      if (now < 60) Object.assign(early, most);
    }
    expect(early.queue).toBeGreaterThan(0);
    expect(most).toEqual(early);
    takeBack(band, 0);
    expect(band.queue).toEqual([]);
    for (let i = 0; i < (20 * rate) / BLOCK; i++) renderBand(band, left, right);
    const sounding = band.parts.flatMap(({ hits, voices }) => [
      ...hits,
      ...voices.filter((voice) => voice.sounding),
    ]);
    expect(sounding).toEqual([]);
  }, 30_000);
});
