import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import { DEFAULT_MIX, DEFAULT_SETTINGS, makePerformance, withMaster } from '#sound';
import {
  type Device,
  type DeviceEvents,
  type DeviceState,
  type Engine,
  makeEngine,
  type OpenDevice,
  type PlayRequest,
  type ToBand,
  type ToClock,
  WATCH_MILLISECONDS,
} from '#sound/browser';
import { err, ok } from '#theory';
import { chart } from '../../line/short.ts';
import { note } from '../short.ts';

const request: PlayRequest = {
  performance: makePerformance({
    chart: chart('| C | F |'),
    instrument: STANDARD_GUITAR,
    feel: 'straight',
  }),
  settings: { ...DEFAULT_SETTINGS, tempo: 120 },
  from: 0,
};

/** A device that does as it is told, and remembers what it was told. */
interface Fake {
  state: DeviceState;
  now: number;
  allowed: boolean;
  closed: boolean;
  suspended: boolean;
  readonly band: ToBand[];
  readonly clock: ToClock[];
  readonly events: DeviceEvents;
}

let devices: Fake[] = [];
let engine: Engine;
let opens: 'well' | 'blocked' | 'not' = 'well';

const deviceOf = (fake: Fake): Device => ({
  state: () => fake.state,
  now: () => fake.now,
  heard: () => fake.now,
  resume: () => {
    if (fake.allowed && fake.state !== 'gone') fake.state = 'running';
    return Promise.resolve(fake.state === 'running');
  },
  suspend: () => {
    fake.suspended = true;
    return Promise.resolve();
  },
  toBand: (message) => fake.band.push(message),
  toClock: (message) => fake.clock.push(message),
  close: () => {
    fake.closed = true;
  },
});

const open: OpenDevice = (_options, events) => {
  if (opens === 'not') return Promise.resolve(err({ code: 'missing', message: 'No sound here.' }));
  const allowed = opens === 'well';
  const fake: Fake = {
    state: allowed ? 'running' : 'waiting',
    now: 0,
    allowed,
    closed: false,
    suspended: false,
    band: [],
    clock: [],
    events,
  };
  devices.push(fake);
  return Promise.resolve(ok(deviceOf(fake)));
};

const device = (index = 0): Fake => {
  const found = devices[index];
  if (found === undefined) throw new Error(`no device ${index}`);
  return found;
};

const told = (index = 0): readonly string[] => device(index).clock.map(({ kind }) => kind);

const phase = (): string => engine.state().phase;

beforeEach(() => {
  vi.useFakeTimers();
  devices = [];
  opens = 'well';
  engine = makeEngine(STANDARD_GUITAR, DEFAULT_MIX, open);
});

afterEach(() => {
  engine.close();
  vi.useRealTimers();
});

