import { type Bar, type Chart, type Metre, type Slot, TICKS_PER_QUARTER } from '#theory';

/** Where one chord stands in its bar, as shares of the bar's length. */
export interface Placed {
  /** Index among the chords of the lane. */
  readonly index: number;
  readonly from: number;
  readonly length: number;
  /** The beat it begins on, from 1: `3`, `2⅓`. */
  readonly beat: string;
}

/** A written bar as it is drawn. */
export interface LaneBar {
  /** From 1. */
  readonly number: number;
  /** Length in quarter notes. */
  readonly quarters: number;
  readonly beats: number;
  /** Present where the metre is new. */
  readonly metre?: Metre;
  readonly chords: readonly Placed[];
  /** Share of the bar before its first typed chord, in which an earlier one is held. */
  readonly held: number;
  readonly same: boolean;
  readonly opensRepeat: boolean;
  readonly closesRepeat?: number;
  readonly ending?: readonly number[];
}

export interface LaneRow {
  /** Name of the section that begins with this row. */
  readonly section?: string;
  readonly bars: readonly LaneBar[];
}

/** A chord of the lane: which written bar it stands in (from 1), and its slot there. */
export interface LaneChord {
  readonly index: number;
  readonly bar: number;
  readonly slot: Slot;
}

const QUARTERS = 4;

const quartersOf = ({ beats, unit }: Metre): number => (beats * QUARTERS) / unit;

const sameMetre = (a: Metre | undefined, b: Metre): boolean =>
  a?.beats === b.beats && a.unit === b.unit;

/** Parts of a beat that have a sign of their own, by their denominator. */
const SIGNS: Readonly<Record<number, string>> = {
  2: '½',
  3: '⅓⅔',
  4: '¼½¾',
  5: '⅕⅖⅗⅘',
  6: '⅙⅓½⅔⅚',
  8: '⅛¼⅜½⅝¾⅞',
};

const FRACTIONS = Object.entries(SIGNS).flatMap(([under, signs]) =>
  [...signs].map((sign, i) => ({ share: (i + 1) / Number(under), sign })),
);

/** Ticks are whole, so that a third of a beat is only nearly one. */
const NEARLY = 0.002;

/** The beat, from 1, at a number of ticks into a bar, with its fraction as people write it: `2⅓`. */
export function beatText(ticks: number, { unit }: Metre): string {
  const beat = ticks / ((TICKS_PER_QUARTER * QUARTERS) / unit) + 1;
  const whole = Math.floor(beat + NEARLY);
  const rest = beat - whole;
  if (Math.abs(rest) < NEARLY) return String(whole);
  const sign = FRACTIONS.find(({ share }) => Math.abs(rest - share) < NEARLY)?.sign;
  return sign === undefined ? beat.toFixed(2) : `${whole}${sign}`;
}

function placedOf(chords: readonly LaneChord[], ticks: number, metre: Metre): readonly Placed[] {
  return chords.map(({ index, slot }, i) => {
    const from = slot.start / ticks;
    const next = chords[i + 1];
    const to = next === undefined ? 1 : next.slot.start / ticks;
    return { index, from, length: to - from, beat: beatText(slot.start, metre) };
  });
}

const ticksOf = (bar: Bar): number =>
  Math.max(1, ...bar.slots.map((slot) => slot.start + slot.length));

function barOf(
  bar: Bar,
  number: number,
  chords: readonly LaneChord[],
  before: Metre | undefined,
): LaneBar {
  const placed = placedOf(chords, ticksOf(bar), bar.metre);
  return {
    number,
    quarters: quartersOf(bar.metre),
    beats: bar.metre.beats,
    ...(sameMetre(before, bar.metre) ? {} : { metre: bar.metre }),
    chords: placed,
    held: placed[0]?.from ?? 1,
    same: bar.same,
    opensRepeat: bar.opensRepeat,
    ...(bar.closesRepeat === undefined ? {} : { closesRepeat: bar.closesRepeat }),
    ...(bar.ending === undefined ? {} : { ending: bar.ending }),
  };
}

function byBar(chords: readonly LaneChord[]): ReadonlyMap<number, readonly LaneChord[]> {
  const bars = new Map<number, LaneChord[]>();
  for (const chord of chords) {
    const bar = bars.get(chord.bar);
    if (bar === undefined) bars.set(chord.bar, [chord]);
    else bar.push(chord);
  }
  return bars;
}

