/** The progression that a first visit finds; the others come later. */

/** An invented progression; `position` is a fret where the hand finds much of it. */
export interface Example {
  readonly title: string;
  /** What it is and what to look for, in one line. */
  readonly about: string;
  readonly progression: string;
  readonly position: number;
}

const LANTERN = `[Verse]
|: Bm7 | E7 | Amaj7 | F#m7 :|
[Chorus]
|: D | A/C# | Bm7 | E7sus4 E7
|1. Amaj7 | F#m7 :|
|2. Dm6 | A |`;

export const FIRST_EXAMPLE: Example = {
  title: 'Lantern on the Stair',
  about: 'Four forms under one hand in seventh position.',
  progression: LANTERN,
  position: 7,
};
