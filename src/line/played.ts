/** A chart in time: its bars and chords in the order in which they are played, repeats and endings unfolded. */
import {
  barsOf,
  barTicks,
  type Chart,
  type Harmony,
  type Metre,
  type PlacedSlot,
  slotsOf,
  type Ticks,
  ticks,
  unfold,
} from '#theory';

/** A bar as it is played. */
export interface PlayedBar {
  /** Written bar, from 1. */
  readonly written: number;
  readonly start: Ticks;
  readonly length: Ticks;
  readonly metre: Metre;
}

/** What sounds from one change of harmony, or one bar line, to the next. */
export interface PlayedSlot {
  /** Among the written slots, as in `slotsOf`. */
  readonly index: number;
  /** Among the played bars, from 0. */
  readonly bar: number;
  readonly harmony: Harmony;
  readonly start: Ticks;
  readonly length: Ticks;
  /** Goes on from the slot before. */
  readonly held: boolean;
}

/** All that is played of a chart. */
export interface Played {
  readonly bars: readonly PlayedBar[];
  readonly slots: readonly PlayedSlot[];
  /** Up to the end of the chart; what is appended to be looped lies beyond it. */
  readonly length: Ticks;
}

/** Written bars, both included, from 1. */
interface Bars {
  readonly first: number;
  readonly last: number;
}

/** Where written bars are first played in a row, as an index among the played bars; −1 = nowhere. */
export const barsInARow = (
  bars: readonly Pick<PlayedBar, 'written'>[],
  first: number,
  last: number,
): number =>
  bars.findIndex((_, i) => {
    const row = bars.slice(i, i + last - first + 1);
    return row.length > last - first && row.every(({ written }, k) => written === first + k);
  });

/** The loop, if the chart has its bars and never plays them in a row. */
export function loopApart<Loop extends Bars>(
  chart: Chart,
  loop: Loop | undefined,
): Loop | undefined {
  if (loop === undefined || loop.last > barsOf(chart).length) return undefined;
  const order = unfold(chart).map((index) => ({ written: index + 1 }));
  return barsInARow(order, loop.first, loop.last) < 0 ? loop : undefined;
}

/** Indices of the written bars in playing order, and the looped ones once more where a repeat parts them. */
function orderOf(chart: Chart, loop: Bars | undefined): readonly number[] {
  const apart = loopApart(chart, loop);
  const { first, last } = apart ?? { first: 1, last: 0 };
  return [...unfold(chart), ...Array.from({ length: last - first + 1 }, (_, i) => first - 1 + i)];
}

/** The bars in an order, and where each begins. */
function playedBars(chart: Chart, order: readonly number[]): readonly PlayedBar[] {
  const written = barsOf(chart);
  let start = 0;
  return order.flatMap((index) => {
    const bar = written[index];
    if (bar === undefined) return [];
    const length = barTicks(bar.metre);
    const played = { written: index + 1, start: ticks(start), length, metre: bar.metre };
    start += length;
    return [played];
  });
}

/** The slots of each written bar, by its number. */
function slotsByBar(chart: Chart): ReadonlyMap<number, readonly PlacedSlot[]> {
  const byBar = new Map<number, PlacedSlot[]>();
  for (const placed of slotsOf(chart))
    byBar.set(placed.bar, [...(byBar.get(placed.bar) ?? []), placed]);
  return byBar;
}

/**
 * The chart in playing order, from tick 0. Bars to `loop` that repeats or endings part are appended in
 * a row: who loops them wants just those, in the order in which they are written.
 */
export function playedOf(chart: Chart, loop?: Bars): Played {
  const bars = playedBars(chart, orderOf(chart, loop));
  const byBar = slotsByBar(chart);
  const whole = unfold(chart).length;
  const slots = bars.flatMap((bar, i) =>
    (byBar.get(bar.written) ?? []).map(({ slot, index }) => ({
      index,
      bar: i,
      harmony: slot.harmony,
      start: ticks(bar.start + slot.start),
      length: slot.length,
      // Nothing goes on over the end of the chart.
      held: slot.held && !(i === whole && slot.start === 0),
    })),
  );
  const last = bars[whole - 1];
  return { bars, slots, length: ticks(last === undefined ? 0 : last.start + last.length) };
}

/** The bar that is played at a tick; undefined before the beginning and after the end. */
export const barAt = ({ bars }: Pick<Played, 'bars'>, tick: number): PlayedBar | undefined =>
  bars.findLast((bar) => bar.start <= tick && tick < bar.start + bar.length);

/** The slots with held ones drawn into what they hold, across bar lines too. */
export function harmoniesOf(played: Played): readonly PlayedSlot[] {
  const whole: PlayedSlot[] = [];
  for (const slot of played.slots) {
    const before = whole.at(-1);
    const follows = before !== undefined && before.start + before.length === slot.start;
    if (slot.held && follows)
      whole[whole.length - 1] = { ...before, length: ticks(before.length + slot.length) };
    else whole.push(slot);
  }
  return whole;
}

/** What is played at a tick; undefined before the beginning and after the end. */
export const slotAt = ({ slots }: Pick<Played, 'slots'>, tick: number): PlayedSlot | undefined =>
  slots.findLast(({ start, length }) => start <= tick && tick < start + length);

/** The tick at which a written slot (its index in `slotsOf`) is played first; 0 for one that is not. */
export const tickOfSlot = ({ slots }: Pick<Played, 'slots'>, index: number): Ticks =>
  slots.find((slot) => slot.index === index)?.start ?? ticks(0);

/** A stretch that is played over and over, in ticks. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}
