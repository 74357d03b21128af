/** A wave going round in a loop: the innermost part of a string, sample by sample. */
import { lagrange } from './string.ts';

/** The memory of a loop. Changed in place: this runs for every sample of every string. */
export interface Wave {
  readonly buffer: Float32Array;
  write: number;
  /** Memory of the loss filter. */
  low: number;
  /** Gain of a round trip, on its way to what is wanted. */
  gain: number;
}

/** What all samples of a stretch have in common. */
export interface Stretch {
  /** Index in the output, and how many samples. */
  readonly from: number;
  readonly count: number;
  /** Samples of delay at its beginning, and how many more with each sample. */
  readonly delay: number;
  readonly glide: number;
  readonly pole: number;
  readonly gain: number;
  /** How fast the gain goes there: share of the difference taken with each sample. */
  readonly haste: number;
}

/** A wave with room for a delay of so many samples. */
export const makeWave = (longest: number): Wave => ({
  buffer: new Float32Array(2 ** Math.ceil(Math.log2(longest + 8))),
  write: 0,
  low: 0,
  gain: 0,
});

/** Silences the wave. */
export function clearWave(wave: Wave): void {
  wave.buffer.fill(0);
  wave.low = 0;
}

/**
 * Goes on by a stretch at a steady pitch: adds `blow` (from its beginning) to the wave, and the wave
 * to `out` where the stretch lies. Gives the highest absolute value met.
 */
export function runSteady(
  wave: Wave,
  stretch: Stretch,
  blow: Float32Array,
  out: Float32Array,
): number {
  const { buffer } = wave;
  const mask = buffer.length - 1;
  const whole = Math.floor(stretch.delay);
  const [w0, w1, w2, w3] = lagrange(stretch.delay - whole);
  const { from, count, haste } = stretch;
  const wanted = stretch.gain;
  const through = 1 - stretch.pole;
  let { write, low, gain } = wave;
  let read = write - whole;
  let t1 = buffer[(read - 1) & mask] ?? 0;
  let t2 = buffer[(read - 2) & mask] ?? 0;
  let t3 = buffer[(read - 3) & mask] ?? 0;
  let peak = 0;
  for (let i = 0; i < count; i++) {
    const t0 = buffer[read & mask] ?? 0;
    gain += (wanted - gain) * haste;
    low += through * (gain * (w0 * t0 + w1 * t1 + w2 * t2 + w3 * t3) - low);
    const value = low + (blow[i] ?? 0);
    buffer[write & mask] = value;
    out[from + i] = (out[from + i] ?? 0) + value;
    if (value > peak) peak = value;
    else if (-value > peak) peak = -value;
    t3 = t2;
    t2 = t1;
    t1 = t0;
    read++;
    write++;
  }
  wave.write = write & mask;
  wave.low = low;
  wave.gain = gain;
  return peak;
}

/** As `runSteady`, with a delay that moves from sample to sample. */
export function runMoving(
  wave: Wave,
  stretch: Stretch,
  blow: Float32Array,
  out: Float32Array,
): number {
  const { buffer } = wave;
  const mask = buffer.length - 1;
  const { from, count, haste, glide } = stretch;
  const wanted = stretch.gain;
  const through = 1 - stretch.pole;
  let { write, low, gain } = wave;
  let delay = stretch.delay;
  let peak = 0;
  for (let i = 0; i < count; i++) {
    const whole = Math.floor(delay);
    const d = delay - whole;
    const read = write - whole;
    const a = d * (d - 1);
    const b = (d + 1) * (d - 2);
    const x =
      a *
        (((d + 1) * (buffer[(read - 3) & mask] ?? 0)) / 6 -
          ((d - 2) * (buffer[read & mask] ?? 0)) / 6) +
      (b * ((d - 1) * (buffer[(read - 1) & mask] ?? 0) - d * (buffer[(read - 2) & mask] ?? 0))) / 2;
    gain += (wanted - gain) * haste;
    low += through * (gain * x - low);
    const value = low + (blow[i] ?? 0);
    buffer[write & mask] = value;
    out[from + i] = (out[from + i] ?? 0) + value;
    if (value > peak) peak = value;
    else if (-value > peak) peak = -value;
    delay += glide;
    write++;
  }
  wave.write = write & mask;
  wave.low = low;
  wave.gain = gain;
  return peak;
}
