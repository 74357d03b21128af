import type { Reach, Reading, Tone, ToneKind } from '#neck';
import { type Degree, LETTERS, makeDegree, makeNoteName, makePitch, pitchClassOf } from '#theory';
import { at, fretSpace, middleOf, type NeckLayout, type Point, placeAt } from './layout.ts';
import { remembered } from './remembered.ts';

/** How a tone's outline is drawn: the root square, colour tones a lozenge, all others round. */
export const OUTLINES = ['disc', 'square', 'lozenge'] as const;
export type Outline = (typeof OUTLINES)[number];

export type Labels = 'degrees' | 'notes' | 'fingers' | 'none';

/** One tone as it is drawn. Lengths in CSS pixels. */
export interface ToneMark extends Point {
  /** `string:fret`, the same as long as the place is the same. */
  readonly key: string;
  readonly string: number;
  readonly fret: number;
  readonly outline: Outline;
  readonly kind: ToneKind;
  readonly reach: Reach;
  readonly radius: number;
  readonly label: string;
  /** Height of the label's type. */
  readonly type: number;
  readonly pitch: string;
  readonly degree: string;
  /** Whether it can be the bass of a slash chord. */
  readonly bass: boolean;
  /** An open string that sounds far from the hand. */
  readonly away: boolean;
  /** Path data of the bar that marks an open string; empty for all others. */
  readonly bar: string;
  /** Path data of the outline, the bar with it. */
  readonly drawn: string;
  /** Path data of the ring around what only a stretch reaches; empty for all others. */
  readonly ring: string;
}

/** How large a mark is for its reach, as a share of the full size under the hand. */
const SIZE: Readonly<Record<Reach, number>> = {
  hand: 1,
  stretch: 0.86,
  open: 0.82,
  bend: 0.74,
  out: 0.66,
};

const isRoot = (degree: Degree): boolean => degree.number === 1 && degree.alter === 0;

function outlineOf(tone: Tone): Outline {
  if (isRoot(tone.degree)) return 'square';
  return tone.kind === 'colour' ? 'lozenge' : 'disc';
}

