/** How it stands with the sound: what views show of it while it plays. */
import type { Phase } from '#sound/browser';
import { type Cell, createCell } from '../store/index.ts';

export interface Sounding {
  readonly phase: Phase;
  /** What to do, where something is to be done. */
  readonly message?: string;
  readonly counting: boolean;
  /** The beat that sounds, from 1 in the metre's unit; 0 while nothing plays. */
  readonly beat: number;
  /** Beats of the bar. */
  readonly beats: number;
  /** Rounds before this one. */
  readonly round: number;
  /** Quarter notes a minute, as heard. */
  readonly tempo: number;
  /** The next chord is so near that its form is shown. */
  readonly soon: boolean;
  /** Which time the bar is played, from 1; 0 for a bar that is played only once. */
  readonly time: number;
  /** What was tapped last, beats a minute; 0 = nothing yet. */
  readonly tapped: number;
}

export const SILENT: Sounding = {
  phase: 'off',
  counting: false,
  beat: 0,
  beats: 0,
  round: 0,
  tempo: 0,
  soon: false,
  time: 0,
  tapped: 0,
};

export const makeSounding = (): Cell<Sounding> => createCell(SILENT);
