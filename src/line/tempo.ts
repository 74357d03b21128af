/** Musical time and seconds. */
import { TICKS_PER_QUARTER, type Ticks } from '#theory';

/** From a tick on, so many quarter notes a minute. A metre changes the bars, not the quarter. */
export interface TempoChange {
  readonly at: Ticks;
  readonly tempo: number;
}

/** A stretch of one tempo, with the second at which it begins. */
interface Stretch {
  readonly tick: number;
  readonly seconds: number;
  readonly perTick: number;
}

/** Stretches in order of time; the first begins at 0. */
export type TempoMap = readonly [Stretch, ...(readonly Stretch[])];

/** Quarter notes a minute. */
export const TEMPO_RANGE = { min: 20, max: 300 } as const;

/** Whether it is a tempo that can be played. */
export const isTempo = (tempo: number): boolean =>
  Number.isFinite(tempo) && tempo >= TEMPO_RANGE.min && tempo <= TEMPO_RANGE.max;

/** Seconds that a tick lasts at so many quarter notes a minute. */
export const secondsPerTick = (tempo: number): number => 60 / (tempo * TICKS_PER_QUARTER);

/** A map of tempi: one to begin with, and changes. */
export function makeTempoMap(tempo: number, changes: readonly TempoChange[] = []): TempoMap {
  let last: Stretch = { tick: 0, seconds: 0, perTick: secondsPerTick(tempo) };
  const first = last;
  const later = [...changes]
    .sort((a, b) => a.at - b.at)
    .map((change) => {
      const seconds = last.seconds + (change.at - last.tick) * last.perTick;
      last = { tick: change.at, seconds, perTick: secondsPerTick(change.tempo) };
      return last;
    });
  return [first, ...later];
}

const stretchWhere = (map: TempoMap, holds: (one: Stretch) => boolean): Stretch =>
  map.findLast(holds) ?? map[0];

/** The second at which a tick (may have a fraction) comes, computed from the tempo's beginning: nothing adds up. */
export function secondsAt(map: TempoMap, tick: number): number {
  const { tick: from, seconds, perTick } = stretchWhere(map, (one) => one.tick <= tick);
  return seconds + (tick - from) * perTick;
}

/** The tick (with its fraction) at a second: the inverse of `secondsAt`. */
export function tickAt(map: TempoMap, seconds: number): number {
  const stretch = stretchWhere(map, (one) => one.seconds <= seconds);
  return stretch.tick + (seconds - stretch.seconds) / stretch.perTick;
}