describe('the engine', () => {
  it('opens nothing before it is asked to sound', () => {
    expect([phase(), devices.length]).toEqual(['off', 0]);
    engine.stop();
    engine.setMix(withMaster(DEFAULT_MIX, 0.1));
    expect(devices.length).toBe(0);
  });

  it('plays, and stops', async () => {
    expect(await engine.play(request)).toBe(true);
    expect([phase(), told()]).toEqual(['playing', ['start']]);
    engine.stop();
    expect([phase(), told()]).toEqual(['ready', ['start', 'stop']]);
  });

  it('opens one device, however often it is asked at once', async () => {
    await Promise.all([engine.prepare(), engine.strike([]), engine.play(request)]);
    expect(devices.length).toBe(1);
  });

  it('warms up without a word, whether it may sound or not', async () => {
    opens = 'not';
    await engine.warm();
    expect(engine.state()).toEqual({ phase: 'off' });
    opens = 'blocked';
    await Promise.all([engine.warm(), engine.warm()]);
    expect([phase(), devices.length]).toEqual(['ready', 1]);
    device().allowed = true;
    expect(await engine.play(request)).toBe(true);
    expect(devices.length).toBe(1);
  });

  it('does not begin when it was stopped while the device was opened', async () => {
    const playing = engine.play(request);
    engine.stop();
    await playing;
    expect([phase(), told()]).toEqual(['ready', []]);
  });

  it('tells those who want to know, once for each change', async () => {
    const phases: string[] = [];
    const end = engine.subscribe(() => phases.push(phase()));
    await engine.play(request);
    engine.stop();
    engine.stop();
    end();
    await engine.play(request);
    expect(phases).toEqual(['starting', 'ready', 'playing', 'ready']);
  });

  it('passes on what changes while it plays', async () => {
    await engine.play(request);
    engine.setSettings({ ...request.settings, tempo: 90 });
    engine.setPerformance(request.performance);
    engine.setMix(withMaster(DEFAULT_MIX, 0.2));
    engine.setMix(withMaster(DEFAULT_MIX, 0.2));
    expect(told()).toEqual(['start', 'settings', 'performance']);
    expect(device().band.map(({ kind }) => kind)).toEqual(['mix', 'mix']);
  });

  it('strikes notes without playing', async () => {
    expect(await engine.strike([{ string: 2, note: note(60) }])).toBe(true);
    expect([phase(), device().band.map(({ kind }) => kind)]).toEqual(['ready', ['strike']]);
  });

  it('knows where the music is that is heard', async () => {
    await engine.play(request);
    expect(engine.heard()).toBeUndefined();
    const mark = { seconds: 1, tick: 0, secondsPerTick: 0.5 / 960, round: 0, until: 7680 };
    device().events.fromClock({ run: 1, kind: 'marks', slice: 0, marks: [mark] });
    device().now = 3.75;
    expect(engine.heard()).toMatchObject({ tick: 5280, counting: false, beat: 2.5 });
    expect(engine.heard()?.bar?.written).toBe(2);
    const count = { ...mark, seconds: 4, round: -1 };
    device().events.fromClock({ run: 1, kind: 'marks', slice: 0, marks: [count] });
    device().now = 4.5;
    expect(engine.heard()).toMatchObject({ counting: true, beat: 2 });
    expect(engine.heard()?.bar).toBeUndefined();
  });

  it('counts in the metre of the bar that it begins in', async () => {
    const performance = makePerformance({
      chart: chart('| C | 6/8 F |'),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
    });
    const settings = { ...request.settings, countInBars: 1 };
    await engine.play({ performance, settings, from: 3840 });
    const mark = { seconds: 0, tick: 0, secondsPerTick: 0.5 / 960, round: -1, until: 2880 };
    device().events.fromClock({ run: 1, kind: 'marks', slice: 0, marks: [mark] });
    device().now = 0.5;
    expect(engine.heard(), 'two eighths of 6/8 have passed').toMatchObject({ beat: 3 });
    await engine.play({ performance, settings, from: 0 });
    device().events.fromClock({ run: 2, kind: 'marks', slice: 0, marks: [mark] });
    expect(engine.heard(), 'one quarter of 4/4').toMatchObject({ beat: 2 });
    const loop = { first: 2, last: 2 };
    await engine.play({ performance, settings: { ...settings, loop }, from: 0 });
    device().events.fromClock({ run: 3, kind: 'marks', slice: 0, marks: [mark] });
    expect(engine.heard(), 'a loop begins with its own').toMatchObject({ beat: 3 });
  });

  it('is where the music is when a run has begun later than it was meant', async () => {
    await engine.play(request);
    const mark = { seconds: 1, tick: 0, secondsPerTick: 0.5 / 960, round: 0, until: 7680 };
    const { fromClock } = device().events;
    fromClock({ run: 1, kind: 'marks', slice: 0, marks: [mark] });
    fromClock({ run: 1, kind: 'late', seconds: 0.25 });
    fromClock({ run: 1, kind: 'done', seconds: 5 });
    device().now = 1.75;
    expect(engine.heard()).toMatchObject({ tick: 960 });
    device().now = 5.2;
    expect(engine.heard(), 'it ends as much later').toBeDefined();
    device().now = 5.3;
    expect(engine.heard()).toBeUndefined();
    await engine.play(request);
    fromClock({ run: 2, kind: 'marks', slice: 0, marks: [mark] });
    device().now = 1.5;
    expect(engine.heard(), 'the next run is on time').toMatchObject({ tick: 960 });
  });

  it('takes back what the clock takes back, and ignores what was said of an earlier run', async () => {
    await engine.play(request);
    await engine.play(request);
    const mark = { seconds: 1, tick: 0, secondsPerTick: 0.5 / 960, round: 0, until: 7680 };
    const { fromClock } = device().events;
    fromClock({ run: 1, kind: 'done', seconds: 0 });
    fromClock({ run: 2, kind: 'marks', slice: 0, marks: [mark] });
    fromClock({ run: 2, kind: 'marks', slice: 7, marks: [{ ...mark, seconds: 2, tick: 7000 }] });
    fromClock({ run: 2, kind: 'done', seconds: 2.5 });
    fromClock({ run: 2, kind: 'back', keep: 7 });
    device().now = 3;
    expect([phase(), engine.heard()?.tick]).toEqual(['playing', 3840]);
  });

  it('is ready again when the music has ended, even if nobody looks', async () => {
    await engine.play(request);
    device().events.fromClock({ run: 1, kind: 'done', seconds: 5 });
    device().now = 4.9;
    vi.advanceTimersByTime(WATCH_MILLISECONDS);
    expect(phase()).toBe('playing');
    device().now = 5.1;
    vi.advanceTimersByTime(WATCH_MILLISECONDS);
    expect([phase(), engine.heard()]).toEqual(['ready', undefined]);
  });

  it('lets a device rest that nobody uses, and wakes it up', async () => {
    await engine.prepare();
    vi.advanceTimersByTime(59 * WATCH_MILLISECONDS);
    expect(device().suspended).toBe(false);
    vi.advanceTimersByTime(2 * WATCH_MILLISECONDS);
    expect(device().suspended).toBe(true);
    device().state = 'waiting';
    expect(await engine.play(request)).toBe(true);
  });
});

