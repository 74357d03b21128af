/** What the lenses draw over the neck, as numbers and SVG path data. Lengths in CSS pixels. */
import type { Bend, Connection, Place, TurnedString } from '#neck';
import { makeDegree } from '#theory';
import { at, fretSpace, middleOf, type NeckLayout, type Point, placeAt } from '../neck/layout.ts';
import { type Says, saysDegree } from './labelled.ts';
import { signs } from './material-words.ts';

const tenth = (value: number): number => Math.round(value * 10) / 10;
const point = ({ x, y }: Point): string => `${tenth(x)} ${tenth(y)}`;

/** Ems: the widest mark on the neck, and on an open string, beside whose name its rings have room. */
const WIDEST = { fretted: 1.25, open: 0.9 };

/** Half the width of what marks a place. */
export function placeRadius(layout: NeckLayout, fret: number): number {
  const { from, to } = fretSpace(layout, fret);
  const widest = layout.em * (fret > 0 ? WIDEST.fretted : WIDEST.open);
  return tenth(Math.min(layout.gap * 0.43, (to - from) * 0.47, widest));
}

export const bendKey = ({ string, fret, steps, of }: Bend): string =>
  `bend ${string}:${fret}:${steps}:${of}`;

/** The order of degrees makes it unique where two tones of a chord share a place. */
export const connectionKey = ({ from, to, fromDegree, toDegree, bend }: Connection): string =>
  `way ${from.string}:${from.fret} ${to.string}:${to.fret} ${makeDegree(fromDegree)}>${makeDegree(toDegree)}${bend ? ' bent' : ''}`;

/** The two strokes of an arrowhead at the end of a line that comes from `from`. */
export function arrowHead(from: Point, tip: Point, size: number): string {
  const angle = Math.atan2(tip.y - from.y, tip.x - from.x);
  const barb = (turn: number): Point => ({
    x: tip.x - size * Math.cos(angle + turn),
    y: tip.y - size * Math.sin(angle + turn),
  });
  return `M${point(barb(0.5))}L${point(tip)}L${point(barb(-0.5))}`;
}

/** One bend as it is drawn: an arc from the place to what it reaches, lifted over the string. */
export interface BendArc {
  /** Keys of all bends that are this arc: its target may be a tone of both chords. */
  readonly keys: readonly string[];
  readonly path: string;
  readonly start: Point;
  /** It begins at the edge of a tone. */
  readonly marked: boolean;
  readonly label: string;
  readonly tip: Point;
  readonly hard: boolean;
  /** It reaches a tone of the next chord only. */
  readonly next: boolean;
}

/** Shares of fret and string spacing at which a bend of 1, 2 and 3 half steps ends. */
const ENDS: Readonly<Record<1 | 2 | 3, readonly [along: number, across: number]>> = {
  1: [0.4, 0.34],
  2: [0.54, 0.62],
  3: [0.68, 0.9],
};

/** Whether a tone is drawn at a place; an arc then begins at its edge. */
export type IsMarked = (place: Place) => boolean;

function arcOf(layout: NeckLayout, bends: readonly [Bend, ...Bend[]], isMarked: IsMarked): BendArc {
  const [bend] = bends;
  const { from, to } = fretSpace(layout, bend.fret);
  const space = Math.max(to - from, layout.em * 1.9);
  const [far, high] = ENDS[bend.steps];
  const along = middleOf(layout, bend.fret);
  const across = layout.lines[bend.string - 1] ?? 0;
  const end = { along: along + far * space, across: across - high * layout.gap };
  const edge = isMarked(bend) ? placeRadius(layout, bend.fret) : 0;
  const start = at(layout, along + edge, across);
  const turn = at(layout, end.along, across);
  const foot = at(layout, end.along, end.across + layout.em * 0.42);
  const labels = bends.map(({ degree, of }) =>
    of === 'next' ? `→${signs(degree)}` : signs(degree),
  );
  return {
    keys: bends.map(bendKey),
    path: `M${point(start)}Q${point(turn)} ${point(foot)}`,
    start,
    marked: edge > 0,
    label: labels.join(' '),
    tip: at(layout, end.along, end.across),
    hard: bend.ease === 'hard',
    next: bends.every(({ of }) => of === 'next'),
  };
}

