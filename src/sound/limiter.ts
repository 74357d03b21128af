/** A limiter that looks ahead: what leaves it is never above the ceiling, and never clipped. */

/** −1 dB below full scale. */
export const CEILING = 10 ** (-1 / 20);

/** A limiter and its memory. */
export interface Limiter {
  /** Samples by which the sound is delayed. */
  readonly ahead: number;
  readonly left: Float32Array;
  readonly right: Float32Array;
  /** Gain that each of the last samples asks for, and the gains to be averaged. */
  readonly asked: Float32Array;
  readonly held: Float32Array;
  readonly recover: number;
  at: number;
  askAt: number;
  sum: number;
  env: number;
  /** Samples since one asked for less than full gain. */
  calm: number;
}

const AHEAD_SECONDS = 0.0015;
const RECOVER_SECONDS = 0.12;

export const limiterDelay = (rate: number): number => Math.round(AHEAD_SECONDS * rate);

export function makeLimiter(rate: number): Limiter {
  const ahead = limiterDelay(rate);
  return {
    ahead,
    left: new Float32Array(ahead),
    right: new Float32Array(ahead),
    asked: new Float32Array(ahead + 1).fill(1),
    held: new Float32Array(ahead).fill(1),
    recover: 1 / (RECOVER_SECONDS * rate),
    at: 0,
    askAt: 0,
    sum: ahead,
    env: 1,
    calm: Number.MAX_SAFE_INTEGER,
  };
}

const lowest = (gains: Float32Array): number => {
  let low = 1;
  for (const gain of gains) low = Math.min(low, gain);
  return low;
};

/** Whether a sample, or one that is still in the look-ahead, asks for less than full gain. */
function isCalm(limiter: Limiter, asks: number): boolean {
  limiter.asked[limiter.askAt] = asks;
  limiter.askAt = (limiter.askAt + 1) % limiter.asked.length;
  limiter.calm = asks < 1 ? 0 : limiter.calm + 1;
  return limiter.calm > limiter.ahead;
}

/**
 * The gain for the sample that leaves now. The lowest gain asked for in the look-ahead, recovering
 * slowly, averaged over as many samples: at the moment a peak leaves, every gain in the average is
 * at most what that peak asked for.
 */
function gainNow(limiter: Limiter, asks: number): number {
  const target = isCalm(limiter, asks) ? 1 : lowest(limiter.asked);
  const env = Math.min(target, limiter.env + (1 - limiter.env) * limiter.recover);
  // Rounded as it is held, so that the sum never drifts.
  limiter.env = Math.fround(env > 0.99999 && target === 1 ? 1 : env);
  limiter.sum += limiter.env - (limiter.held[limiter.at] ?? 1);
  limiter.held[limiter.at] = limiter.env;
  return limiter.sum / limiter.ahead;
}

const bounded = (value: number): number => Math.min(CEILING, Math.max(-CEILING, value));

/** Limits the first `count` samples of both sides in place, both by the same gain. */
export function limitInPlace(
  limiter: Limiter,
  left: Float32Array,
  right: Float32Array,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    const l = left[i] ?? 0;
    const r = right[i] ?? 0;
    const peak = Math.max(Math.abs(l), Math.abs(r));
    const slot = limiter.at;
    const gain = gainNow(limiter, peak > CEILING ? CEILING / peak : 1);
    // Rounding alone can exceed the ceiling, by a millionth.
    left[i] = bounded((limiter.left[slot] ?? 0) * gain);
    right[i] = bounded((limiter.right[slot] ?? 0) * gain);
    limiter.left[slot] = l;
    limiter.right[slot] = r;
    limiter.at = (slot + 1) % limiter.ahead;
  }
}