describe('when there is no sound, the engine', () => {
  it('says what to do when the browser holds it back, and plays when asked again', async () => {
    opens = 'blocked';
    expect(await engine.play(request)).toBe(false);
    expect(engine.state()).toEqual({
      phase: 'blocked',
      message: 'The browser holds the sound back. Press Play once more.',
    });
    device().allowed = true;
    expect(await engine.play(request)).toBe(true);
    expect([phase(), devices.length]).toEqual(['playing', 1]);
  });

  it('says so when no device can be opened', async () => {
    opens = 'not';
    expect(await engine.play(request)).toBe(false);
    expect(engine.state()).toEqual({ phase: 'lost', message: 'No sound here.' });
    opens = 'well';
    expect(await engine.play(request)).toBe(true);
  });

  it('goes on when the device was suspended in the middle', async () => {
    await engine.play(request);
    device().state = 'waiting';
    device().events.changed();
    await vi.advanceTimersByTimeAsync(0);
    expect([phase(), device().state]).toEqual(['playing', 'running']);
  });

  it('says what to do when it may not go on', async () => {
    await engine.play(request);
    Object.assign(device(), { state: 'waiting', allowed: false });
    device().events.changed();
    await vi.advanceTimersByTimeAsync(0);
    expect(phase()).toBe('blocked');
  });

  it('plays on, and says no more, when what held it back lets go by itself', async () => {
    await engine.play(request);
    Object.assign(device(), { state: 'waiting', allowed: false });
    device().events.changed();
    await vi.advanceTimersByTimeAsync(0);
    Object.assign(device(), { state: 'running', allowed: true });
    device().events.changed();
    await vi.advanceTimersByTimeAsync(0);
    expect(engine.state()).toEqual({ phase: 'playing' });
    expect([devices.length, told()]).toEqual([1, ['start']]);
  });

  it('says no more when the browser lets it sound before it is asked again', async () => {
    opens = 'blocked';
    await engine.play(request);
    device().events.changed();
    expect(phase()).toBe('blocked');
    device().state = 'running';
    device().events.changed();
    expect([engine.state(), told()]).toEqual([{ phase: 'ready' }, []]);
  });

  it('opens another device when the one it has is gone, and goes on where it was', async () => {
    await engine.play(request);
    const mark = { seconds: 0, tick: 0, secondsPerTick: 0.5 / 960, round: 0, until: 7680 };
    device().events.fromClock({ run: 1, kind: 'marks', slice: 0, marks: [mark] });
    Object.assign(device(), { now: 1, state: 'gone' });
    device().events.changed();
    await vi.advanceTimersByTimeAsync(0);
    expect([phase(), devices.length, device(0).closed]).toEqual(['playing', 2, true]);
    expect(device(1).clock[0]).toMatchObject({
      kind: 'start',
      from: 1920,
      settings: { countInBars: 0 },
    });
  });

  it('opens another device when the clock of the one it has stands still', async () => {
    await engine.play(request);
    for (let second = 1; second <= 3; second++) {
      device().now = second;
      await vi.advanceTimersByTimeAsync(WATCH_MILLISECONDS);
    }
    expect(devices.length).toBe(1);
    await vi.advanceTimersByTimeAsync(2 * WATCH_MILLISECONDS);
    expect([phase(), devices.length]).toEqual(['playing', 2]);
  });

  it('says so when no other device can be had', async () => {
    await engine.play(request);
    opens = 'not';
    device().state = 'gone';
    device().events.changed();
    await vi.advanceTimersByTimeAsync(0);
    expect(engine.state()).toMatchObject({ phase: 'lost' });
    expect(engine.state().message).toContain('Check that it is connected');
  });
});