/** The metre a chart is in as long as it does not say otherwise (common practice). */
const COMMON: Metre = { beats: 4, unit: 4 };

/** The bars of a chart, section by section. */
function sectionsOf(chart: Chart, chords: readonly LaneChord[]) {
  const inBar = byBar(chords);
  let number = 0;
  let metre = COMMON;
  return chart.sections.map((section) => {
    const bars = section.bars.map((bar) => {
      number += 1;
      const drawn = barOf(bar, number, inBar.get(number) ?? [], metre);
      metre = bar.metre;
      return drawn;
    });
    return { name: section.name, bars };
  });
}

function chunks<T>(items: readonly T[], size: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, i) =>
    items.slice(i * size, (i + 1) * size),
  );
}

/** The chart in rows of at most `columns` bars; a section begins a new row. */
export function laneRows(
  chart: Chart,
  chords: readonly LaneChord[],
  columns: number,
): readonly LaneRow[] {
  return sectionsOf(chart, chords).flatMap(({ name, bars }) =>
    chunks(bars, columns).map((row, i) =>
      i === 0 && name !== undefined ? { section: name, bars: row } : { bars: row },
    ),
  );
}

/** Length of the longest row in quarter notes: all rows are drawn to the scale that it needs. */
export const longestRow = (rows: readonly LaneRow[]): number =>
  Math.max(1, ...rows.map((row) => row.bars.reduce((sum, bar) => sum + bar.quarters, 0)));

/** Where a chord lies in the lane: its row from 0, and of the lane's width where it begins and its own. */
export interface Spot {
  readonly row: number;
  readonly from: number;
  readonly width: number;
}

function spotInRow(bars: readonly LaneBar[], index: number): Omit<Spot, 'row'> | undefined {
  let before = 0;
  for (const { quarters, chords } of bars) {
    const placed = chords.find((chord) => chord.index === index);
    if (placed) return { from: before + placed.from * quarters, width: placed.length * quarters };
    before += quarters;
  }
  return undefined;
}

/** The spot of a chord where `quarters` fill the lane's width; undefined where it is not drawn. */
export function spotOf(
  rows: readonly LaneRow[],
  quarters: number,
  index: number,
): Spot | undefined {
  for (const [row, { bars }] of rows.entries()) {
    const spot = spotInRow(bars, index);
    if (spot) return { row, from: spot.from / quarters, width: spot.width / quarters };
  }
  return undefined;
}

/** Ems below which a cell has no room for the bar that shows how much the hand has. */
export const TIGHT = 5.6;

/** Ems that signs of a symbol take in the lane, where numbers and what follows them are raised. */
const WIDTHS: readonly (readonly [signs: RegExp, ems: number])[] = [
  [/[A-Z]/, 0.95],
  [/[mMwΔ△]/, 0.85],
  [/[sutld()]/, 0.4],
];
const USUAL_WIDTH = 0.46;
const AIR = 0.35;

const widthOf = (sign: string): number =>
  WIDTHS.find(([signs]) => signs.test(sign))?.[1] ?? USUAL_WIDTH;

/** Ems that a chord symbol of the lane takes, a rough measure of the serif face. */
export const symbolEms = (symbol: string): number =>
  [...symbol].reduce((sum, sign) => sum + widthOf(sign), AIR);

/** Ems that a form with its place takes: `E VIII`. */
const FORM_EMS = 3.5;

/** A row holds 4 bars, or a half or a quarter of that. */
const COLUMNS = [4, 2, 1];

/** How many bars a row holds in `width` ems, so that no chord symbol runs into the next. */
export function columnsFor(chart: Chart, chords: readonly LaneChord[], width: number): number {
  const fits = (columns: number): boolean => {
    const rows = laneRows(chart, chords, columns);
    const quarter = width / longestRow(rows);
    const bars = rows.flatMap((row) => row.bars);
    return bars.every((bar) =>
      bar.chords.every(({ index, length }) => {
        const symbol = chords[index]?.slot.symbol ?? '';
        const room = Math.max(symbolEms(symbol), FORM_EMS);
        return length * bar.quarters * quarter >= room && bar.quarters * quarter >= 6;
      }),
    );
  };
  return COLUMNS.find(fits) ?? 1;
}
