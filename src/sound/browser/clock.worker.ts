/**
 * The clock: a thread of its own that wakes up by its timer and schedules what is due, so that
 * neither a busy nor a hidden page makes the music stumble.
 */
import { type Ahead, aheadOf, changeAhead, type Given, scheduleAhead } from '../ahead.ts';
import { bandEventOf } from '../render.ts';
import { frameOf } from '../render-string.ts';
import {
  startTransport,
  type Transport,
  WAKE_SECONDS,
  withPerformance,
  withSettings,
} from '../transport.ts';
import type { BandToClock, Begins, ClockToBand, FromClock, ToClock } from './messages.ts';

/** From the key to the first event: time for two messages. */
const START_SECONDS = 0.02;

/** The music begins at a sample: what is heard is then, sample for sample, what a file of it holds. */
const atSample = (seconds: number): number =>
  band === undefined ? seconds : Math.ceil(seconds * band.rate) / band.rate;

/** What is heard of the audio clock is not believed for longer: the device may have stopped. */
const STALE_SECONDS = 0.2;

let band: { readonly port: MessagePort; readonly rate: number } | undefined;
let ahead: Ahead | undefined;
let run = 0;
/** By how much the run is later on the audio clock than it was meant, seconds. */
let late = 0;
let heard = { seconds: 0, at: 0 };

const tell = (message: FromClock): void => self.postMessage(message);
const direct = (message: ClockToBand): void => band?.port.postMessage(message);

/** The audio clock now: as last heard, and as long ago as that is. */
function audioNow(): number {
  const since = (Date.now() - heard.at) / 1000;
  return heard.seconds + Math.min(STALE_SECONDS, Math.max(0, since));
}

/** The moment of the run. */
const now = (): number => audioNow() - late;

const eventsOf = ({ slice, events }: Given, rate: number, semitones: number) =>
  events.map((event) => ({ ...bandEventOf(event, rate, semitones), slice }));

/** The band first and in one message, for what is due next is due in a few milliseconds. */
function give(given: readonly Given[], { settings }: Transport, begins?: Begins): void {
  const rate = band?.rate ?? 1;
  const events = given.flatMap((one) => eventsOf(one, rate, settings.semitones));
  if (events.length > 0) direct({ kind: 'events', events, ...(begins && { begins }) });
  for (const { slice, marks } of given)
    if (marks.length > 0) tell({ kind: 'marks', run, slice, marks });
}

const endOf = ({ anchor, pass }: Transport): number =>
  anchor.seconds + (pass.to - anchor.tick) * anchor.perTick;

function wake(begins?: Begins): void {
  if (ahead === undefined || ahead.transport.done) return;
  const step = scheduleAhead(ahead, now());
  ahead = step.ahead;
  const { transport } = ahead;
  give(step.given, transport, begins);
  if (transport.done) tell({ kind: 'done', run, seconds: endOf(transport) });
}

function change(how: (transport: Transport) => Transport): void {
  if (ahead === undefined) return;
  const changed = changeAhead(ahead, now(), how);
  if (changed.ahead === ahead) return;
  ahead = changed.ahead;
  direct({ kind: 'back', keep: changed.keep });
  tell({ kind: 'back', run, keep: changed.keep });
  wake();
}

function start(message: ToClock & { readonly kind: 'start' }): void {
  run = message.run;
  late = 0;
  if (message.now > now()) heard = { seconds: message.now, at: Date.now() };
  direct({ kind: 'silence' });
  const { performance, settings, from } = message;
  const begin = atSample(now() + START_SECONDS);
  ahead = aheadOf(startTransport(performance, settings, from, begin));
  wake({ run, frame: frameOf(begin, band?.rate ?? 1) });
}

function delay(seconds: number): void {
  late = seconds;
  tell({ kind: 'late', run, seconds });
}

function listen(port: MessagePort, rate: number): void {
  band = { port, rate };
  port.onmessage = ({ data }: MessageEvent<BandToClock>) => {
    if (data.kind === 'now') heard = data;
    else if (data.run === run) delay(data.seconds);
  };
}

function follow(message: ToClock): void {
  switch (message.kind) {
    case 'band':
      listen(message.port, message.rate);
      return;
    case 'start':
      start(message);
      return;
    case 'settings':
      change((transport) => withSettings(transport, message.settings));
      return;
    case 'performance':
      change((transport) => withPerformance(transport, message.performance));
      return;
    case 'stop':
      ahead = undefined;
      direct({ kind: 'silence' });
  }
}

self.onmessage = ({ data }: MessageEvent<ToClock>) => follow(data);
setInterval(() => wake(), WAKE_SECONDS * 1000);
