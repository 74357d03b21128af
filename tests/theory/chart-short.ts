/** Short notations for charts. */
import {
  type Bar,
  barsOf,
  type Chart,
  type ChartProblem,
  makeAt,
  parseProgression,
  type Slot,
  slotsOf,
  unfold,
} from '#theory';

export const chartOf = (text: string): Chart => parseProgression(text).chart;

const mark = (slot: Slot): string =>
  (slot.held ? '~' : '') + (slot.harmony.kind === 'unread' ? '?' : '');

const shownSlot = (bar: Bar, slot: Slot): string => {
  const beat = makeAt({ bar: 1, beat: (slot.start * bar.metre.unit) / 3840 + 1 }).slice(2);
  return (beat === '1' ? '' : `${beat}:`) + slot.symbol + mark(slot);
};

/** `C | Am 3:F | G?`: each bar's slots with their beats; `~` held, `?` unread. */
export const shownBars = (text: string): string =>
  barsOf(chartOf(text))
    .map((bar) => bar.slots.map((slot) => shownSlot(bar, slot)).join(' '))
    .join(' | ');

/** `1.1 1.3 2.1`. */
export const shownPlaces = (text: string): string =>
  slotsOf(chartOf(text))
    .map(({ at }) => at)
    .join(' ');

/** `Verse: 2, -: 1`: names of passages with their numbers of bars. */
export const shownSections = (text: string): string =>
  chartOf(text)
    .sections.map(({ name, bars }) => `${name ?? '-'}: ${bars.length}`)
    .join(', ');

/** `C F C G`: the first symbol of each bar in playing order. */
export function shownPlay(text: string): string {
  const bars = barsOf(chartOf(text));
  return unfold(chartOf(text))
    .map((bar) => bars[bar]?.slots[0]?.symbol ?? '-')
    .join(' ');
}

const shownProblem = ({ code, line, column, found }: ChartProblem): string =>
  `${code} ${line}:${column} ${found}`;

/** `chord 1:5 H; beats 2:1 5`. */
export const shownProblems = (text: string): string =>
  parseProgression(text).problems.map(shownProblem).join('; ');

const PLACES = new Set(['span', 'line', 'column']);

/** A value without its places in the text. */
export const withoutPlaces = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, part) => (PLACES.has(key) ? undefined : part)));
