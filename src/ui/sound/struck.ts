/** Bends and connections struck by hand. */
import type { Bend, Connection, Instrument } from '#neck';
import { type StringNote, type Struck, struckAt } from '#sound';
import type { StruckGroup } from './marking.ts';

/** Shares of the note at which a bend begins to rise, and at which it has arrived. */
const RISES = 0.15;
const ARRIVES = 0.4;

const bendTo = (semitones: number): NonNullable<StringNote['bend']> => [
  { at: 0, semitones: 0 },
  { at: RISES, semitones: 0 },
  { at: ARRIVES, semitones },
  { at: 1, semitones },
];

/** The fretted note, and its way up to the target. */
export const struckBend = (
  { string, fret, steps }: Bend,
  instrument: Instrument,
  semitones: number,
): readonly Struck[] =>
  struckAt([{ string, fret }], instrument, semitones, { bend: bendTo(steps), length: 2.2 });

/** Seconds that the first tone of a connection is heard alone. */
const FIRST = 0.7;

/** When the places of a connection are struck. */
export const groupsOfConnection = ({ from, to, bend }: Connection): readonly StruckGroup[] => [
  { places: [from], after: 0 },
  ...(bend ? [] : [{ places: [to], after: FIRST }]),
];

/** The tone of this chord, then the tone of the next. */
export function struckConnection(
  { from, to, bend }: Connection,
  instrument: Instrument,
  semitones: number,
): readonly Struck[] {
  if (bend) return struckBend(bend, instrument, semitones);
  const first = struckAt([from], instrument, semitones, { length: FIRST });
  const second = struckAt([to], instrument, semitones, { start: FIRST });
  return [...first, ...second];
}
