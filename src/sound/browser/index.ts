/** What is heard, in a browser: the device, the engine that plays on it, and WAV files. */
import type { Instrument } from '#neck';
import type { Mix } from '../types.ts';
import { openDevice } from './device.ts';
import { type Engine, makeEngine } from './engine.ts';

/** An engine on the browser's own sound device. Opens nothing until it is asked to sound. */
export const browserEngine = (instrument: Instrument, mix: Mix): Engine =>
  makeEngine(instrument, mix, openDevice);

export type { Device, DeviceError, DeviceEvents, DeviceState, OpenDevice } from './device.ts';
export {
  type Engine,
  type EngineState,
  type Heard,
  makeEngine,
  PHASES,
  type Phase,
  type PlayRequest,
  WATCH_MILLISECONDS,
} from './engine.ts';
export type { FromClock, ToBand, ToClock } from './messages.ts';
export { MOST_WAV_SECONDS, type WavError, type WavWatch, wavFile, wavSeconds } from './wav-file.ts';
