/** Second-order filters after R. Bristow-Johnson, "Cookbook formulae for audio EQ biquad filter coefficients". */

/** y(n) = b0·x(n) + b1·x(n−1) + b2·x(n−2) − a1·y(n−1) − a2·y(n−2), and its memory. */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
  s1: number;
  s2: number;
}

/** What a filter does: below, above or around `hertz`; `gain` in dB for a peak. */
export interface FilterSpec {
  readonly kind: 'low' | 'high' | 'peak';
  readonly hertz: number;
  readonly q: number;
  readonly gain?: number;
}

type Raw = readonly [b0: number, b1: number, b2: number, a0: number, a1: number, a2: number];

function rawLow(cos: number, alpha: number): Raw {
  const b = (1 - cos) / 2;
  return [b, 1 - cos, b, 1 + alpha, -2 * cos, 1 - alpha];
}

function rawHigh(cos: number, alpha: number): Raw {
  const b = (1 + cos) / 2;
  return [b, -(1 + cos), b, 1 + alpha, -2 * cos, 1 - alpha];
}

function rawPeak(cos: number, alpha: number, gain: number): Raw {
  const a = 10 ** (gain / 40);
  return [1 + alpha * a, -2 * cos, 1 - alpha * a, 1 + alpha / a, -2 * cos, 1 - alpha / a];
}

/** A filter at `rate` samples a second; what lies above hearing there is brought below half the rate. */
export function makeBiquad({ kind, hertz, q, gain = 0 }: FilterSpec, rate: number): Biquad {
  const omega = (2 * Math.PI * Math.min(hertz, 0.45 * rate)) / rate;
  const cos = Math.cos(omega);
  const alpha = Math.sin(omega) / (2 * q);
  const raws = {
    low: rawLow(cos, alpha),
    high: rawHigh(cos, alpha),
    peak: rawPeak(cos, alpha, gain),
  };
  const [b0, b1, b2, a0, a1, a2] = raws[kind];
  return { b0: b0 / a0, b1: b1 / a0, b2: b2 / a0, a1: a1 / a0, a2: a2 / a0, s1: 0, s2: 0 };
}

/** Filters the first `count` samples in place. */
export function filterInPlace(filter: Biquad, samples: Float32Array, count: number): void {
  const { b0, b1, b2, a1, a2 } = filter;
  let { s1, s2 } = filter;
  for (let i = 0; i < count; i++) {
    const x = samples[i] ?? 0;
    const y = b0 * x + s1;
    s1 = b1 * x - a1 * y + s2;
    s2 = b2 * x - a2 * y;
    samples[i] = y;
  }
  // What is left after minutes of silence would be too small for the processor to handle quickly.
  filter.s1 = Math.abs(s1) < 1e-20 ? 0 : s1;
  filter.s2 = Math.abs(s2) < 1e-20 ? 0 : s2;
}
