/** Progressions of our own, written for Handspan, to start from. */

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

const GRAVEL = `[Riff]
|: E5 | G A | E5 | D A/C# :| x4
[Verse]
|: Em | Em | C | D :|
[Chorus]
|: G | D/F# | Em7 | Cadd9 D
|1. G | Dsus4 D :|
|2. C | Dsus4 / D / |
[Ending]
| E7#9 | % |`;

const KETTLE = `[Blues in A]
| A7 | D7 | A7 | % |
| D7 | D#dim7 | A7 | F#7 |
| Bm7 | E7 | A7 F#7 | Bm7 E7 |`;

const UMBRELLA = `[A]
|: Fmaj7 | Em7b5 A7b9 | Dm7 | Cm7 F7 |
| Bbmaj7 | Bbm7 Eb9 
|1. Am7 D7 | Gm7 C7sus4 C7 :|
|2. Am7 Abdim7 | Gm7 C7 |
[B]
| Cm7 | F7alt | Bbmaj7 | Bbmaj7/D |
| Dm7 | G13 | C9sus4 | C7b9 |
[A]
| Fmaj7 | Em7b5 A7b9 | Dm7 | Cm7 F7 |
| Bbmaj7 | Bbm6 | Am7 D7#9 | Gm7 C7 | F6/9 | % |`;

/** Default first, then a rock, a blues and a jazz progression. */
export const EXAMPLES: readonly [Example, ...Example[]] = [
  {
    title: 'Lantern on the Stair',
    about: 'Four forms under one hand in seventh position.',
    progression: LANTERN,
    position: 7,
  },
  {
    title: 'Gravel Road Out',
    about: 'Rock in E and G: power chords, slash basses, a sus4 that falls to its third.',
    progression: GRAVEL,
    position: 2,
  },
  {
    title: 'Kettle Blues',
    about: 'Twelve bars in A with a quick change and a turnaround.',
    progression: KETTLE,
    position: 5,
  },
  {
    title: 'Umbrella for Two',
    about: 'Jazz in F: a chain of ii–V, a slash chord, sus and altered dominants.',
    progression: UMBRELLA,
    position: 5,
  },
];
