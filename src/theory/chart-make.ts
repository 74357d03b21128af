/** Writes a chart as text, in the one canonical way. */
import { isLostBeat, MOST_UNITS } from './chart-bar.ts';
import { beatTicks, COMMON_TIME, evenStart, makeMetre, sameMetre, ticks } from './chart-time.ts';
import { makeEnding } from './chart-words.ts';
import type { Bar, Chart, Metre, Section, Slot, Ticks } from './types.ts';

const BARS_A_LINE = 4;
const PLAIN_REPEAT = 2;

/** Of how many units each slot is. */
type Shares = readonly number[];

const isSlashed = (slot: Slot): boolean => slot.held || isLostBeat(slot);

/** The shares of the slots when the bar is cut where `start` says, in `count` units. */
function sharesOf(
  slots: readonly Slot[],
  count: number,
  start: (i: number) => Ticks,
): Shares | undefined {
  const cuts: number[] = [];
  let unit = 0;
  for (const slot of slots) {
    while (unit < count && start(unit) < slot.start) unit += 1;
    if (unit >= count || start(unit) !== slot.start) return undefined;
    cuts.push(unit);
  }
  return cuts.map((cut, i) => (cuts[i + 1] ?? count) - cut);
}

const inBeats = (slots: readonly Slot[], metre: Metre): Shares | undefined =>
  sharesOf(slots, metre.beats, (i) => ticks(i * beatTicks(metre)));

const inUnits = (slots: readonly Slot[], count: number, metre: Metre): Shares | undefined =>
  sharesOf(slots, count, (i) => evenStart(i, count, metre));

function overfull(slots: readonly Slot[], metre: Metre): Shares | undefined {
  for (let count = metre.beats + 1; count <= MOST_UNITS; count += 1) {
    const shares = inUnits(slots, count, metre);
    if (shares !== undefined) return shares;
  }
  return undefined;
}

const isEven = (bar: Bar): boolean =>
  bar.slots.every((slot, i) => slot.start === evenStart(i, bar.slots.length, bar.metre));

const symbolOf = (slot: Slot): string => (slot.held ? '%' : slot.symbol);

function withSlashes(slots: readonly Slot[], shares: Shares): string {
  const texts = slots.map((slot, i) => {
    const slashes = Array.from({ length: (shares[i] ?? 1) - 1 }, () => '/');
    return [i === 0 && isSlashed(slot) ? '/' : symbolOf(slot), ...slashes].join(' ');
  });
  return texts.join(' ');
}

const evenly = (slots: readonly Slot[]): string => slots.map(symbolOf).join(' ');

function makeSlots(bar: Bar): string {
  const { slots, metre } = bar;
  const [first] = slots;
  if (first === undefined) return 'N.C.';
  const slashed = isSlashed(first);
  if (!slashed && isEven(bar)) return evenly(slots);
  const shares = inBeats(slots, metre) ?? overfull(slots, metre);
  const slashes = shares?.some((share) => share > 1) === true || slashed;
  return shares === undefined || !slashes ? evenly(slots) : withSlashes(slots, shares);
}

function makeBar(bar: Bar, metre: Metre): string {
  const sign = sameMetre(bar.metre, metre) ? '' : `${makeMetre(bar.metre)} `;
  return sign + (bar.same ? '%' : makeSlots(bar));
}

const opening = (bar: Bar): string =>
  (bar.opensRepeat ? '|:' : '|') + (bar.ending === undefined ? '' : makeEnding(bar.ending));

/** The bar line before a bar, drawn together with the one that closes the bar before it. */
function lineBefore(bar: Bar, before: Bar | undefined): string {
  const open = opening(bar);
  const rounds = before?.closesRepeat;
  if (rounds === undefined) return open;
  if (rounds !== PLAIN_REPEAT) return `:|x${rounds} ${open}`;
  return `:${open}`;
}

function lastLine(bar: Bar | undefined): string {
  const rounds = bar?.closesRepeat;
  if (rounds === undefined) return '|';
  return rounds === PLAIN_REPEAT ? ':|' : `:|x${rounds}`;
}

const metreBefore = (bars: readonly Bar[], i: number, before: Metre): Metre =>
  bars[i - 1]?.metre ?? before;

function makeLine(bars: readonly Bar[], from: number, before: Metre): string {
  const row = bars.slice(from, from + BARS_A_LINE);
  const texts = row.map((bar, i) => {
    const text = makeBar(bar, metreBefore(bars, from + i, before));
    return `${lineBefore(bar, row[i - 1])} ${text} `;
  });
  return texts.join('') + lastLine(row.at(-1));
}

function makeSection(section: Section, before: Metre): readonly string[] {
  const lines = section.name === undefined ? [] : [`[${section.name}]`];
  for (let from = 0; from < section.bars.length; from += BARS_A_LINE) {
    lines.push(makeLine(section.bars, from, before));
  }
  return lines;
}

/**
 * The canonical text of a chart: four bars a line, names of passages as `[Name]` on their own lines,
 * a time signature where it changes, symbols as typed. Reading it gives the same chart again
 * (places in the text aside) for every chart that came from reading a text; slots that no notation
 * of shares or beats can express are written as even shares.
 */
export function makeProgression(chart: Chart): string {
  let metre = COMMON_TIME;
  const lines: string[] = [];
  for (const section of chart.sections) {
    lines.push(...makeSection(section, metre));
    metre = section.bars.at(-1)?.metre ?? metre;
  }
  return lines.join('\n');
}
