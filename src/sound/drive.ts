/** Soft clipping, computed at four times the rate so that what it adds above hearing is not folded back. */

const TIMES = 4;
/** Taps of each of the four phases of the interpolating filter. */
const TAPS = 16;
const LENGTH = TIMES * TAPS;
/** Kaiser window for a stop band about 80 dB down. */
const KAISER_BETA = 8;
const CUTOFF = 0.9;

function bessel(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; k < 30; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/** A windowed sinc that passes what lies below half the original rate, gain 1. */
function lowPass(): Float32Array {
  const middle = (LENGTH - 1) / 2;
  const taps = Float32Array.from({ length: LENGTH }, (_, i) => {
    const x = ((i - middle) / TIMES) * CUTOFF;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    const edge = 1 - ((i - middle) / (middle + 0.5)) ** 2;
    return (sinc * bessel(KAISER_BETA * Math.sqrt(edge))) / bessel(KAISER_BETA);
  });
  const sum = taps.reduce((all, tap) => all + tap, 0);
  return taps.map((tap) => tap / sum);
}

const FILTER = lowPass();

/** A clipping stage and its memory. */
export interface Drive {
  /** How hard the signal is pushed into the curve (1 = hardly bent at all at full scale). */
  readonly amount: number;
  /** Shifts the curve: the two halves of a wave are bent differently, as by a valve. */
  readonly bias: number;
  readonly input: Float32Array;
  readonly bent: Float32Array;
  inputAt: number;
  bentAt: number;
}

/** Samples by which a drive delays the sound: both filters, half their length each. */
export const DRIVE_DELAY = (LENGTH - 1) / TIMES;

/** Histories are kept twice over, one length apart, so that a filter reads them in one piece. */
export const makeDrive = (amount: number, bias = 0.15): Drive => ({
  amount,
  bias,
  input: new Float32Array(2 * TAPS),
  bent: new Float32Array(2 * LENGTH),
  inputAt: 0,
  bentAt: 0,
});

/** One of the four samples that lie between two of the original ones. */
function between(input: Float32Array, from: number, phase: number): number {
  let sum = 0;
  for (let k = 0; k < TAPS; k++)
    sum += (FILTER[phase + TIMES * k] ?? 0) * (input[from + TAPS - 1 - k] ?? 0);
  return sum * TIMES;
}

function filtered(bent: Float32Array, from: number): number {
  let sum = 0;
  for (let k = 0; k < LENGTH; k++) sum += (FILTER[k] ?? 0) * (bent[from + k] ?? 0);
  return sum;
}

/** Clips the first `count` samples in place; full scale stays full scale. */
export function driveInPlace(drive: Drive, samples: Float32Array, count: number): void {
  const { input, bent, amount, bias } = drive;
  const rest = Math.tanh(bias);
  for (let i = 0; i < count; i++) {
    const at = drive.inputAt;
    input[at] = input[at + TAPS] = samples[i] ?? 0;
    drive.inputAt = (at + 1) % TAPS;
    for (let phase = 0; phase < TIMES; phase++) {
      const x = between(input, drive.inputAt, phase);
      const into = drive.bentAt;
      bent[into] = bent[into + LENGTH] = Math.tanh(amount * x + bias) - rest;
      drive.bentAt = (into + 1) % LENGTH;
    }
    samples[i] = filtered(bent, drive.bentAt);
  }
}
