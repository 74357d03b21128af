/** Musical time inside bars. */
import type { Metre, Ticks } from './types.ts';

export const TICKS_PER_QUARTER = 960;
const TICKS_PER_WHOLE = 4 * TICKS_PER_QUARTER;

export const METRE_UNITS: readonly number[] = [1, 2, 4, 8, 16];
export const MOST_BEATS = 32;
export const COMMON_TIME: Metre = { beats: 4, unit: 4 };

/** Ticks from a whole number. Throws a RangeError for anything else. */
export function ticks(n: number): Ticks {
  if (!Number.isInteger(n)) throw new RangeError(`not a number of ticks: ${n}`);
  return n as Ticks;
}

/** The length of one beat, in ticks: the metre's unit (6/8 has six beats of 480). */
export const beatTicks = (metre: Metre): Ticks => ticks(TICKS_PER_WHOLE / metre.unit);

/** The length of a bar, in ticks. */
export const barTicks = (metre: Metre): Ticks => ticks(metre.beats * beatTicks(metre));

/** Where the `index`-th of `count` even shares of a bar starts, in ticks. */
export const evenStart = (index: number, count: number, metre: Metre): Ticks =>
  ticks(Math.round((index * barTicks(metre)) / count));

export const sameMetre = (a: Metre, b: Metre): boolean => a.beats === b.beats && a.unit === b.unit;

/** `3/4`. */
export const makeMetre = (metre: Metre): string => `${metre.beats}/${metre.unit}`;

/** Reads `3/4`; undefined unless there are 1 to 32 beats of a unit 1, 2, 4, 8 or 16. */
export function parseMetre(text: string): Metre | undefined {
  const found = /^(\d{1,3})\/(\d{1,3})$/.exec(text);
  if (found === null) return undefined;
  const metre = { beats: Number(found[1]), unit: Number(found[2]) };
  const possible =
    metre.beats >= 1 && metre.beats <= MOST_BEATS && METRE_UNITS.includes(metre.unit);
  return possible ? metre : undefined;
}
