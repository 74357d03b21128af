/** Playing in the browser: what is asked for, what is heard, and what to do when the device fails. */
import { barAt, type PlayedBar } from '#line';
import type { Instrument } from '#neck';
import { beatTicks, type Metre } from '#theory';
import type { Performance } from '../performance.ts';
import type { TransportSettings } from '../setup.ts';
import { tonesOf } from '../tones.ts';
import { countMetre, type Mark, type Position, positionAt } from '../transport.ts';
import type { Mix, Struck } from '../types.ts';
import type { Device, OpenDevice } from './device.ts';
import type { FromClock } from './messages.ts';

export const PHASES = ['off', 'starting', 'ready', 'playing', 'blocked', 'lost'] as const;
/** `blocked`: the browser holds the sound back; `lost`: there is no device that sounds. */
export type Phase = (typeof PHASES)[number];

/** How it stands, with what to do where something is to be done. The same object until it changes. */
export interface EngineState {
  readonly phase: Phase;
  readonly message?: string;
}

/** Where the music is that is heard now. */
export interface Heard extends Position {
  /** Absent while it is counted in. */
  readonly bar?: PlayedBar;
  /** From 1, in the metre's unit, with its fraction; in the count-in, of its first bar on. */
  readonly beat: number;
}

/** What is to be played. */
export interface PlayRequest {
  readonly performance: Performance;
  readonly settings: TransportSettings;
  /** Tick of the performance to begin at. */
  readonly from: number;
}

/** The face of the sound for a page. */
export interface Engine {
  readonly state: () => EngineState;
  /** Calls whenever the state has changed; gives what ends that. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Opens the device ahead of the first sound, and says nothing if it cannot: after the first key or click in the page. */
  readonly warm: () => Promise<void>;
  /** Makes sure that a sound would be heard now. To be called within a key press or click. */
  readonly prepare: () => Promise<boolean>;
  /** Plays from a tick on; what was playing stops. Says whether it sounds. */
  readonly play: (request: PlayRequest) => Promise<boolean>;
  readonly stop: () => void;
  /** What changes while it plays takes effect at the next note that is not scheduled yet. */
  readonly setPerformance: (performance: Performance) => void;
  readonly setSettings: (settings: TransportSettings) => void;
  readonly setMix: (mix: Mix) => void;
  readonly setInstrument: (instrument: Instrument) => void;
  /** Strikes notes now, over whatever is playing. */
  readonly strike: (notes: readonly Struck[]) => Promise<boolean>;
  /** Where the music is that is heard now; undefined while nothing plays. */
  readonly heard: () => Heard | undefined;
  readonly close: () => void;
}

const BLOCKED = 'The browser holds the sound back. Press Play once more.';
const LOST = 'The sound device does not answer. Check that it is connected, then press Play.';
const STATES: Readonly<Record<'off' | 'starting' | 'ready' | 'playing', EngineState>> = {
  off: { phase: 'off' },
  starting: { phase: 'starting' },
  ready: { phase: 'ready' },
  playing: { phase: 'playing' },
};

/** Milliseconds between two looks at the device; standing still at two of them, it has failed. */
export const WATCH_MILLISECONDS = 1000;
const MOST_MARKS = 64;
/** A device that nobody uses rests after so many looks. */
const REST_LOOKS = 60;

/** Everything that changes. */
interface Inside {
  state: EngineState;
  device: Device | undefined;
  opening: Promise<boolean> | undefined;
  mix: Mix;
  instrument: Instrument;
  request: PlayRequest | undefined;
  /** The request has been given to the clock. */
  begun: boolean;
  /** Runs so far; the clock speaks of the last. */
  run: number;
  marks: readonly (Mark & { readonly slice: number })[];
  /** What is counted in. */
  counted: Metre | undefined;
  /** By how much the run is later on the device's clock than its moments, seconds. */
  late: number;
  /** Nothing sounds after this moment of the run. */
  end: number;
  lastNow: number;
  stillLooks: number;
  idleLooks: number;
  timer: ReturnType<typeof setInterval> | undefined;
  readonly listeners: Set<() => void>;
  readonly open: OpenDevice;
}

function become(inside: Inside, state: EngineState): void {
  const { phase, message } = inside.state;
  if (phase === state.phase && message === state.message) return;
  inside.state = state;
  for (const listener of inside.listeners) listener();
}

const isPlaying = ({ request }: Inside): boolean => request !== undefined;

