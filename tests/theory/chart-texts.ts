/** Texts for fuzzing the reader of charts. */
import fc from 'fast-check';

const WORDS =
  'C Am7 F# Bb D/F# /B / // % | || |: :| :|: x3 2x 1. 2. |1. 1,2. [1. [A] [Verse] Verse A: B A1 3/4 6/8 7/3 N.C. no chord Hm am foo Cfoo (b9) (Dm7 G7) maj7 sus4 - . , D.C. al Fine Coda : 𝄆 ‖ C/// C7(b9 [ ( ) ] 6/9 Key: \n \t ./. 𝄎 C-G 12';

/** Text in which everything that means something to the reader meets everything else. */
export const anyText = fc
  .array(
    fc.oneof(
      { weight: 12, arbitrary: fc.constantFrom(...WORDS.split(' ')) },
      { weight: 1, arbitrary: fc.string({ maxLength: 6, unit: 'binary' }) },
    ),
    { maxLength: 24 },
  )
  .map((words) => words.join(' '));
