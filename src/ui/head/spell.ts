import {
  type Chord,
  type Degree,
  degreeOf,
  makeDegree,
  makeNoteName,
  type NoteName,
  noteAt,
  plainName,
} from '#theory';

/** A chord tone in words: its degree and its note, both with signs. */
export interface Spelled {
  readonly degree: string;
  readonly note: string;
  /** From 0. What is drawn is kept by it, so that a new chord changes texts. */
  readonly order: number;
  /** The tone that the symbol puts lowest (`Dm7/G`). */
  readonly bass?: true;
}

type Spelling = 'exact' | 'plain';

function spelledTone(degree: Degree, note: NoteName, spelling: Spelling): Omit<Spelled, 'order'> {
  return {
    degree: makeDegree(degree, 'sign'),
    note: makeNoteName(spelling === 'plain' ? plainName(note) : note, 'sign'),
  };
}

const sameNote = (a: NoteName, b: NoteName | undefined): boolean =>
  a.letter === b?.letter && a.alter === b.alter;

/** The tones of a chord from the root up; a bass that is none of them comes last. */
export function spelledTones(chord: Chord, spelling: Spelling): readonly Spelled[] {
  const { root, bass } = chord;
  const tones = chord.tones.map((degree) => ({ degree, note: noteAt(root, degree) }));
  const known = bass === undefined || tones.some(({ note }) => sameNote(note, bass));
  const all = known ? tones : [...tones, { degree: degreeOf(root, bass), note: bass }];
  return all.map(({ degree, note }, order) => {
    const spelled = { ...spelledTone(degree, note, spelling), order };
    return sameNote(note, bass) ? { ...spelled, bass: true } : spelled;
  });
}