function fromClock(inside: Inside, message: FromClock): void {
  // What was on its way when something else began.
  if (message.run !== inside.run) return;
  if (message.kind === 'done') inside.end = message.seconds;
  else if (message.kind === 'late') inside.late = message.seconds;
  else if (message.kind === 'marks') {
    const marks = message.marks.map((mark) => ({ ...mark, slice: message.slice }));
    inside.marks = [...inside.marks, ...marks].slice(-MOST_MARKS);
  } else {
    inside.marks = inside.marks.filter(({ slice }) => slice < message.keep);
    inside.end = Number.POSITIVE_INFINITY;
  }
}

function finish(inside: Inside): void {
  inside.request = undefined;
  inside.begun = false;
  inside.marks = [];
  inside.end = Number.POSITIVE_INFINITY;
  if (inside.state.phase === 'playing') become(inside, STATES.ready);
}

/** A device that was held back sounds now, and there is nothing to be done any more. */
function waitOver(inside: Inside, device: Device): void {
  const over = inside.state.phase === 'blocked' && device.state() === 'running';
  if (over) become(inside, STATES.ready);
}

/** The device told of a change that nobody here asked for. */
async function changed(inside: Inside): Promise<void> {
  const { device } = inside;
  if (device === undefined) return;
  if (!inside.begun) waitOver(inside, device);
  else if (device.state() === 'gone') await recover(inside);
  else if (!(await device.resume())) become(inside, { phase: 'blocked', message: BLOCKED });
  else become(inside, STATES.playing);
}

async function open(inside: Inside): Promise<boolean> {
  become(inside, STATES.starting);
  const options = { guitar: tonesOf(inside.instrument), mix: inside.mix };
  const opened = await inside.open(options, {
    fromClock: (message) => fromClock(inside, message),
    changed: () => {
      changed(inside);
    },
  });
  inside.opening = undefined;
  if (!opened.ok) {
    become(inside, { phase: 'lost', message: opened.error.message });
    return false;
  }
  inside.device = opened.value;
  inside.timer ??= setInterval(() => look(inside), WATCH_MILLISECONDS);
  return true;
}

function drop(inside: Inside): void {
  inside.device?.close();
  inside.device = undefined;
  inside.begun = false;
  inside.stillLooks = 0;
  inside.marks = [];
}

/** A device that sounds: the one that is there, woken up, or a new one. */
async function prepare(inside: Inside): Promise<boolean> {
  if (inside.device?.state() === 'gone') drop(inside);
  if (inside.device === undefined) {
    inside.opening ??= open(inside);
    if (!(await inside.opening)) return false;
  }
  inside.idleLooks = 0;
  const sounds = inside.device?.state() === 'running' || (await inside.device?.resume()) === true;
  if (!sounds) become(inside, { phase: 'blocked', message: BLOCKED });
  else if (inside.state.phase !== 'playing') become(inside, STATES.ready);
  return sounds;
}

function begin(inside: Inside, request: PlayRequest): void {
  const { device } = inside;
  if (device === undefined) return;
  inside.request = request;
  inside.begun = true;
  inside.run += 1;
  inside.counted = countMetre(request.performance, request.settings, request.from);
  inside.late = 0;
  inside.marks = [];
  inside.end = Number.POSITIVE_INFINITY;
  device.toClock({ kind: 'start', run: inside.run, ...request, now: device.now() });
  become(inside, STATES.playing);
}

async function warm(inside: Inside): Promise<void> {
  if (inside.device !== undefined) return;
  inside.opening ??= open(inside);
  const opened = await inside.opening;
  if (inside.state.phase === 'starting' || !opened)
    become(inside, opened ? STATES.ready : STATES.off);
}

async function play(inside: Inside, request: PlayRequest): Promise<boolean> {
  inside.request = request;
  const sounds = await prepare(inside);
  // Stopped, or asked for something else, while the device was opened.
  if (sounds && inside.request === request) begin(inside, request);
  if (!sounds) inside.request = undefined;
  return sounds;
}

function stop(inside: Inside): void {
  inside.device?.toClock({ kind: 'stop' });
  finish(inside);
}

/** A new device in place of one that failed, and the music from where it was. */
async function recover(inside: Inside): Promise<void> {
  const { request } = inside;
  const from = heard(inside)?.tick ?? request?.from ?? 0;
  drop(inside);
  const again = (await prepare(inside)) && inside.request === request;
  if (again && request !== undefined)
    begin(inside, { ...request, from, settings: { ...request.settings, countInBars: 0 } });
  else if (!again) {
    inside.request = undefined;
    become(inside, { phase: 'lost', message: LOST });
  }
}

