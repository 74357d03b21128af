/**
 * The loop of one plucked string after K. Karplus and A. Strong (Computer Music Journal 7(2), 1983),
 * with the extensions of D. Jaffe and J. O. Smith (in the same issue): losses set by how long the
 * fundamental and the upper partials ring, and a fractional delay that is exact at the fundamental
 * and may move while the string sounds.
 */

/** How a string sounds. What is played on it shifts these: see `toneAt`. */
export interface StringTone {
  /** MIDI number of the open string. */
  readonly open: number;
  /** Where it is picked, as a share of the sounding length from the bridge (0.02 to 0.5). */
  readonly pickAt: number;
  /** Seconds in which the fundamental falls by 60 dB. */
  readonly sustain: number;
  /** Seconds in which a partial at 3 kHz falls by 60 dB. */
  readonly highs: number;
}

/** Third-order Lagrange weights, newest sample first. */
export type Weights = readonly [number, number, number, number];

/** What a signal meets on one round trip. */
export interface Loop {
  /** Samples of the delay line, whole and fraction; the interpolated read adds one, the pole its own. */
  readonly delay: number;
  /** Pole of the loss filter, y(n) = (1 − pole)·x(n) + pole·y(n − 1): it takes the upper partials. */
  readonly pole: number;
  /** Gain of one round trip. */
  readonly gain: number;
}

/** Third-order Lagrange weights for a delay of 1 + `d` samples, 0 ≤ d < 1. */
export function lagrange(d: number): Weights {
  return [
    (-d * (d - 1) * (d - 2)) / 6,
    ((d + 1) * (d - 1) * (d - 2)) / 2,
    (-(d + 1) * d * (d - 2)) / 2,
    ((d + 1) * d * (d - 1)) / 6,
  ];
}

/** Samples by which the weights delay a partial of `omega` radians a sample. */
export function phaseDelay(weights: Weights, omega: number): number {
  let re = 0;
  let im = 0;
  for (const [k, weight] of weights.entries()) {
    re += weight * Math.cos(omega * k);
    im += weight * Math.sin(omega * k);
  }
  return Math.atan2(im, re) / omega;
}

/** Samples by which the loss filter delays a partial of `omega` radians a sample. */
export const poleDelay = (pole: number, omega: number): number =>
  Math.atan2(pole * Math.sin(omega), 1 - pole * Math.cos(omega)) / omega;

/** How much of a partial of `omega` radians a sample the loss filter lets through. */
export const poleGain = (pole: number, omega: number): number =>
  (1 - pole) / Math.sqrt(1 - 2 * pole * Math.cos(omega) + pole * pole);

/** The read is interpolated one sample on from its newest point. */
const READ_DELAY = 1;

/** The fraction that makes the interpolated read delay the fundamental by exactly what is wanted. */
function exactFraction(wanted: number, omega: number): number {
  let d = wanted;
  for (let i = 0; i < 3; i++) d += wanted + READ_DELAY - phaseDelay(lagrange(d), omega);
  return d;
}

/** A fundamental above this share of the rate has no room in the loop. */
const HIGHEST = 1 / 5;

/**
 * Samples (whole and fraction) that the line has to hold so that the loop sounds at `frequency` Hz:
 * all its delays add up to one period at the fundamental, rate / frequency.
 */
export function delayFor(frequency: number, rate: number, pole: number): number {
  const period = rate / Math.min(frequency, rate * HIGHEST);
  const omega = (2 * Math.PI) / period;
  const rest = period - poleDelay(pole, omega) - READ_DELAY;
  const whole = Math.floor(rest);
  return whole + exactFraction(rest - whole, omega);
}

const HIGH_HERTZ = 3000;
const MOST_POLE = 0.9;

/** What is left after one round trip of a sound that falls by 60 dB in `seconds`. */
const shareLeft = (seconds: number, frequency: number): number =>
  10 ** (-3 / (seconds * frequency));

/** The pole with which the filter lets `share` of a partial of `omega` radians a sample through. */
function poleFor(share: number, omega: number): number {
  const square = share * share;
  const half = 1 - square * Math.cos(omega);
  const pole = (half - Math.sqrt(half * half - (1 - square) ** 2)) / (1 - square);
  return Math.min(pole, MOST_POLE);
}

/** The loop must lose at every frequency, or it would ring for ever; at 0 Hz the filter loses nothing. */
const MOST_GAIN = 0.99998;
const MOST_SHARE = 0.9999;

/** The loop that sounds at `frequency` (Hz) at `rate` samples a second, and decays as the tone says. */
export function loopFor(frequency: number, rate: number, tone: StringTone): Loop {
  const high = (2 * Math.PI * Math.max(HIGH_HERTZ, 2 * frequency)) / rate;
  const low = shareLeft(tone.sustain, frequency);
  const pole = poleFor(
    Math.min(shareLeft(tone.highs, frequency) / low, MOST_SHARE),
    Math.min(high, 3),
  );
  const filterGain = poleGain(pole, (2 * Math.PI * frequency) / rate);
  return {
    delay: delayFor(frequency, rate, pole),
    pole,
    gain: Math.min(low / filterGain, MOST_GAIN),
  };
}

/** The pitch that a loop sounds at, Hz: the inverse of `loopFor`, worked out from its delays alone. */
export function pitchOf(loop: Loop, rate: number, near: number): number {
  const whole = Math.floor(loop.delay);
  const weights = lagrange(loop.delay - whole);
  let frequency = near;
  for (let i = 0; i < 20; i++) {
    const omega = (2 * Math.PI * frequency) / rate;
    frequency = rate / (whole + phaseDelay(weights, omega) + poleDelay(loop.pole, omega));
  }
  return frequency;
}
