import { describe, expect, it } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import {
  advance,
  advanceUntil,
  DEFAULT_SETTINGS,
  type Mark,
  makePerformance,
  type Performance,
  positionAt,
  startTransport,
  type Timed,
  type Transport,
  type TransportSettings,
  tickOfBar,
  WAKE_SECONDS,
  WINDOW_SECONDS,
  withPerformance,
  withSettings,
} from '#sound';
import { chart, lineNote } from '../line/short.ts';

const CHART = '| C | F | G | C |';

const ENDINGS = '|: C | F |1. G :|2. Am | Dm |';

const perform = (text = CHART): Performance =>
  makePerformance({ chart: chart(text), instrument: STANDARD_GUITAR, feel: 'straight' });

const settings = (more: Partial<TransportSettings> = {}): TransportSettings => ({
  ...DEFAULT_SETTINGS,
  tempo: 120,
  countInBars: 0,
  ...more,
});

interface Run {
  readonly events: readonly Timed[];
  readonly marks: readonly Mark[];
  readonly transport: Transport;
}

/** Wakes the transport up every 25 ms from `from` to `to`, changing it on the way. */
function run(
  start: Transport,
  to: number,
  change: (transport: Transport, now: number) => Transport = (same) => same,
): Run {
  let transport = start;
  const events: Timed[] = [];
  const marks: Mark[] = [];
  for (let i = 0; i * WAKE_SECONDS < to; i++) {
    const now = i * WAKE_SECONDS;
    const step = advance(change(transport, now), now);
    events.push(...step.events);
    marks.push(...step.marks);
    transport = step.transport;
  }
  return { events, marks, transport };
}

/** From the beginning to the end of the chart, and no further. */
const ONCE: Partial<TransportSettings> = { once: true };

/** Moments of the click, seconds. */
const clicks = ({ events }: Pick<Run, 'events'>): readonly number[] =>
  events.filter(({ part }) => part === 'click' || part === 'count').map(({ seconds }) => seconds);

const near = (found: readonly number[], wanted: readonly number[]): void => {
  expect(found.length).toBe(wanted.length);
  for (const [i, moment] of found.entries())
    expect(Math.abs(moment - (wanted[i] ?? 0))).toBeLessThan(1e-6);
};

const grid = (count: number, step: number, from = 0): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + i * step);

