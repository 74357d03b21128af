/** Bars laid out in the groups of a feel, whatever their metre. */
import type { PlayedBar } from '#line';
import { type Metre, TICKS_PER_QUARTER } from '#theory';
import type { Feel, Group } from './feels.ts';

/** A group of beats in time; times in ticks, which may have fractions. */
export interface PlacedGroup {
  readonly group: Group;
  readonly start: number;
  /** Ticks of a step, and how many are played. */
  readonly step: number;
  readonly steps: number;
}

/** Threes where the count is a multiple of three (6/8, 9/8, 12/8); else twos with a three at the end (5/8, 7/8). */
export function pulsesOf({ beats, unit }: Metre): readonly number[] {
  if (unit < 8) return Array.from({ length: beats }, () => 1);
  if (beats % 3 === 0) return Array.from({ length: beats / 3 }, () => 3);
  const twos = Math.floor(beats / 2) - (beats % 2);
  return [
    ...Array.from({ length: Math.max(0, twos) }, () => 2),
    ...(beats % 2 === 1 ? [Math.min(3, beats)] : []),
  ];
}

/** Fours, and the rest as one group. */
function quartersOf(count: number): readonly number[] {
  const fours = Array.from({ length: Math.floor(count / 4) }, () => 4);
  return count % 4 === 0 ? fours : [...fours, count % 4];
}

function inQuarters(feel: Feel, bar: PlayedBar): readonly PlacedGroup[] {
  const step = TICKS_PER_QUARTER / feel.grid;
  let start: number = bar.start;
  return quartersOf(bar.length / TICKS_PER_QUARTER).map((count) => {
    const placed = {
      group: feel.quarters[count - 1] ?? feel.quarters[0],
      start,
      step,
      steps: count * feel.grid,
    };
    start += count * TICKS_PER_QUARTER;
    return placed;
  });
}

function inEighths(feel: Feel, bar: PlayedBar): readonly PlacedGroup[] {
  const [three, backbeat, two] = feel.eighths;
  const step = bar.length / bar.metre.beats;
  let start: number = bar.start;
  return pulsesOf(bar.metre).map((count, i) => {
    const threes = i % 2 === 0 ? three : backbeat;
    const placed = { group: count === 3 ? threes : two, start, step, steps: count };
    start += count * step;
    return placed;
  });
}

/** The groups of a bar. Metres in eighths and sixteenths go by threes and twos, others by quarters. */
export const groupsIn = (feel: Feel, bar: PlayedBar): readonly PlacedGroup[] =>
  bar.metre.unit >= 8 ? inEighths(feel, bar) : inQuarters(feel, bar);

/** A sign of a row, where it stands. */
export interface Stroke {
  readonly sign: string;
  readonly at: number;
}

/** The signs of a row of all groups, dots left out. */
export const strokesOf = (groups: readonly PlacedGroup[], row: keyof Group): readonly Stroke[] =>
  groups.flatMap(({ group, start, step, steps }) =>
    [...group[row].slice(0, steps)].flatMap((sign, i) =>
      sign === '.' ? [] : [{ sign, at: Math.round(start + i * step) }],
    ),
  );