/** The arcs of all bends that are practical, the easiest first. */
export function bendArcs(
  bends: readonly Bend[],
  layout: NeckLayout,
  isMarked: IsMarked,
): readonly BendArc[] {
  const groups = new Map<string, [Bend, ...Bend[]]>();
  for (const bend of bends) {
    if (bend.ease === 'no') continue;
    const key = `${bend.string}:${bend.fret}:${bend.steps}`;
    const group = groups.get(key);
    if (group) group.push(bend);
    else groups.set(key, [bend]);
  }
  return [...groups.values()].map((group) => arcOf(layout, group, isMarked));
}

/** A small move from one place to another. */
export interface Move {
  readonly key: string;
  readonly to: Point;
  /** Half the widths of the rings around where it ends: two for a tone that stays. */
  readonly rings: readonly number[];
  /** No tone of this chord is drawn where it ends. */
  readonly free: boolean;
  /** Path data of the arrow; empty for a tone that stays. */
  readonly path: string;
  readonly label: string;
  readonly tag: Tag;
}

/** An arrow from the edge of one mark to the edge of another. */
function arrowBetween(from: Point, to: Point, radius: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < radius) return '';
  const room = Math.min(radius * 1.18, length * 0.4);
  const share = room / length;
  const a = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  const b = { x: to.x - (to.x - from.x) * share, y: to.y - (to.y - from.y) * share };
  return `M${point(a)}L${point(b)}${arrowHead(a, b, Math.min(7, radius * 0.6))}`;
}

/** Where a word about a place stands, and which of its ends is there. */
export interface Tag extends Point {
  readonly anchor: 'start' | 'middle' | 'end';
}

/**
 * Beside a mark of half width `radius`, on the side of the body: under the string, but above the
 * last, under which the numbers of the frets stand.
 */
export function tagAt(layout: NeckLayout, { string, fret }: Place, radius: number): Tag {
  const along = middleOf(layout, fret);
  const across = layout.lines[string - 1] ?? 0;
  if (layout.spec.upright) {
    return { ...at(layout, along + radius + layout.em * 0.62, across), anchor: 'middle' };
  }
  const side = string === layout.lines.length ? -1 : 1;
  const beside = at(layout, along + radius * 0.78, across + side * radius * 0.86);
  return { ...beside, anchor: layout.spec.leftHanded ? 'end' : 'start' };
}

/** A bend stays at its place: its arrow rises from it. */
function bentPath(layout: NeckLayout, { bend }: Connection): string {
  return bend ? arcOf(layout, [bend], () => true).path : '';
}

/** Rings go around a tone; where there is none the ring holds the degree itself. */
const RINGS = { one: 1.14, two: 1.32 };

/** `♭7→3`, `→3`; a note that is the same and what has no name are not said twice. */
function moveLabel(before: string, after: string): string {
  return before === after || after === '' ? before : `${before}→${after}`;
}

export function connectionMove(
  layout: NeckLayout,
  connection: Connection,
  isMarked: IsMarked,
  says: Says = saysDegree,
): Move {
  const { from, to, fromDegree, toDegree, bend } = connection;
  const a = placeAt(layout, from.string, from.fret);
  const b = placeAt(layout, to.string, to.fret);
  const radius = placeRadius(layout, to.fret);
  const stays = from.string === to.string && from.fret === to.fret;
  const free = !isMarked(to);
  const [before, after] = [says(fromDegree, 'now', from), says(toDegree, 'next', to)];
  return {
    key: connectionKey(connection),
    to: b,
    rings: [RINGS.one, ...(stays && !bend ? [RINGS.two] : [])].map((ring) => ring * radius),
    free,
    path: bend ? bentPath(layout, connection) : arrowBetween(a, b, radius),
    label: free ? after : moveLabel(stays ? before : '', after),
    tag: free ? { ...b, anchor: 'middle' } : tagAt(layout, to, radius * RINGS.two),
  };
}

/** A string of a form that was turned: where its tone was and where it is now. */
export interface TurnMark {
  readonly string: number;
  /** What was there before; absent where a string joins. */
  readonly ghost?: Point & { readonly label: string };
  /** Where it is now; absent where a string is left out. */
  readonly now?: Point;
  readonly radius: number;
  readonly path: string;
}

export function turnMark(layout: NeckLayout, { string, from, to }: TurnedString): TurnMark {
  const ghost = from && { ...placeAt(layout, string, from.fret), label: signs(from.degree) };
  const now = to && placeAt(layout, string, to.fret);
  const radius = placeRadius(layout, (to ?? from)?.fret ?? 1);
  const path = ghost && now ? arrowBetween(ghost, now, radius) : '';
  return { string, radius, path, ...(ghost && { ghost }), ...(now && { now }) };
}
