/** Ways through a chart: slot by slot as written, bar by bar as played. */
import { beatTicks } from './chart-time.ts';
import { ok, type Result, type TextError } from './result.ts';
import { textError } from './text-error.ts';
import type { Bar, Chart, Metre, Slot, Ticks } from './types.ts';

/** A slot with its place in the chart. */
export interface PlacedSlot {
  readonly slot: Slot;
  /** Written bar, from 1, across the sections. */
  readonly bar: number;
  /** `bar.beat`, both from 1; the beat may have up to three decimals: `1.2.333`. */
  readonly at: string;
  /** Among all slots of the chart, from 0. */
  readonly index: number;
}

/** A moment of the written chart: bar from 1, beat from 1 with fractions. */
export interface ChartPlace {
  readonly bar: number;
  readonly beat: number;
}

const MOST_PLAYED_BARS = 100_000;
const DECIMALS = 3;
const AT_EXPECTED = ['bar.beat, both from 1, as 2.1'];

/** The written bars of all sections, in order. */
export const barsOf = (chart: Chart): readonly Bar[] =>
  chart.sections.flatMap((section) => section.bars);

/** Reads `2.1`, `3.2.5` (bar 3, beat 2½) and `4` (bar 4, beat 1). Error code: `at`. */
export function parseAt(text: string): Result<ChartPlace, TextError<'at'>> {
  const found = /^(\d{1,6})(?:\.(\d{1,3}(?:\.\d{1,6})?))?$/.exec(text.trim());
  const bar = Number(found?.[1]);
  const beat = Number(found?.[2] ?? 1);
  if (found === null || bar < 1 || beat < 1)
    return textError('at', text, 0, text.length, AT_EXPECTED);
  return ok({ bar, beat });
}

/** `2.1`, `1.2.333`: the beat rounded to three decimals, without trailing zeros. */
export const makeAt = (place: ChartPlace): string =>
  `${place.bar}.${Number(place.beat.toFixed(DECIMALS))}`;

/** The beat, from 1, of a moment `start` ticks into a bar. */
export const beatAt = (start: Ticks, metre: Metre): number => start / beatTicks(metre) + 1;

/** The slots as written, bar by bar. */
export function slotsOf(chart: Chart): readonly PlacedSlot[] {
  const placed: PlacedSlot[] = [];
  for (const [i, { slots, metre }] of barsOf(chart).entries()) {
    for (const slot of slots) {
      const at = makeAt({ bar: i + 1, beat: beatAt(slot.start, metre) });
      placed.push({ slot, bar: i + 1, at, index: placed.length });
    }
  }
  return placed;
}

/** The slot that sounds at a place of the written chart; undefined beyond its last bar. */
export function slotAtPlace(chart: Chart, place: ChartPlace): PlacedSlot | undefined {
  const bar = barsOf(chart)[place.bar - 1];
  if (bar === undefined) return undefined;
  // Half a tick covers what the three decimals of a written beat leave out.
  const moment = (place.beat - 1) * beatTicks(bar.metre) + 1;
  if (place.beat >= bar.metre.beats + 1) return undefined;
  return slotsOf(chart).findLast((p) => p.bar === place.bar && p.slot.start <= moment);
}

const startsBy = (span: { readonly at: number }, offset: number): boolean => span.at <= offset;

/**
 * The slot at a caret: of the bar in which the offset (UTF-16, into the text that was read) lies,
 * the last one that begins at or before it. Between bars, the bar before. Undefined only in a chart
 * without slots.
 */
export function slotAtOffset(chart: Chart, offset: number): PlacedSlot | undefined {
  const slots = slotsOf(chart);
  const bars = barsOf(chart);
  const number = Math.max(bars.findLastIndex((bar) => startsBy(bar.span, offset)) + 1, 1);
  const inBar = slots.filter((placed) => placed.bar === number);
  return inBar.findLast(({ slot }) => startsBy(slot.span, offset)) ?? inBar[0] ?? slots[0];
}

/** The bars of one repeat with its endings; `rounds` is how often it is played in all. */
interface Group {
  readonly start: number;
  rounds: number;
}

const closesGroup = (bar: Bar, next: Bar | undefined): boolean =>
  bar.closesRepeat !== undefined && next?.ending === undefined;

/** For each bar the repeat to which it belongs. */
function groupsOf(bars: readonly Bar[]): readonly Group[] {
  let group: Group = { start: 0, rounds: 1 };
  let over = false;
  return bars.map((bar, i) => {
    if (over || (bar.opensRepeat && i > 0)) group = { start: i, rounds: 1 };
    group.rounds = Math.max(group.rounds, bar.closesRepeat ?? 1, ...(bar.ending ?? []));
    over = closesGroup(bar, bars[i + 1]);
    return group;
  });
}

