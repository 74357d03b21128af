/** What the views are given. Computed by `studyOf`, never by a component. */
import type { Workspace } from '#lesson';
import type { FormAtHand, Reading } from '#neck';
import type { Chart, ChartProblem, Chord, Key, RomanNumeral, Slot } from '#theory';
import type { Standing } from '../words.ts';

/** One chord in the lane. */
export interface LaneCell {
  readonly index: number;
  /** Written bar, from 1. */
  readonly bar: number;
  /** `bar.beat`, both from 1. */
  readonly at: string;
  readonly slot: Slot;
  readonly symbol: string;
  /** The form that serves the chord at the present position. */
  readonly form?: FormAtHand;
  readonly roman?: RomanNumeral;
  readonly problem?: ChartProblem;
}

/** Everything derived from a workspace. Parts that did not change keep their reference. */
export interface Study {
  /** The workspace it was computed from. */
  readonly of: Workspace;
  readonly chart: Chart;
  readonly problems: readonly ChartProblem[];
  readonly cells: readonly LaneCell[];
  /** Index of the cell under the cursor; -1 when there is none. */
  readonly cursor: number;
  /** The chord on the neck: the one under the cursor, or the last good one while typing. */
  readonly chord?: Chord;
  readonly symbol: string;
  /** What stands under the cursor; while it is not `chord`, the neck shows none or the last good one. */
  readonly standing: Standing;
  /** For every cell the index of the next other chord in playing order; -1 = none. */
  readonly nextOf: readonly number[];
  readonly nextChord?: Chord;
  readonly nextSymbol?: string;
  readonly nextForm?: FormAtHand;
  readonly reading?: Reading;
  /** Every playable copy of every form of this chord, from the nut up ("where else"). */
  readonly places: readonly FormAtHand[];
  readonly key?: Key;
  readonly keyIsEstimate: boolean;
  readonly runnerUp?: Key;
  /** The reading in words. */
  readonly account: string;
}

/** A message to the person: a refused value at its field, storage that cannot keep, a link that was partly read. */
export interface Notice {
  readonly id: string;
  readonly tone: 'error' | 'info';
  readonly text: string;
}

/** Work that was left behind and work that was undone; the last of `past` comes back first. */
export interface History {
  readonly past: readonly Workspace[];
  readonly future: readonly Workspace[];
  /** The run that the last step belongs to: the next step of the same run is no new one. */
  readonly run?: string;
}

/** Fields that can refuse what is typed; the refusal is the notice with the id `field.<name>`. */
export const FIELDS = ['tuning', 'frets', 'capo', 'scale', 'gauges', 'span', 'key'] as const;
export type FieldName = (typeof FIELDS)[number];

export const PANELS = ['settings', 'keys'] as const;
export type Panel = (typeof PANELS)[number];

export interface AppState {
  readonly workspace: Workspace;
  readonly study: Study;
  readonly notices: readonly Notice[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Which panel is open over the workspace. */
  readonly panel?: Panel;
  readonly history: History;
}