function labelOf(tone: Tone, labels: Labels): string {
  if (labels === 'degrees') return makeDegree(tone.degree, 'sign');
  if (labels === 'notes') return makeNoteName(tone.pitch, 'sign');
  if (labels === 'none') return '';
  // One hand holds the grip or has a finger to every fret: both at once would contradict each other.
  return tone.finger === undefined || tone.kind !== 'shape' ? '' : String(tone.finger);
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

export function radiusOf(layout: NeckLayout, tone: Tone): number {
  const { from, to } = fretSpace(layout, tone.fret);
  const room = Math.min(layout.gap * 0.43, (to - from) * 0.47, layout.em * 1.25);
  return tenth(Math.max(room * SIZE[tone.reach], layout.em * 0.46));
}

/** Labels of one and of two letters share a size out of reach: an even row of them is read faster. */
function shareOf(label: string, reach: Reach): number {
  if (label.length > 2) return 0.82;
  if (reach === 'out') return 1.08;
  return label.length === 2 ? 0.98 : 1.16;
}

/** Type that fits into a mark, in whole pixels: long labels are set smaller, none too small to read. */
const typeOf = (radius: number, share: number, em: number): number =>
  Math.round(Math.max(radius * share, em * 0.62));

/** Pixels between the ring of an open string and its bar. */
const BAR_OFF = 3;

/** A short bar across an open string, on the side of the nut. */
function barOf(layout: NeckLayout, { string, fret, reach }: Tone, radius: number): string {
  if (reach !== 'open') return '';
  const along = middleOf(layout, fret) + radius + BAR_OFF;
  const across = layout.lines[string - 1] ?? 0;
  const a = at(layout, along, across - radius * 0.55);
  const b = at(layout, along, across + radius * 0.55);
  return `M${tenth(a.x)} ${tenth(a.y)}L${tenth(b.x)} ${tenth(b.y)}`;
}

/** Frets between an open string and the index from which on the string counts as away. */
const AWAY = 5;

const isAway = ({ reach, fret }: Tone, position: number): boolean =>
  reach === 'open' && position - fret >= AWAY;

/** Whether a tone can be the bass of a slash chord; false for all tones of a chord without one. */
const isBass = ({ pitch }: Tone, { chord: { bass } }: Reading): boolean =>
  bass !== undefined && pitchClassOf(pitch) === pitchClassOf(bass);

/** Half the width of the ring around what only a stretch reaches, as a share of the mark's. */
export const RING = 1.24;

/** Everything that a mark is made from, but the layout and what labels say. */
interface Source {
  readonly tone: Tone;
  readonly bass: boolean;
  readonly away: boolean;
}

function markOf({ tone, bass, away }: Source, layout: NeckLayout, labels: Labels): ToneMark {
  const { string, fret, kind, reach } = tone;
  const spot = placeAt(layout, string, fret);
  const radius = radiusOf(layout, tone);
  const label = labelOf(tone, labels);
  const outline = outlineOf(tone);
  const bar = barOf(layout, tone, radius);
  return {
    ...spot,
    key: `${string}:${fret}`,
    string,
    fret,
    outline,
    kind,
    reach,
    radius,
    label,
    type: typeOf(radius, shareOf(label, reach), layout.em),
    pitch: makePitch(tone.pitch),
    degree: makeDegree(tone.degree),
    bass,
    away,
    bar,
    drawn: outlinePath(outline, radius, spot) + bar,
    ring: reach === 'stretch' ? outlinePath(outline, radius * RING, spot) : '',
  };
}

/** A source as a whole number, no two alike: a mixed radix is looked up faster than a text is made. */
function numberOf({ tone, bass, away }: Source): number {
  const { string, fret, kind, reach, degree, pitch, finger = 0 } = tone;
  let number = string * 64 + fret;
  number = number * 4 + KINDS.indexOf(kind);
  number = number * 8 + REACHES.indexOf(reach);
  number = number * 16 + degree.number;
  number = number * 16 + degree.alter + 8;
  number = number * 8 + LETTERS.indexOf(pitch.letter);
  number = number * 16 + pitch.alter + 8;
  number = number * 8 + finger;
  return number * 4 + (bass ? 2 : 0) + (away ? 1 : 0);
}

const KINDS: readonly ToneKind[] = ['shape', 'chord', 'colour'];
const REACHES: readonly Reach[] = ['hand', 'stretch', 'open', 'bend', 'out'];

type Known = Map<number, ToneMark>;

/** Marks made so far, by layout and label: most chords put tones where some chord had them before. */
const made = new WeakMap<NeckLayout, Partial<Record<Labels, Known>>>();

function knownFor(layout: NeckLayout, labels: Labels): Known {
  const byLabel = made.get(layout) ?? {};
  const known = byLabel[labels] ?? new Map();
  byLabel[labels] = known;
  made.set(layout, byLabel);
  return known;
}

const NO_MARKS: readonly ToneMark[] = [];

const marksOf = remembered(
  (reading: Reading, layout: NeckLayout, labels: Labels): readonly ToneMark[] => {
    const known = knownFor(layout, labels);
    return reading.tones.map((tone) => {
      const away = isAway(tone, reading.position);
      const source: Source = { tone, bass: isBass(tone, reading), away };
      const number = numberOf(source);
      const mark = known.get(number) ?? markOf(source, layout, labels);
      known.set(number, mark);
      return mark;
    });
  },
);

/** Every tone to draw. Marks that are equal are the same object, whatever reading they are from. */
export const toneMarks = (
  reading: Reading | undefined,
  layout: NeckLayout,
  labels: Labels,
): readonly ToneMark[] => (reading ? marksOf(reading, layout, labels) : NO_MARKS);

/** The line that joins the chosen grip's places from string to string, as SVG path data. */
export function gripLine(reading: Reading | undefined, layout: NeckLayout): string {
  const places = (reading?.chosen?.grip?.tones ?? []).map((tone) =>
    placeAt(layout, tone.string, tone.fret),
  );
  return places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
}

/** Gaps between strings that a barre reaches beyond its outer tones, whose marks would hide it. */
const BARRE_END = 0.4;

/** A point beyond `a`, as seen from `b`. */
function beyond(a: Point, b: Point, by: number): Point {
  const share = by / Math.hypot(a.x - b.x, a.y - b.y);
  return { x: a.x + (a.x - b.x) * share, y: a.y + (a.y - b.y) * share };
}

/** The chosen grip's barres, each as SVG path data of its middle line. */
export const barreLines = (reading: Reading | undefined, layout: NeckLayout): readonly string[] =>
  (reading?.chosen?.grip?.barres ?? []).map((barre) => {
    const a = placeAt(layout, barre.from, barre.fret);
    const b = placeAt(layout, barre.to, barre.fret);
    const [from, to] = [beyond(a, b, BARRE_END * layout.gap), beyond(b, a, BARRE_END * layout.gap)];
    return `M${from.x} ${from.y}L${to.x} ${to.y}`;
  });

/**
 * Path data of an outline of half width `r` around a point. The point is part of the path, since a
 * transform on each of fifty tones would make the browser keep fifty layers of drawing apart.
 */
export function outlinePath(outline: Outline, r: number, { x, y }: Point): string {
  if (outline === 'square') {
    const h = tenth(r * 0.9);
    return `M${tenth(x - h)} ${tenth(y - h)}h${2 * h}v${2 * h}h${-2 * h}Z`;
  }
  if (outline === 'lozenge') {
    const d = tenth(r * 1.16);
    return `M${x} ${tenth(y - d)}l${d} ${d}l${-d} ${d}l${-d} ${-d}Z`;
  }
  const half = tenth(r);
  const arc = `a${half} ${half} 0 1 1`;
  return `M${tenth(x - half)} ${y}${arc} ${2 * half} 0${arc} ${-2 * half} 0Z`;
}
