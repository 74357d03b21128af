/**
 * The clock: a thread of its own that wakes up by its timer and schedules what is due, so that
 * neither a busy nor a hidden page makes the music stumble.
 */
import { bandEventOf } from '../render.ts';
import {
  type Advanced,
  advance,
  startTransport,
  type Transport,
  WAKE_SECONDS,
  withPerformance,
  withSettings,
} from '../transport.ts';
import type { BandToClock, ClockToBand, FromClock, ToClock } from './messages.ts';

/** From the key to the first event: time for two messages. */
const START_SECONDS = 0.02;

let band: { readonly port: MessagePort; readonly rate: number } | undefined;
let transport: Transport | undefined;
/** The audio clock as last heard, seconds. */
let heard = 0;

const tell = (message: FromClock): void => self.postMessage(message);
const direct = (message: ClockToBand): void => band?.port.postMessage(message);

function send({ events, marks }: Advanced, { settings }: Transport): void {
  const rate = band?.rate ?? 1;
  const due = events.map((event) => bandEventOf(event, rate, settings.semitones));
  if (due.length > 0) direct({ kind: 'events', events: due });
  if (marks.length > 0) tell({ kind: 'marks', marks });
}

function wake(): void {
  if (transport === undefined) return;
  const step = advance(transport, heard);
  transport = step.transport;
  send(step, transport);
  if (!transport.done) return;
  const { anchor, pass } = transport;
  tell({ kind: 'done', seconds: anchor.seconds + (pass.to - anchor.tick) * anchor.perTick });
  transport = undefined;
}

function listen(port: MessagePort, rate: number): void {
  band = { port, rate };
  port.onmessage = ({ data }: MessageEvent<BandToClock>) => {
    heard = data.seconds;
  };
}

function follow(message: ToClock): void {
  switch (message.kind) {
    case 'band':
      listen(message.port, message.rate);
      return;
    case 'start':
      heard = Math.max(heard, message.now);
      direct({ kind: 'silence' });
      transport = startTransport(
        message.performance,
        message.settings,
        message.from,
        heard + START_SECONDS,
      );
      wake();
      return;
    case 'settings':
      transport = transport && withSettings(transport, message.settings);
      return;
    case 'performance':
      transport = transport && withPerformance(transport, message.performance);
      return;
    case 'stop':
      transport = undefined;
      direct({ kind: 'silence' });
  }
}

self.onmessage = ({ data }: MessageEvent<ToClock>) => follow(data);
setInterval(wake, WAKE_SECONDS * 1000);
