/** The sound device behind a narrow face: what Web Audio does, and nothing of what is played. */
import { err, ok, type Result } from '#theory';
import ClockWorker from './clock.worker.ts?worker';
import type { BandOptions, FromClock, ToBand, ToClock } from './messages.ts';
import bandUrl from './worklet.ts?worker&url';

export type DeviceState = 'running' | 'waiting' | 'gone';

/** A device that is open. Times in seconds of its own clock. */
export interface Device {
  readonly state: () => DeviceState;
  /** What is computed now. */
  readonly now: () => number;
  /** What is heard now. */
  readonly heard: () => number;
  /** Asks the browser to let it sound; says whether it does. */
  readonly resume: () => Promise<boolean>;
  readonly suspend: () => Promise<void>;
  readonly toBand: (message: ToBand) => void;
  readonly toClock: (message: ToClock) => void;
  readonly close: () => void;
}

/** What a device calls. */
export interface DeviceEvents {
  readonly fromClock: (message: FromClock) => void;
  /** Its state has changed, or it has failed. */
  readonly changed: () => void;
}

/** Why there is no sound, in words for people. */
export type DeviceError = { readonly code: 'missing' | 'refused'; readonly message: string };

export type OpenDevice = (
  options: BandOptions,
  events: DeviceEvents,
) => Promise<Result<Device, DeviceError>>;

const REFUSED =
  'The sound could not be started. Check that a sound device is connected, then press Play.';

/** A browser that will not let a page sound says nothing; it is given so long. */
const RESUME_MILLISECONDS = 600;

const STATES: Readonly<Record<string, DeviceState>> = { running: 'running', closed: 'gone' };

const stateOf = (context: AudioContext): DeviceState => STATES[context.state] ?? 'waiting';

/** What comes out of the loudspeaker now: the browser's own account where it has one, else an estimate. */
function heardNow(context: AudioContext): number {
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
  const since = (performance.now() - performanceTime) / 1000;
  // While it is suspended its account grows old: never more than what has been computed.
  if (performanceTime > 0) return Math.min(context.currentTime, contextTime + since);
  return context.currentTime - (context.outputLatency || context.baseLatency || 0);
}

const soon = (): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, RESUME_MILLISECONDS));

async function resume(context: AudioContext): Promise<boolean> {
  if (context.state === 'closed') return false;
  // A refused resume neither resolves nor fails.
  await Promise.race([context.resume().catch(() => undefined), soon()]);
  return context.state === 'running';
}

/** Lets clock and band talk without the page. */
function introduce(node: AudioWorkletNode, clock: Worker, rate: number): void {
  const { port1, port2 } = new MessageChannel();
  const toBand: ToBand = { kind: 'clock', port: port1 };
  const toClock: ToClock = { kind: 'band', port: port2, rate };
  node.port.postMessage(toBand, [port1]);
  clock.postMessage(toClock, [port2]);
}

async function makeNode(context: AudioContext, options: BandOptions): Promise<AudioWorkletNode> {
  await context.audioWorklet.addModule(bandUrl);
  return new AudioWorkletNode(context, 'band', {
    numberOfInputs: 0,
    outputChannelCount: [2],
    processorOptions: options,
  });
}

function watch(
  context: AudioContext,
  node: AudioWorkletNode,
  clock: Worker,
  events: DeviceEvents,
): void {
  clock.onmessage = ({ data }: MessageEvent<FromClock>) => events.fromClock(data);
  context.addEventListener('statechange', events.changed);
  context.addEventListener('error', events.changed);
  node.addEventListener('processorerror', () => {
    // Nothing can follow from a band that failed: the device counts as gone.
    context.close().catch(() => undefined);
  });
}

function deviceOf(context: AudioContext, node: AudioWorkletNode, clock: Worker): Device {
  return {
    state: () => stateOf(context),
    now: () => context.currentTime,
    heard: () => heardNow(context),
    resume: () => resume(context),
    suspend: () => context.suspend().catch(() => undefined),
    toBand: (message) => node.port.postMessage(message),
    toClock: (message) => clock.postMessage(message),
    close: () => {
      clock.terminate();
      context.close().catch(() => undefined);
    },
  };
}

/** Opens the browser's sound device. Best within a key press or click: some browsers insist. */
export const openDevice: OpenDevice = async (options, events) => {
  if (typeof AudioContext !== 'function' || typeof AudioWorkletNode !== 'function')
    return err({ code: 'missing', message: 'This browser cannot compute sound; a newer one can.' });
  try {
    const context = new AudioContext({ latencyHint: 'interactive' });
    // Asked at once, while the key press still counts; whoever needs it asks again and waits.
    context.resume().catch(() => undefined);
    const node = await makeNode(context, options);
    node.connect(context.destination);
    const clock = new ClockWorker();
    introduce(node, clock, context.sampleRate);
    watch(context, node, clock, events);
    return ok(deviceOf(context, node, clock));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return err({ code: 'refused', message: `${REFUSED} (${reason})` });
  }
};
