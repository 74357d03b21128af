/** Progressions of our own, written for Handspan, to start from. */
import { type Example, FIRST_EXAMPLE } from './first-example.ts';

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
  FIRST_EXAMPLE,
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