/** The device rests when nobody has used it for a while. */
function idle(inside: Inside, device: Device): void {
  inside.idleLooks += 1;
  if (inside.idleLooks === REST_LOOKS) device.suspend();
}

/** The moment of the run that is heard now. */
const heardOf = ({ late }: Inside, device: Device): number => device.heard() - late;

/** Once a second: has the clock moved, and has the music ended? */
function look(inside: Inside): void {
  const { device } = inside;
  if (device === undefined) return;
  if (!isPlaying(inside)) {
    idle(inside, device);
    return;
  }
  const now = device.now();
  const stands = device.state() === 'running' && now === inside.lastNow;
  inside.stillLooks = stands ? inside.stillLooks + 1 : 0;
  inside.lastNow = now;
  if (heardOf(inside, device) > inside.end) finish(inside);
  else if (inside.stillLooks >= 2) recover(inside);
}

function heard(inside: Inside): Heard | undefined {
  const { device, request } = inside;
  if (device === undefined || request === undefined) return undefined;
  const moment = heardOf(inside, device);
  if (moment > inside.end) {
    finish(inside);
    return undefined;
  }
  const position = positionAt(inside.marks, moment);
  if (position === undefined) return undefined;
  const { performance } = request;
  if (position.counting) {
    const { counted } = inside;
    const beat = counted === undefined ? 1 : position.tick / beatTicks(counted) + 1;
    return { ...position, beat };
  }
  const bar = barAt(performance, position.tick);
  if (bar === undefined) return { ...position, beat: 1 };
  return { ...position, bar, beat: (position.tick - bar.start) / beatTicks(bar.metre) + 1 };
}

/** Changes what is playing, or what will play. */
function change(inside: Inside, more: Partial<PlayRequest>): void {
  const { request, device } = inside;
  if (request === undefined) return;
  inside.request = { ...request, ...more };
  const { performance, settings } = more;
  if (performance !== undefined) device?.toClock({ kind: 'performance', performance });
  if (settings !== undefined) device?.toClock({ kind: 'settings', settings });
}

function setInstrument(inside: Inside, instrument: Instrument): void {
  if (instrument === inside.instrument) return;
  inside.instrument = instrument;
  inside.device?.toBand({ kind: 'guitar', guitar: tonesOf(instrument) });
}

function setMix(inside: Inside, mix: Mix): void {
  if (mix === inside.mix) return;
  inside.mix = mix;
  inside.device?.toBand({ kind: 'mix', mix });
}

async function strike(inside: Inside, notes: readonly Struck[]): Promise<boolean> {
  const sounds = await prepare(inside);
  if (sounds) inside.device?.toBand({ kind: 'strike', notes });
  return sounds;
}

function close(inside: Inside): void {
  drop(inside);
  clearInterval(inside.timer);
  inside.timer = undefined;
  finish(inside);
  become(inside, STATES.off);
}

const begun = (instrument: Instrument, mix: Mix, device: OpenDevice): Inside => ({
  state: STATES.off,
  device: undefined,
  opening: undefined,
  mix,
  instrument,
  request: undefined,
  begun: false,
  run: 0,
  counted: undefined,
  late: 0,
  marks: [],
  end: Number.POSITIVE_INFINITY,
  lastNow: -1,
  stillLooks: 0,
  idleLooks: 0,
  timer: undefined,
  listeners: new Set(),
  open: device,
});

/** An engine for an instrument, with a way to open a device. Opens nothing until it is asked to sound. */
export function makeEngine(instrument: Instrument, mix: Mix, device: OpenDevice): Engine {
  const inside = begun(instrument, mix, device);
  return {
    state: () => inside.state,
    subscribe: (listener) => {
      inside.listeners.add(listener);
      return () => inside.listeners.delete(listener);
    },
    warm: () => warm(inside),
    prepare: () => prepare(inside),
    play: (request) => play(inside, request),
    stop: () => stop(inside),
    setPerformance: (performance) => change(inside, { performance }),
    setSettings: (settings) => change(inside, { settings }),
    setMix: (next) => setMix(inside, next),
    setInstrument: (next) => setInstrument(inside, next),
    strike: (notes) => strike(inside, notes),
    heard: () => heard(inside),
    close: () => close(inside),
  };
}
