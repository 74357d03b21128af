/** The nouns of a line: single notes in time, as they are played. */
import type { Place } from '#neck';
import type { Ticks } from '#theory';

/** How a note begins. `hammer` and `pull` sound on from the note before on the same string. */
export const ATTACKS = ['pick', 'hammer', 'pull', 'slide'] as const;
export type Attack = (typeof ATTACKS)[number];

/** One point of a bend's course: share of the note's length (0 to 1), semitones above the fretted pitch. */
export interface BendPoint {
  readonly at: number;
  readonly semitones: number;
}

/** What happens to a note besides its pitch and length. */
export interface Playing {
  readonly attack: Attack;
  /** The bend's course from beginning to end; a pre-bend begins above 0, a release ends at 0. */
  readonly bend?: readonly BendPoint[];
  /** Frets from which the note is slid into, counted from the note (−2 = from two frets below). */
  readonly slideIn?: number;
  /** Frets to which it slides away at its end, counted from the note. */
  readonly slideOut?: number;
  /** Vibrato's depth in semitones above the pitch; its speed is about five a second. */
  readonly vibrato?: number;
  /** The muted strings raked before the note. */
  readonly rake?: boolean;
  readonly palmMute?: boolean;
  /** Rings on over its length until its string is played again. */
  readonly letRing?: boolean;
}

/** A single note of a line. */
export interface LineNote extends Place, Playing {
  readonly start: Ticks;
  readonly length: Ticks;
  /** 1 index … 4 little finger; absent on an open string. */
  readonly finger?: number;
  /** 0 (silent) to 1 (as hard as it goes). */
  readonly force: number;
}

/** How a reading is played over its backing. */
export const STUDIES = ['none', 'strum', 'singles', 'connect'] as const;
export type StudyName = (typeof STUDIES)[number];
