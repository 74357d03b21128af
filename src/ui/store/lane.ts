/** The chords of a chart as cells of the lane, and the order in which they are played. */
import type { Moment } from '#lesson';
import type { FormAtHand, Grip } from '#neck';
import {
  type Bar,
  type Chart,
  type Chord,
  type Key,
  type PlacedSlot,
  parseAt,
  romanNumeral,
  type Slot,
  sameDegree,
  sameNote,
  slotsOf,
  unfold,
} from '#theory';
import type { LaneCell } from './types.ts';

/** The chord of a slot, if it has one that could be read. */
export const chordOf = ({ harmony }: Slot): Chord | undefined =>
  harmony.kind === 'chord' ? harmony.chord : undefined;

export function sameChord(a: Chord, b: Chord): boolean {
  if (a === b) return true;
  const sameBass = a.bass && b.bass ? sameNote(a.bass, b.bass) : a.bass === b.bass;
  if (!sameBass || !sameNote(a.root, b.root) || a.tones.length !== b.tones.length) return false;
  return a.tones.every((tone, i) => {
    const other = b.tones[i];
    return other !== undefined && sameDegree(tone, other);
  });
}

const barsOf = (chart: Chart): readonly Bar[] => chart.sections.flatMap((section) => section.bars);

/** A chord that goes on is no cell of its own, unless its bar stands for the bar before. */
const isCell = ({ slot, bar }: PlacedSlot, bars: readonly Bar[]): boolean =>
  !slot.held || bars[bar - 1]?.same === true;

function cellOf({ slot, bar, at }: PlacedSlot, index: number): LaneCell {
  const cell = { index, bar, at, slot, symbol: slot.symbol };
  return slot.harmony.kind === 'unread' ? { ...cell, problem: slot.harmony.problem } : cell;
}

const sameSpan = (a: Slot, b: Slot): boolean =>
  a.span.at === b.span.at && a.span.length === b.span.length;

const sameTime = (a: Slot, b: Slot): boolean =>
  a.start === b.start && a.length === b.length && a.held === b.held;

/** Equal symbols mean equal chords; a problem also has a line and column, which may have moved. */
const sameCell = (a: LaneCell, b: LaneCell): boolean =>
  a.problem === b.problem &&
  a.at === b.at &&
  a.symbol === b.symbol &&
  sameSpan(a.slot, b.slot) &&
  sameTime(a.slot, b.slot);

/** The cells of a chart, without form and numeral; equal ones are taken over from `before`. */
export function cellsOf(chart: Chart, before: readonly LaneCell[]): readonly LaneCell[] {
  const bars = barsOf(chart);
  return slotsOf(chart)
    .filter((placed) => isCell(placed, bars))
    .map((placed, index) => {
      const cell = cellOf(placed, index);
      const known = before[index];
      return known && sameCell(known, cell) ? known : cell;
    });
}

/** The cells in the order in which they are played, repeats written out. */
export function inPlay(chart: Chart, cells: readonly LaneCell[]): readonly LaneCell[] {
  const byBar = new Map<number, LaneCell[]>();
  for (const cell of cells) {
    const there = byBar.get(cell.bar);
    if (there) there.push(cell);
    else byBar.set(cell.bar, [cell]);
  }
  return unfold(chart).flatMap((bar) => byBar.get(bar + 1) ?? []);
}

/** The next chord that differs, from `here` on; it may be what the one played after it is followed by. */
function followedBy(here: LaneCell, after: LaneCell | undefined, beyond: number): number {
  const chord = after && chordOf(after.slot);
  if (!after || !chord) return beyond;
  const present = chordOf(here.slot);
  return present && sameChord(chord, present) ? beyond : after.index;
}

/**
 * For every cell the index of the next other chord in playing order (the first time round), or -1.
 * N.C. and what cannot be read are passed over.
 */
export function nextOf(chart: Chart, cells: readonly LaneCell[]): readonly number[] {
  const next = cells.map(() => -1);
  let after: LaneCell | undefined;
  let beyond = -1;
  for (const cell of inPlay(chart, cells).toReversed()) {
    beyond = followedBy(cell, after, beyond);
    next[cell.index] = beyond;
    after = cell;
  }
  return next;
}

