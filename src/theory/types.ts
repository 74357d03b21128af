/** The nouns of music theory. This file imports nothing. */

declare const brand: unique symbol;
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };

/** 0 = C … 11 = B. */
export type PitchClass = Brand<number, 'PitchClass'>;
/** MIDI note number, C4 = 60, A4 = 69. */
export type Midi = Brand<number, 'Midi'>;
/** Musical time; `TICKS_PER_QUARTER` to a quarter note. */
export type Ticks = Brand<number, 'Ticks'>;

export const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;
export type Letter = (typeof LETTERS)[number];

/** A spelled note without octave. `alter` in semitones: -1 flat, 2 double sharp. */
export interface NoteName {
  readonly letter: Letter;
  readonly alter: number;
}

/** A spelled note with its scientific octave; the octave belongs to the letter (C♭4 sounds as B3). */
export interface Pitch extends NoteName {
  readonly octave: number;
}

/** A step of the major scale above a root, 1 to 13, altered in semitones: ♭3 = {3, -1}, 𝄫7 = {7, -2}. */
export interface Degree {
  readonly number: number;
  readonly alter: number;
}

/**
 * A chord as its symbol means it. `tones` holds every degree once, the root first, ascending by
 * number then alteration. `bass` is present only when the symbol names a bass other than the root;
 * it may be a chord tone or foreign to the chord.
 */
export interface Chord {
  readonly root: NoteName;
  readonly tones: readonly Degree[];
  readonly bass?: NoteName;
}

export const MODES = ['major', 'minor'] as const;
export type Mode = (typeof MODES)[number];

export interface Key {
  readonly tonic: NoteName;
  readonly mode: Mode;
}

/** How many beats a bar has and which note value (1, 2, 4, 8, 16) is one beat. */
export interface Metre {
  readonly beats: number;
  readonly unit: number;
}

/** A stretch of the typed text: UTF-16 offset from 0, and length. */
export interface TextSpan {
  readonly at: number;
  readonly length: number;
}

/** What stands at a moment of the progression. */
export type Harmony =
  | { readonly kind: 'chord'; readonly chord: Chord }
  | { readonly kind: 'silent' } // N.C.
  | { readonly kind: 'unread'; readonly problem: ChartProblem };

/**
 * One chord (or N.C., or something unreadable) in a written bar, with where it starts in the bar
 * and how long it lasts there. `symbol` is as typed. A `held` slot carries on the harmony of the
 * slot before it (a bar of slashes, the start of a bar that repeats one, …) and was not typed anew.
 */
export interface Slot {
  readonly harmony: Harmony;
  readonly symbol: string;
  readonly start: Ticks;
  readonly length: Ticks;
  readonly span: TextSpan;
  readonly held: boolean;
}

/** A written bar. */
export interface Bar {
  readonly metre: Metre;
  readonly slots: readonly Slot[];
  /** Typed as `%`. */
  readonly same: boolean;
  readonly opensRepeat: boolean;
  /** How often the repeated passage is played in all (2 for a plain `:|`); absent = no repeat ends here. */
  readonly closesRepeat?: number;
  /** The rounds in which this bar, as the first of an ending, is played (`|1,2.` = [1, 2]). */
  readonly ending?: readonly number[];
  readonly span: TextSpan;
}

/** A named passage of the chart; the first may have no name. */
export interface Section {
  readonly name?: string;
  readonly bars: readonly Bar[];
}

export interface Chart {
  readonly sections: readonly Section[];
}

export const CHART_PROBLEMS = [
  'chord', // a symbol that means nothing
  'beats', // more chords and slashes than the metre has beats
  'nothing-before', // % or / with nothing to repeat
  'repeat', // a repeat that ends without beginning, nests, or counts nonsense
  'ending', // an ending outside a repeat or out of order
  'metre', // an impossible time signature
  'word', // something that is neither chord nor name
] as const;

/** Something in the chart's text that could not be used; the rest still works. Line and column from 1. */
export interface ChartProblem {
  readonly code: (typeof CHART_PROBLEMS)[number];
  readonly line: number;
  readonly column: number;
  readonly span: TextSpan;
  readonly found: string;
  readonly expected: readonly string[];
  readonly suggestion?: string;
}