describe('the transport', () => {
  it('wakes up every 25 ms and schedules 100 ms ahead ("A tale of two clocks")', () => {
    expect([WAKE_SECONDS, WINDOW_SECONDS]).toEqual([0.025, 0.1]);
    const start = startTransport(perform(), settings(), 0, 10);
    expect(advance(start, 9.89).events).toEqual([]);
    expect(clicks(advance(start, 9.91))).toEqual([10]);
    expect(clicks(advance(start, 10.41))).toEqual([10, 10.5]);
  });

  it('plays every beat once, in time, and then is done', () => {
    const played = run(startTransport(perform(), settings(ONCE), 0, 0), 9);
    near(clicks(played), grid(16, 0.5));
    expect(played.transport.done).toBe(true);
  });

  it('goes round and round, from the cursor to the end and then from the beginning', () => {
    const from = tickOfBar(perform(), 4);
    const played = run(startTransport(perform(), settings(), from, 0), 11.8);
    near(clicks(played), grid(24, 0.5));
    expect(played.marks.map(({ round, tick }) => [round, tick])).toEqual([
      [0, from],
      [1, 0],
      [2, 0],
    ]);
  });

  it('plays looped bars once, where that is asked', () => {
    const loop = { first: 2, last: 3 };
    const played = run(startTransport(perform(), settings({ ...ONCE, loop }), 0, 0), 9);
    near(clicks(played), grid(8, 0.5));
  });

  it('plays just the looped bars, in the order in which they are written, across repeats', () => {
    const loop = { first: 2, last: 4 };
    const performance = makePerformance({
      chart: chart(ENDINGS),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
      loop,
    });
    expect(performance.bars.map(({ written }) => written)).toEqual([1, 2, 3, 1, 2, 4, 5, 2, 3, 4]);
    expect(performance.length).toBe(7 * 3840);
    const start = startTransport(performance, settings({ loop }), 0, 0);
    const bars = run(start, 11.9).events.flatMap(({ event, part }) =>
      part === 'click' && event.start % 3840 === 0 ? [performance.bars[event.start / 3840]] : [],
    );
    expect(bars.map((bar) => bar?.written)).toEqual([2, 3, 4, 2, 3, 4]);
  });

  it('leaves off at the bar line for looped bars that stand behind the end of the chart', () => {
    const loop = { first: 2, last: 4 };
    const query = { instrument: STANDARD_GUITAR, feel: 'straight' } as const;
    const looped = makePerformance({ ...query, chart: chart(ENDINGS), loop });
    const played = run(startTransport(looped, settings(), 0, 0), 6, (transport, now) =>
      now === 1 ? withSettings(transport, settings({ loop })) : transport,
    );
    const round = played.marks.find((mark) => mark.round === 1);
    expect([round?.seconds, round?.tick]).toEqual([2, 7 * 3840]);
    near(clicks(played), grid(clicks(played).length, 0.5));
  });

  it.each([20, 73, 133, 300])('does not drift in ten minutes of a loop at %i', (tempo) => {
    const loop = { first: 1, last: 4 };
    const start = startTransport(perform(), settings({ tempo, loop }), 0, 0);
    const moments = clicks(advanceUntil(start, 599.9));
    expect(moments.length).toBe(Math.ceil((599.9 * tempo) / 60));
    const errors = moments.map((moment, i) => Math.abs(moment - (i * 60) / tempo));
    expect(Math.max(...errors)).toBeLessThan(1e-6);
  });

  it('never gives an event too late, even with the timer 60 ms late', () => {
    let transport = startTransport(perform(), settings(), 0, 0.2);
    for (let now = 0; now < 5; now += WAKE_SECONDS + 0.06) {
      const step = advance(transport, now);
      expect(step.events.every(({ seconds }) => seconds >= now)).toBe(true);
      transport = step.transport;
    }
  });

  it('begins at the cursor', () => {
    const from = tickOfBar(perform(), 3);
    near(clicks(run(startTransport(perform(), settings(ONCE), from, 1), 9)), grid(8, 0.5, 1));
    expect(tickOfBar(perform(), 99)).toBe(0);
  });

  it('counts in, at the tempo, before it begins', () => {
    const played = run(
      startTransport(perform(), settings({ ...ONCE, countInBars: 2 }), 3840, 0),
      20,
    );
    near(clicks(played), grid(8 + 12, 0.5));
    expect(played.events.filter(({ part }) => part === 'count')).toHaveLength(8);
    expect(Math.min(...played.events.flatMap((e) => (e.part === 'bass' ? [e.seconds] : [])))).toBe(
      4,
    );
  });

  it('loops any bars, and begins at them when the cursor is elsewhere', () => {
    const loop = { first: 2, last: 2 };
    const start = startTransport(perform('| C | 3/4 F | G |'), settings({ loop }), 0, 0);
    near(clicks(run(start, 6)), grid(13, 0.5));
    const bass = run(start, 6).events.filter(({ part }) => part === 'bass');
    expect(new Set(bass.map(({ event }) => event.start))).toEqual(new Set([3840, 3840 + 1920]));
  });

  it('plays at a share of the tempo', () => {
    const start = startTransport(perform(), settings({ share: 0.5 }), 0, 0);
    near(clicks(run(start, 3.95)), grid(5, 1));
  });

  it('rises by steps after so many rounds', () => {
    const rise = { by: 60, every: 1, most: 240 };
    const loop = { first: 1, last: 1 };
    const start = startTransport(perform(), settings({ tempo: 60, rise, loop }), 0, 0);
    near(clicks(advanceUntil(start, 8.99)), [
      ...grid(4, 1),
      ...grid(4, 0.5, 4),
      ...grid(4, 1 / 3, 6),
      ...grid(4, 0.25, 6 + 4 / 3),
      ...grid(3, 0.25, 7 + 4 / 3),
    ]);
  });

  it('changes tempo at the next note that is not scheduled, within 100 ms', () => {
    const played = run(startTransport(perform(), settings(), 0, 0), 4, (transport, now) =>
      now === 1 ? withSettings(transport, settings({ tempo: 240 })) : transport,
    );
    // At 1 s everything before 1.075 s is scheduled: from there on twice as fast.
    const turn = 1.075;
    near(clicks(played).slice(0, 5), [0, 0.5, 1, turn + (1.5 - turn) / 2, turn + (2 - turn) / 2]);
    expect(played.marks.at(-1)?.seconds).toBeCloseTo(turn, 9);
    expect(turn - 1).toBeLessThanOrEqual(WINDOW_SECONDS);
  });

  it('takes another loop without losing or doubling a beat', () => {
    const played = run(startTransport(perform(), settings(), 0, 0), 12, (transport, now) =>
      now === 1 ? withSettings(transport, settings({ loop: { first: 1, last: 2 } })) : transport,
    );
    near(clicks(played), grid(25, 0.5).slice(0, clicks(played).length));
    expect(clicks(played).length).toBeGreaterThanOrEqual(24);
    expect(played.marks.map(({ round }) => round)).toContain(2);
  });

  it('turns back at once when it is beyond the end of the new loop', () => {
    const played = run(startTransport(perform(), settings(), 0, 0), 8, (transport, now) =>
      now === 5 ? withSettings(transport, settings({ loop: { first: 1, last: 1 } })) : transport,
    );
    const round = played.marks.find((mark) => mark.round === 1);
    expect(round?.seconds).toBeCloseTo(5.075, 6);
    expect(round?.tick).toBe(0);
  });

  it('takes something else to play in the middle, from the same place', () => {
    const other = perform('| Am | Dm | Em | Am |');
    const played = run(startTransport(perform(), settings(ONCE), 0, 0), 9, (transport, now) =>
      now === 3 ? withPerformance(transport, other) : transport,
    );
    near(clicks(played), grid(16, 0.5));
    const last = played.events.findLast(({ part }) => part === 'bass');
    expect(last?.event.kind === 'note' && last.event.midi % 12).toBe(4);
  });

  it('is the same when nothing changes', () => {
    const start = startTransport(perform(), settings(), 0, 0);
    expect(withSettings(start, start.settings)).toBe(start);
    expect(withPerformance(start, start.performance)).toBe(start);
  });

  it('gives raked strings early enough', () => {
    const performance = makePerformance({
      chart: chart('| N.C. |'),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
      line: [lineNote(2, 5, 960, { rake: true })],
    });
    let transport = startTransport(performance, settings(), 0, 0.2);
    for (let now = 0; now < 2; now += WAKE_SECONDS) {
      const step = advance(transport, now);
      for (const { seconds } of step.events) expect(seconds).toBeGreaterThanOrEqual(now);
      transport = step.transport;
    }
  });

  it('strums fast at a fast tempo: no string later than half its note', () => {
    for (const tempo of [40, 300]) {
      const start = startTransport(perform(), settings({ ...ONCE, tempo }), 0, 0);
      const { events } = advanceUntil(start, 100);
      const late = events.map(({ event, seconds, secondsPerTick }) =>
        event.kind === 'note'
          ? (seconds - event.start * secondsPerTick) / (event.length * secondsPerTick)
          : 0,
      );
      expect(Math.max(...late)).toBeLessThanOrEqual(0.5 + 1e-9);
      expect(Math.max(...late)).toBeGreaterThan(0.05);
    }
  });

  it('has nothing to do with an empty chart', () => {
    const step = advanceUntil(startTransport(perform(''), settings(), 0, 0), 100);
    expect([step.events.length, step.transport.done]).toEqual([0, true]);
  });
});

describe('where the music is', () => {
  const { marks } = run(
    startTransport(perform(), settings({ countInBars: 1, loop: { first: 2, last: 3 } }), 0, 1),
    12,
  );

  it('is known at any moment', () => {
    expect(positionAt(marks, 0.5)).toBeUndefined();
    expect(positionAt(marks, 1.25)).toEqual({ tick: 480, round: -1, counting: true });
    expect(positionAt(marks, 3)).toEqual({ tick: 3840, round: 0, counting: false });
    expect(positionAt(marks, 4)).toEqual({ tick: 5760, round: 0, counting: false });
    expect(positionAt(marks, 7.5)?.tick).toBeCloseTo(4800, 6);
    expect(positionAt(marks, 7.5)?.round).toBe(1);
  });

  it('does not run over the end', () => {
    const once = run(startTransport(perform(), settings(), 0, 0), 9);
    expect(positionAt(once.marks, 100)?.tick).toBe(4 * 3840);
  });
});