const isOther = (chord: Chord | undefined, { slot }: LaneCell): boolean => {
  const other = chordOf(slot);
  return chord !== undefined && other !== undefined && !sameChord(chord, other);
};

/** How the next other chord is come to, in the words it is announced with: “Next, by the repeat”. */
export function nextWords(cells: readonly LaneCell[], from: number, to: number): string {
  const here = cells[from];
  if (!here || to === from + 1) return 'Next';
  if (to <= from) return 'Next, by the repeat';
  const between = cells.slice(from + 1, to);
  const chord = chordOf(here.slot);
  if (between.some((cell) => isOther(chord, cell))) return 'Next, by the ending';
  const rest = between.find(({ slot }) => !chordOf(slot));
  return rest ? `Next, after ${rest.symbol}` : 'Next other chord';
}

/** Index of the cell that sounds at a moment; the first or last if it lies outside. -1 = no cells. */
export function cellAt(cells: readonly LaneCell[], { bar, beat }: Moment): number {
  const started = cells.findLastIndex((cell) => {
    if (cell.bar !== bar) return cell.bar < bar;
    // Beats between two are written to three decimals.
    return momentOf(cell).beat <= beat + 0.001;
  });
  return Math.max(started, Math.min(0, cells.length - 1));
}

/** Where a cell begins. */
export function momentOf(cell: LaneCell): Moment {
  const moment = parseAt(cell.at);
  return moment.ok ? moment.value : { bar: cell.bar, beat: 1 };
}

/** Index of the cell at a caret in the typed text, or the last before it; -1 if there is none. */
export function cellAtOffset(cells: readonly LaneCell[], caret: number): number {
  const inside = cells.findIndex(
    ({ slot: { span } }) => span.at <= caret && caret <= span.at + span.length,
  );
  return inside >= 0 ? inside : cells.findLastIndex((cell) => cell.slot.span.at <= caret);
}

const sameNumeral = (a: LaneCell['roman'], b: LaneCell['roman']): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

function numbered(cell: LaneCell, roman: LaneCell['roman']): LaneCell {
  if (sameNumeral(cell.roman, roman)) return cell;
  const { roman: _before, ...rest } = cell;
  return roman === undefined ? rest : { ...rest, roman };
}

/** The cells with their Roman numerals in a key; one whose numeral stays keeps its reference. */
export function withNumerals(
  cells: readonly LaneCell[],
  next: readonly number[],
  key: Key | undefined,
): readonly LaneCell[] {
  return cells.map((cell, index) => {
    const chord = chordOf(cell.slot);
    const after = cells[next[index] ?? -1];
    const following = after && chordOf(after.slot);
    return numbered(cell, chord && key && romanNumeral(chord, key, following));
  });
}

/** The form that serves a cell, and where the hand is for it if a route says so. */
export type Served = Pick<LaneCell, 'form' | 'position'>;

/** The cells with what serves each; one for which that stays keeps its reference. */
export function withForms(
  cells: readonly LaneCell[],
  serve: (cell: LaneCell) => Served,
): readonly LaneCell[] {
  const served = cells.map((cell) => formed(cell, serve(cell)));
  return served.every((cell, i) => cell === cells[i]) ? cells : served;
}

/** A grip decides all places, so that comparing the counts is enough once it is the same. */
const sameForm = (a: FormAtHand | undefined, b: FormAtHand | undefined): boolean =>
  a === b ||
  (a?.form === b?.form &&
    a?.anchor === b?.anchor &&
    a?.under === b?.under &&
    a?.stretched === b?.stretched &&
    sameGrip(a?.grip, b?.grip));

const sameGrip = (a: Grip | undefined, b: Grip | undefined): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

function formed(cell: LaneCell, { form, position }: Served): LaneCell {
  if (sameForm(cell.form, form) && cell.position === position) return cell;
  const { form: _form, position: _position, ...rest } = cell;
  return { ...rest, ...(form && { form }), ...(position !== undefined && { position }) };
}
