import { describe, expect, it } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import {
  AHEAD_SECONDS,
  type Ahead,
  advanceUntil,
  aheadOf,
  changeAhead,
  DEFAULT_MIX,
  DEFAULT_SETTINGS,
  type Given,
  makeBand,
  makePerformance,
  schedule,
  scheduleAhead,
  startTransport,
  type Transport,
  takeBack,
  tonesOf,
  WINDOW_SECONDS,
  withSettings,
} from '#sound';
import { chart } from '../line/short.ts';
import { note } from './short.ts';

const SETTINGS = { ...DEFAULT_SETTINGS, tempo: 120, countInBars: 0 };

const started = (): Transport =>
  startTransport(
    makePerformance({
      chart: chart('| C | F | G | C |'),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
    }),
    SETTINGS,
    0,
    0,
  );

const clicks = (given: readonly Given[]): readonly number[] =>
  given.flatMap(({ events }) =>
    events.flatMap(({ part, seconds }) => (part === 'click' ? [Number(seconds.toFixed(6))] : [])),
  );

const faster = (transport: Transport): Transport =>
  withSettings(transport, { ...SETTINGS, tempo: 240 });

/** What stays given after a change at `now`, and what is given then. */
function changedAt(now: number): { readonly ahead: Ahead; readonly given: readonly Given[] } {
  const before = scheduleAhead(aheadOf(started()), now);
  const { ahead, keep } = changeAhead(before.ahead, now, faster);
  const after = scheduleAhead(ahead, now);
  const kept = before.given.filter(({ slice }) => slice < keep);
  return { ahead: after.ahead, given: [...kept, ...after.given] };
}

describe('scheduling ahead', () => {
  it('gives away a second, in slices, each once', () => {
    const first = scheduleAhead(aheadOf(started()), -0.6);
    expect(clicks(first.given)).toEqual([0]);
    expect(first.given.map(({ slice }) => slice)).toEqual(first.given.map((_, i) => i));
    expect(first.ahead.transport.until).toBeGreaterThanOrEqual(AHEAD_SECONDS - 0.6);
    const second = scheduleAhead(first.ahead, -0.3);
    expect(clicks(second.given)).toEqual([0.5]);
    expect(scheduleAhead(second.ahead, -0.3).given).toEqual([]);
  });

  it('gives away the same as a transport that looks only as far as it has to', () => {
    const all = scheduleAhead(aheadOf(started()), 7.6);
    expect(clicks(all.given)).toEqual(clicks([{ slice: 0, ...advanceUntil(started(), 8.6) }]));
  });

  it('survives 950 ms without waking up', () => {
    const first = scheduleAhead(aheadOf(started()), 0.1);
    expect(clicks(first.given)).toEqual([0, 0.5, 1]);
    expect(clicks(scheduleAhead(first.ahead, 1.05).given)).toEqual([1.5, 2]);
  });

  it('takes a change of tempo within the window all the same', () => {
    const { given } = changedAt(0.35);
    // The turn comes at the first slice after 0.425 s: the beat at 0.5 s is already faster.
    const [, second = 0, third = 0] = clicks(given);
    expect(second).toBeLessThan(0.5);
    expect(third - second).toBeCloseTo(0.25, 5);
    const turn = given.flatMap(({ marks }) => marks).at(-1)?.seconds ?? 0;
    expect(turn - 0.35).toBeGreaterThan(0.05);
    expect(turn - 0.35).toBeLessThanOrEqual(WINDOW_SECONDS + 1e-9);
  });

  it('loses and doubles nothing when it takes back', () => {
    const settings = { ...SETTINGS, loop: { first: 1, last: 4 } };
    let ahead = aheadOf(started());
    let kept: readonly Given[] = [];
    for (let i = 0; i < 240; i++) {
      const now = i * 0.025;
      if (i % 7 === 0) {
        const changed = changeAhead(ahead, now, (transport) =>
          withSettings(transport, i % 2 === 0 ? settings : SETTINGS),
        );
        ahead = changed.ahead;
        kept = kept.filter(({ slice }) => slice < changed.keep);
      }
      const step = scheduleAhead(ahead, now);
      ahead = step.ahead;
      kept = [...kept, ...step.given];
    }
    const moments = clicks(kept);
    expect(moments).toEqual(moments.map((_, i) => i / 2));
    expect(moments.length).toBeGreaterThanOrEqual(12);
  });

  it('is the same when nothing changes', () => {
    const { ahead } = scheduleAhead(aheadOf(started()), 1);
    expect(changeAhead(ahead, 1, (same) => same).ahead).toBe(ahead);
  });

  it('takes back from the band what is still to come, but not what was struck by hand', () => {
    const band = makeBand(tonesOf(STANDARD_GUITAR), DEFAULT_MIX, 48_000);
    const event = { kind: 'note', frame: 100, part: 'line', string: 1, note: note(64) } as const;
    schedule(band, [event, { ...event, slice: 3 }, { ...event, slice: 4 }, { ...event, slice: 5 }]);
    takeBack(band, 4);
    expect(band.queue.map(({ slice }) => slice)).toEqual([undefined, 3]);
  });
});
