/** What stands in the tones and around them, by how it looks: everything alike is one path on the page. */
import type { Pen } from '../type/pen.ts';
import type { ToneMark } from './marks.ts';
import { remembered } from './remembered.ts';

/**
 * The looks of an outline as classes, in the order in which they are drawn: what is out of reach
 * lies lowest, the form's grip highest. Some fifty outlines are a dozen paths: so many elements
 * fewer to style, lay out and paint with every move of the cursor.
 */
export const LOOKS = [
  'mark quiet',
  'mark shape out',
  'mark chord bend',
  'mark colour bend',
  'mark chord away',
  'mark colour away',
  'mark chord stretch',
  'mark colour stretch',
  'mark chord',
  'mark colour',
  'mark shape',
  'mark chord far',
  'mark colour far',
] as const;
export type Look = (typeof LOOKS)[number];

function lookOf({ kind, reach, away }: ToneMark): Look {
  if (reach === 'out') return kind === 'shape' ? 'mark shape out' : 'mark quiet';
  if (kind === 'shape') return 'mark shape';
  if (away) return `mark ${kind} away`;
  return reach === 'bend' || reach === 'stretch' ? `mark ${kind} ${reach}` : `mark ${kind}`;
}

const ringOf = ({ kind }: ToneMark): Look =>
  kind === 'colour' ? 'mark colour far' : 'mark chord far';

/** Path data of the outlines of every look; looks that no tone has are left out. */
export const outlinePaths = remembered((marks: readonly ToneMark[]) => {
  const paths: Partial<Record<Look, string>> = {};
  const add = (look: Look, path: string): void => {
    paths[look] = (paths[look] ?? '') + path;
  };
  for (const mark of marks) {
    add(lookOf(mark), mark.drawn);
    if (mark.ring !== '') add(ringOf(mark), mark.ring);
  }
  return paths;
});

/** The looks of a label as classes; the quiet one is that of what is out of reach. */
export const LABEL_LOOKS = ['tone-label', 'tone-label shape', 'tone-label out'] as const;
export type LabelLook = (typeof LABEL_LOOKS)[number];

export function labelLook({ kind, reach }: ToneMark): LabelLook {
  if (reach === 'out') return 'tone-label out';
  return kind === 'shape' ? 'tone-label shape' : 'tone-label';
}

/** Height of the digits and capitals of the label as a share of its type. */
const CAPITALS = 0.67;

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Where the baseline of a label lies that stands in the middle of its mark. */
export const baseline = ({ y, type }: ToneMark): number => tenth(y + (type * CAPITALS) / 2);

/** Writes the labels of tones; what is out of reach is written with a thinner pen. */
export interface Pens {
  readonly label: Pen;
  readonly quiet: Pen;
}

export interface Labelling {
  /** Path data of what could be written, by its look. */
  readonly paths: Partial<Record<LabelLook, string>>;
  /** The marks whose labels have to be set as type. */
  readonly rest: readonly ToneMark[];
}

/** What each pen wrote for a mark. */
const writings = new WeakMap<Pen, WeakMap<ToneMark, string | undefined>>();

function writingOf(pen: Pen, mark: ToneMark): string | undefined {
  const known = writings.get(pen) ?? new WeakMap<ToneMark, string | undefined>();
  writings.set(pen, known);
  if (known.has(mark)) return known.get(mark);
  const { x, type: size, bass: underlined } = mark;
  const path = pen(mark.label, { x, y: baseline(mark), size, underlined });
  known.set(mark, path);
  return path;
}

function written(mark: ToneMark, pens: Pens | undefined): string | undefined {
  const pen = mark.reach === 'out' ? pens?.quiet : pens?.label;
  return pen && writingOf(pen, mark);
}

/** The labels as outlines, as far as there are pens for them. */
export const labelling = remembered(
  (marks: readonly ToneMark[], pens: Pens | undefined): Labelling => {
    const paths: Partial<Record<LabelLook, string>> = {};
    const rest: ToneMark[] = [];
    for (const mark of marks) {
      if (mark.label === '') continue;
      const path = written(mark, pens);
      const look = labelLook(mark);
      if (path === undefined) rest.push(mark);
      else paths[look] = (paths[look] ?? '') + path;
    }
    return { paths, rest };
  },
);