/** Whether after this bar the repeat goes back: at `:|`, or where another ending begins. */
const turnsBack = (bar: Bar, next: Bar | undefined, inEnding: boolean): boolean =>
  bar.closesRepeat !== undefined || (inEnding && next?.ending !== undefined);

interface Pass {
  readonly bar: number;
  readonly round: number;
  readonly inEnding: boolean;
}

/** The first bar from `from` on that is played in this round: endings of other rounds are left out. */
function skipEndings(
  bars: readonly Bar[],
  groups: readonly Group[],
  from: number,
  round: number,
): number {
  let at = from;
  let skipping = false;
  while (at < bars.length && groups[at] === groups[from]) {
    const ending = bars[at]?.ending;
    if (ending !== undefined) skipping = !ending.includes(round);
    if (!skipping) return at;
    if (bars[at]?.closesRepeat !== undefined) skipping = false;
    at += 1;
  }
  return at;
}

/** The order in which the written bars (from 0) are played; at most 100,000. */
export function unfold(chart: Chart): readonly number[] {
  const bars = barsOf(chart);
  const groups = groupsOf(bars);
  const played: number[] = [];
  let pass: Pass | undefined = enter(bars, groups, 0, 1, false);
  while (pass !== undefined && played.length < MOST_PLAYED_BARS) {
    played.push(pass.bar);
    pass = follow(bars, groups, pass);
  }
  return played;
}

function enter(
  bars: readonly Bar[],
  groups: readonly Group[],
  from: number,
  round: number,
  inEnding: boolean,
): Pass | undefined {
  const bar = skipEndings(bars, groups, from, round);
  const group = groups[bar];
  if (group === undefined) return undefined;
  if (group !== groups[from]) return enter(bars, groups, bar, 1, false);
  return { bar, round, inEnding: inEnding || bars[bar]?.ending !== undefined };
}

function follow(bars: readonly Bar[], groups: readonly Group[], pass: Pass): Pass | undefined {
  const bar = bars[pass.bar];
  const group = groups[pass.bar];
  const next = pass.bar + 1;
  if (bar === undefined || group === undefined) return undefined;
  if (turnsBack(bar, bars[next], pass.inEnding) && pass.round < group.rounds) {
    return enter(bars, groups, group.start, pass.round + 1, false);
  }
  const stays = groups[next] === group;
  return enter(bars, groups, next, stays ? pass.round : 1, stays && pass.inEnding);
}

/** For each written bar the one played after it on the first pass. */
function barsAfter(chart: Chart, count: number): readonly (number | undefined)[] {
  const order = unfold(chart);
  const after = Array.from({ length: count }, (_, i) => (i + 1 < count ? i + 1 : undefined));
  const seen = new Set<number>();
  for (const [i, bar] of order.entries()) {
    if (!seen.has(bar)) after[bar] = order[i + 1];
    seen.add(bar);
  }
  return after;
}

/** For each slot the one that follows it in playing order on the first pass, held ones too. */
function slotsAfter(chart: Chart, slots: readonly PlacedSlot[]): readonly (number | undefined)[] {
  const bars = barsOf(chart);
  const after = barsAfter(chart, bars.length);
  const firstOf = new Map<number, number>();
  for (const { bar, index } of slots) if (!firstOf.has(bar)) firstOf.set(bar, index);
  return slots.map(({ bar, index }) => {
    if (slots[index + 1]?.bar === bar) return index + 1;
    const next = after[bar - 1];
    return next === undefined ? undefined : firstOf.get(next + 1);
  });
}

/**
 * For each slot the next one in playing order (first pass) that brings a harmony of its own: slots
 * that only hold the harmony before them are passed over. Undefined where nothing follows.
 */
export function nextInPlay(chart: Chart): readonly (PlacedSlot | undefined)[] {
  const slots = slotsOf(chart);
  const after = slotsAfter(chart, slots);
  const found: (PlacedSlot | undefined)[] = slots.map(() => undefined);
  const isHeld = (index: number): boolean => slots[index]?.slot.held === true;
  for (let i = slots.length - 1; i >= 0; i -= 1) {
    let next = after[i];
    for (let steps = 0; next !== undefined && next <= i && isHeld(next); steps += 1) {
      next = steps < slots.length ? after[next] : undefined;
    }
    if (next !== undefined) found[i] = isHeld(next) ? found[next] : slots[next];
  }
  return found;
}
