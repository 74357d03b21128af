import { type Chord, type Degree, makeDegree, makeNoteName, noteAt, plainName } from '#theory';

/** A chord tone in words: its degree and its note, both with signs. */
export interface Spelled {
  readonly degree: string;
  readonly note: string;
}

function spelledTone(chord: Chord, degree: Degree, plain: boolean): Spelled {
  const note = noteAt(chord.root, degree);
  return {
    degree: makeDegree(degree, 'sign'),
    note: makeNoteName(plain ? plainName(note) : note, 'sign'),
  };
}

/** The tones of a chord from the root up. */
export const spelledTones = (chord: Chord, spelling: 'exact' | 'plain'): readonly Spelled[] =>
  chord.tones.map((degree) => spelledTone(chord, degree, spelling === 'plain'));
