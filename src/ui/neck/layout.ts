import type { Fret, Millimetres, StringNumber } from '#neck';
import { distanceTo } from '#neck';

/** What the drawing of a neck depends on. Lengths on the sheet in CSS pixels. */
export interface LayoutSpec {
  readonly width: number;
  /** One em of the page's base type, so that the drawing grows with it. */
  readonly em: number;
  readonly strings: number;
  readonly frets: number;
  readonly scale: Millimetres;
  readonly spacing: 'true' | 'even';
  readonly upright: boolean;
  readonly leftHanded: boolean;
  /** Rows of brackets above the strings. */
  readonly levels: number;
  /** Height of the window: a neck of many strings keeps room for what stands above and below it. */
  readonly sight: number;
  /** A lying neck takes as much of that as there is when nothing but chord and keys stand beside it. */
  readonly tall?: boolean;
}

/**
 * A neck as numbers. `along` runs from the headstock to the body, `across` from the brackets over
 * the strings to the hand's dimension line, both in CSS pixels from 0. `at` turns them into x and y.
 */
export interface NeckLayout {
  readonly spec: LayoutSpec;
  readonly width: number;
  readonly height: number;
  readonly em: number;
  /** Along: where the wire of fret n lies; index 0 is the nut. */
  readonly wires: readonly number[];
  /** Along: the column of open strings, beyond the nut. */
  readonly open: number;
  /** Along: the column of string names. */
  readonly names: number;
  /** Across: string 1 first. */
  readonly lines: readonly number[];
  readonly gap: number;
  /** Across: middle of the row of fret numbers. */
  readonly numbers: number;
  /** Across: the row of finger numbers, the dimension line, the Roman numeral. */
  readonly fingers: number;
  readonly dimension: number;
  readonly numeral: number;
  /** Across: depth of one row of brackets. */
  readonly level: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A stretch of the neck along its length. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** Share of the drawn neck from the nut to each fret wire, 0 … 1. */
function shares(spec: LayoutSpec): readonly number[] {
  const wires = Array.from({ length: spec.frets + 1 }, (_, n) => n);
  if (spec.spacing === 'even') return wires.map((n) => n / spec.frets);
  const end = distanceTo(spec.scale, spec.frets);
  return wires.map((n) => distanceTo(spec.scale, n) / end);
}

const clamp = (low: number, value: number, high: number): number =>
  Math.min(high, Math.max(low, value));

/** A row of brackets is a row of buttons: no lower than this many pixels (WCAG 2.2, 2.5.8). */
const TARGET = 24;

/** Ems from the edge: string names, open strings, nut; and what is kept free at the far end. */
const BEFORE = { names: 0.5, open: 2.45, nut: 4.05, after: 0.6 };
/** Ems across: one bracket row, air around the strings, and the rows under them. */
const ROWS = {
  level: 1.45,
  air: 1.1,
  numbers: 1.3,
  fingers: 2.65,
  dimension: 3.65,
  numeral: 4.9,
  end: 5.8,
};

/** Share of the window's height that the strings of a lying neck may take. */
const SIGHT = { usual: 0.25, tall: 0.31 };

function gapOf(spec: LayoutSpec, taken: number): number {
  const spaces = Math.max(1, spec.strings - 1);
  if (spec.upright) return clamp(0.94 * spec.em, (spec.width - taken) / spaces, 3 * spec.em);
  if (spec.tall) return Math.min((SIGHT.tall * spec.sight) / spaces, 3.6 * spec.em);
  const wide = clamp(1.75 * spec.em, spec.width / 33, 3.6 * spec.em);
  return Math.min(wide * (spec.strings > 6 ? 0.9 : 1), (SIGHT.usual * spec.sight) / spaces);
}

function lengthOf(spec: LayoutSpec, parts: readonly number[]): number {
  if (!spec.upright) return spec.width;
  const last = 1 - (parts[spec.frets - 1] ?? 0);
  return clamp(34 * spec.em, (1.3 * spec.em) / last, 64 * spec.em);
}

/** The neck as numbers, from the width there is for it. */
export function layoutNeck(spec: LayoutSpec): NeckLayout {
  const { em } = spec;
  const parts = shares(spec);
  const length = lengthOf(spec, parts);
  const level = Math.max(TARGET, ROWS.level * em);
  const top = spec.levels * level + ROWS.air * em;
  const bottom = (ROWS.air + ROWS.end) * em;
  const gap = round(gapOf(spec, top + bottom));
  const nut = BEFORE.nut * em;
  const board = length - nut - BEFORE.after * em;
  const foot = top + gap * (spec.strings - 1) + ROWS.air * em;
  const depth = round(foot + ROWS.end * em);
  return {
    spec,
    em,
    gap,
    width: round(spec.upright ? depth : length),
    height: round(spec.upright ? length : depth),
    wires: parts.map((part) => round(nut + board * part)),
    open: BEFORE.open * em,
    names: BEFORE.names * em,
    lines: Array.from({ length: spec.strings }, (_, i) => round(top + gap * i)),
    numbers: round(foot + (ROWS.numbers - 0.6) * em),
    fingers: round(foot + (ROWS.fingers - 0.6) * em),
    dimension: round(foot + (ROWS.dimension - 0.6) * em),
    numeral: round(foot + (ROWS.numeral - 0.6) * em),
    level,
  };
}

/** Where a point of the neck lies on the sheet: mirrored for the left hand, turned when upright. */
export function at(layout: NeckLayout, along: number, across: number): Point {
  const left = layout.spec.leftHanded;
  if (layout.spec.upright) return { x: left ? across : round(layout.width - across), y: along };
  return { x: left ? round(layout.width - along) : along, y: across };
}

const wire = (layout: NeckLayout, fret: number): number =>
  layout.wires[clamp(0, fret, layout.wires.length - 1)] ?? 0;

/** The space a finger has behind fret `fret`; fret 0 is the column of open strings. */
export function fretSpace(layout: NeckLayout, fret: number): Extent {
  if (fret <= 0) return { from: layout.open - layout.em, to: wire(layout, 0) };
  return { from: wire(layout, fret - 1), to: wire(layout, fret) };
}

/** The frets `first` to `last` from the near edge of the first to the far edge of the last. */
export const fretRange = (layout: NeckLayout, first: number, last: number): Extent => ({
  from: wire(layout, first - 1),
  to: wire(layout, last),
});

/** Along: where a tone at `fret` is drawn. */
export function middleOf(layout: NeckLayout, fret: number): number {
  if (fret <= 0) return layout.open;
  const { from, to } = fretSpace(layout, fret);
  return round((from + to) / 2);
}

/** Ems along that a number needs: two digits lying, larger ones (`tall`), one line of type standing. */
const NUMBER = { lying: 1.4, tall: 1.9, upright: 0.9 };

/** The frets that are numbered: where they lie too close, every other one. */
export function numberedFrets(layout: NeckLayout): readonly number[] {
  const { frets, upright, tall } = layout.spec;
  const room = NUMBER[upright ? 'upright' : tall ? 'tall' : 'lying'] * layout.em;
  const roomy = (fret: number) => middleOf(layout, fret) - middleOf(layout, fret - 1) >= room;
  return Array.from({ length: frets }, (_, i) => i + 1).filter(
    (fret) => fret % 2 === 0 || roomy(fret),
  );
}

/** Where a place is drawn. */
export const placeAt = (layout: NeckLayout, string: StringNumber, fret: Fret): Point =>
  at(layout, middleOf(layout, fret), layout.lines[string - 1] ?? 0);

/** The fret (1 and up) whose space holds a point of the sheet. */
export function fretUnder(layout: NeckLayout, point: Point): number {
  const { upright, leftHanded } = layout.spec;
  const x = leftHanded ? layout.width - point.x : point.x;
  const along = upright ? point.y : x;
  const past = layout.wires.findIndex((edge, n) => n > 0 && along < edge);
  return past < 0 ? layout.wires.length - 1 : past;
}

/** A rectangle on the sheet between two points of the neck. */
export function box(layout: NeckLayout, extent: Extent, across: Extent) {
  const a = at(layout, extent.from, across.from);
  const b = at(layout, extent.to, across.to);
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: round(Math.abs(a.x - b.x)),
    height: round(Math.abs(a.y - b.y)),
  };
}
