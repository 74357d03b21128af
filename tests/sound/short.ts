/** Short notations and measurements for the sound tests. */
import { PitchDetector } from 'pitchy';
import { STANDARD_GUITAR } from '#neck';
import { renderString, type StringNote, type StringTone, tonesOf } from '#sound';

export const RATES = [44_100, 48_000] as const;

export const TONES = tonesOf(STANDARD_GUITAR);

/** The tone of a string of a standard guitar, from 1. */
export function tone(string: number): StringTone {
  const found = TONES[string - 1];
  if (found === undefined) throw new Error(`no string ${string}`);
  return found;
}

export const hertz = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

export const cents = (measured: number, wanted: number): number =>
  1200 * Math.log2(measured / wanted);

/** A note of one second from second 0. */
export const note = (midi: number, more: Partial<StringNote> = {}): StringNote => ({
  start: 0,
  length: 1,
  midi,
  force: 0.7,
  attack: 'pick',
  ...more,
});

/** What string 3 sounds when these notes are played on it. */
export const played = (notes: readonly StringNote[], rate = 48_000): Float32Array<ArrayBuffer> =>
  renderString(notes, tone(3), rate);

/** Hz in a window of samples that begins at a second, by pitchy. */
export function pitchBy(samples: Float32Array, rate: number, second: number, size = 4096): number {
  const from = Math.round(second * rate);
  const [pitch] = PitchDetector.forFloat32Array(size).findPitch(
    samples.slice(from, from + size),
    rate,
  );
  return pitch;
}

const WINDOW = 4000;

/** How unlike a stretch of samples is to itself a lag later. */
function unlikeness(samples: Float32Array, from: number, lag: number): number {
  let sum = 0;
  for (let i = from; i < from + WINDOW; i++)
    sum += ((samples[i] ?? 0) - (samples[i + lag] ?? 0)) ** 2;
  return sum;
}

/** Hz near an expected pitch, from the lag of many periods at which the sound is most like itself. */
export function pitchByLag(
  samples: Float32Array,
  rate: number,
  second: number,
  near: number,
): number {
  const from = Math.round(second * rate);
  const periods = Math.max(1, Math.floor((near * WINDOW) / rate));
  const middle = Math.round((periods * rate) / near);
  const reach = Math.ceil(rate / near / 4);
  const lags = Array.from({ length: 2 * reach + 1 }, (_, i) => middle - reach + i);
  const values = lags.map((lag) => unlikeness(samples, from, lag));
  const best = values.indexOf(Math.min(...values));
  const [a = 0, b = 0, c = 0] = values.slice(best - 1, best + 2);
  return (rate * periods) / ((lags[best] ?? middle) + (a - c) / (2 * (a - 2 * b + c)));
}

export const peakOf = (samples: Float32Array): number =>
  samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0);

export const rmsOf = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);

export const decibels = (gain: number): number => 20 * Math.log10(gain);

/** The largest step from one sample to the next between two seconds. */
export function jumpOf(samples: Float32Array, rate: number, from: number, to: number): number {
  const part = samples.subarray(Math.round(from * rate), Math.round(to * rate));
  return part.reduce(
    (jump, value, i) => (i === 0 ? 0 : Math.max(jump, Math.abs(value - (part[i - 1] ?? 0)))),
    0,
  );
}

/** How strong a partial is in a window of whole seconds: a Hann-weighted sum against a sine and a cosine. */
export function partialOf(samples: Float32Array, rate: number, frequency: number): number {
  let re = 0;
  let im = 0;
  const count = samples.length;
  for (let i = 0; i < count; i++) {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / count);
    const angle = (2 * Math.PI * frequency * i) / rate;
    re += window * (samples[i] ?? 0) * Math.cos(angle);
    im += window * (samples[i] ?? 0) * Math.sin(angle);
  }
  return (4 * Math.hypot(re, im)) / count;
}

/** Whether two renderings are the same to the last bit. */
export const same = (a: Float32Array<ArrayBuffer>, b: Float32Array<ArrayBuffer>): boolean =>
  Buffer.from(a.buffer).equals(Buffer.from(b.buffer));
