import type { Reach, Reading, Tone, ToneKind } from '#neck';
import { type Degree, makeDegree, makeNoteName, makePitch, pitchClassOf } from '#theory';
import { at, fretSpace, middleOf, type NeckLayout, type Point, placeAt } from './layout.ts';

/** How a tone's outline is drawn: the root square, colour tones a lozenge, all others round. */
export const OUTLINES = ['disc', 'square', 'lozenge'] as const;
export type Outline = (typeof OUTLINES)[number];

export type Labels = 'degrees' | 'notes' | 'fingers' | 'none';

/** One tone as it is drawn. Lengths in CSS pixels. */
export interface ToneMark extends Point {
  /** `string:fret`, the same as long as the place is the same. */
  readonly key: string;
  /**
   * Which element draws it. A place that stays keeps its slot; a new one takes a slot that came
   * free, so that a new chord changes elements instead of making and removing them.
   */
  readonly slot: number;
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

function radiusOf(layout: NeckLayout, tone: Tone): number {
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

type FreshMark = Omit<ToneMark, 'slot'>;

function markOf(tone: Tone, reading: Reading, layout: NeckLayout, labels: Labels): FreshMark {
  const radius = radiusOf(layout, tone);
  const label = labelOf(tone, labels);
  return {
    ...placeAt(layout, tone.string, tone.fret),
    key: `${tone.string}:${tone.fret}`,
    string: tone.string,
    fret: tone.fret,
    outline: outlineOf(tone),
    kind: tone.kind,
    reach: tone.reach,
    radius,
    label,
    type: typeOf(radius, shareOf(label, tone.reach), layout.em),
    pitch: makePitch(tone.pitch),
    degree: makeDegree(tone.degree),
    bass: isBass(tone, reading),
    away: isAway(tone, reading.position),
    bar: barOf(layout, tone, radius),
  };
}

const FIELDS = [
  'x',
  'y',
  'outline',
  'kind',
  'reach',
  'radius',
  'label',
  'type',
  'pitch',
  'degree',
  'bass',
  'away',
  'bar',
] as const satisfies readonly (keyof FreshMark)[];

const sameMark = (a: ToneMark, b: FreshMark): boolean =>
  FIELDS.every((field) => a[field] === b[field]);

/** What a new place and a slot that came free may have in common. */
type Likeness = (mark: FreshMark) => string;

/** Which free slot is best for a new place: the fewer of its attributes change, the cheaper. */
const LIKENESSES: readonly Likeness[] = [
  ({ string, degree, reach, kind }) => `${string} ${degree} ${reach} ${kind}`,
  ({ degree, reach, kind }) => `${degree} ${reach} ${kind}`,
  ({ reach, kind }) => `${reach} ${kind}`,
  () => '',
];

/** The free slots by what they are like, those that are taken already left out. */
function freeBy(
  like: Likeness,
  free: readonly ToneMark[],
  taken: ReadonlySet<number>,
): ReadonlyMap<string, number[]> {
  const slots = new Map<string, number[]>();
  for (const mark of free) {
    if (taken.has(mark.slot)) continue;
    const key = like(mark);
    const alike = slots.get(key);
    if (alike) alike.push(mark.slot);
    else slots.set(key, [mark.slot]);
  }
  return slots;
}

/** The slot of every place in `fresh`: the one it had, or one that came free, or a new one. */
function slotsOf(
  before: readonly ToneMark[],
  fresh: readonly FreshMark[],
): ReadonlyMap<string, number> {
  const slots = new Map(before.map(({ key, slot }) => [key, slot]));
  const staying = new Set(fresh.map(({ key }) => key));
  const free = before.filter(({ key }) => !staying.has(key));
  const taken = new Set<number>();
  for (const like of LIKENESSES) {
    const left = freeBy(like, free, taken);
    for (const mark of fresh) {
      const slot = slots.has(mark.key) ? undefined : left.get(like(mark))?.pop();
      if (slot === undefined) continue;
      slots.set(mark.key, slot);
      taken.add(slot);
    }
  }
  let next = before.reduce((most, { slot }) => Math.max(most, slot + 1), 0);
  for (const { key } of fresh) if (!slots.has(key)) slots.set(key, next++);
  return slots;
}

/** `marks` in the order of `before`'s, by slot: elements are not moved about in the page. */
const bySlot = (marks: readonly ToneMark[]): readonly ToneMark[] =>
  [...marks].sort((a, b) => a.slot - b.slot);

/**
 * Every tone to draw, by slot. A mark that equals the one of the same place in `before` is that very
 * object, and when all are, so is the list: what did not change is not redrawn.
 */
export function toneMarks(
  reading: Reading | undefined,
  layout: NeckLayout,
  labels: Labels,
  before: readonly ToneMark[] = [],
): readonly ToneMark[] {
  const known = new Map(before.map((mark) => [mark.key, mark]));
  const fresh = reading?.tones.map((tone) => markOf(tone, reading, layout, labels)) ?? [];
  const slots = slotsOf(before, fresh);
  const marks = fresh.map((mark) => {
    const old = known.get(mark.key);
    if (old !== undefined && sameMark(old, mark)) return old;
    return { ...mark, slot: slots.get(mark.key) ?? 0 };
  });
  const ordered = bySlot(marks);
  const same = ordered.length === before.length && ordered.every((mark, i) => mark === before[i]);
  return same ? before : ordered;
}

/** The line that joins the chosen grip's places from string to string, as SVG path data. */
export function gripLine(reading: Reading | undefined, layout: NeckLayout): string {
  const places = (reading?.chosen?.grip?.tones ?? []).map((tone) =>
    placeAt(layout, tone.string, tone.fret),
  );
  return places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
}

/** The chosen grip's barres, each as SVG path data of its middle line. */
export const barreLines = (reading: Reading | undefined, layout: NeckLayout): readonly string[] =>
  (reading?.chosen?.grip?.barres ?? []).map((barre) => {
    const a = placeAt(layout, barre.from, barre.fret);
    const b = placeAt(layout, barre.to, barre.fret);
    return `M${a.x} ${a.y}L${b.x} ${b.y}`;
  });

/**
 * Path data of an outline of half width `r` around a point. The point is part of the path, since a
 * transform on each of fifty tones would make the browser keep fifty layers of drawing apart.
 */
export function outlinePath(outline: Outline, r: number, { x, y }: Point): string {
  if (outline === 'square') {
    const h = tenth(r * 0.9);
    return `M${x - h} ${y - h}h${2 * h}v${2 * h}h${-2 * h}Z`;
  }
  if (outline === 'lozenge') {
    const d = tenth(r * 1.16);
    return `M${x} ${y - d}l${d} ${d}l${-d} ${d}l${-d} ${-d}Z`;
  }
  return `M${x - r} ${y}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0Z`;
}
