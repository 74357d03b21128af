/** A tempo tapped with a finger or a foot. */
import { isTempo } from '#line';

/** Moments of taps, seconds, the oldest first. */
export type Taps = readonly number[];

/** A pause longer than a beat at the slowest tempo begins anew. */
const LONGEST_PAUSE = 3;
const MOST_TAPS = 6;

/** The taps with one more. */
export function withTap(taps: Taps, now: number): Taps {
  const last = taps.at(-1);
  const goesOn = last !== undefined && now > last && now - last <= LONGEST_PAUSE;
  return goesOn ? [...taps, now].slice(-MOST_TAPS) : [now];
}

/** Beats a minute, whole, from the mean of the last taps; undefined for one tap, or a tempo that cannot be played. */
export function tappedTempo(taps: Taps): number | undefined {
  const first = taps[0];
  const last = taps.at(-1);
  if (first === undefined || last === undefined || taps.length < 2) return undefined;
  const tempo = Math.round((60 * (taps.length - 1)) / (last - first));
  return isTempo(tempo) ? tempo : undefined;
}
