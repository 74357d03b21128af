/** The nouns of what a person keeps. */
import type { Instrument, Span } from '#neck';
import type { Degree, Key } from '#theory';

export const LABELS = ['degrees', 'notes', 'fingers', 'none'] as const;
export type Labels = (typeof LABELS)[number];
export const SPACINGS = ['true', 'even'] as const;
export type Spacing = (typeof SPACINGS)[number];
export const THEMES = ['system', 'light', 'dark', 'contrast'] as const;
export type Theme = (typeof THEMES)[number];
export const SPELLINGS = ['exact', 'plain'] as const;
export type Spelling = (typeof SPELLINGS)[number];
export const ROUTES = ['stay', 'carry', 'travel'] as const;
export type RouteKind = (typeof ROUTES)[number];

/** A moment of the chart: written bar from 1, beat from 1 (may have a fraction). */
export interface Moment {
  readonly bar: number;
  readonly beat: number;
}

/** Everything a person set or typed; what undo goes back over and what is kept. */
export interface Workspace {
  /** The progression as typed. */
  readonly progression: string;
  /** Where the cursor stands. Kept, but not a step of undo. */
  readonly at: Moment;
  /** Fret under the index finger, 1 and up. */
  readonly position: number;
  /** A form asked for by name; absent = whatever lies best under the hand. */
  readonly form?: string;
  readonly instrument: Instrument;
  readonly span: Span;
  /** Colour degrees switched on. */
  readonly show: readonly Degree[];
  /** Key set by hand; absent = as estimated. */
  readonly key?: Key;
  readonly spelling: Spelling;
  readonly labels: Labels;
  readonly spacing: Spacing;
  readonly theme: Theme;
  /** Single-character shortcuts on (WCAG 2.2, 2.1.4: they can be switched off). */
  readonly shortcuts: boolean;
  readonly route?: RouteKind;
}
