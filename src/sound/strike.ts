/** A tone, a grip, a chord, touched by hand. */
import { type Instrument, midiAtPlace, type Place } from '#neck';
import type { StringNote, Struck } from './types.ts';

/** Seconds from string to string: slow enough to hear what is in it. */
const SPREAD_SECONDS = 0.03;
const SECONDS = 1.8;
const FORCE = 0.7;

/**
 * Places struck once, from the lowest string up; `more` says how (a bend, a vibrato). `semitones`: so
 * much higher than fretted. Places that the neck has not are left out.
 */
export function struckAt(
  places: readonly Place[],
  instrument: Instrument,
  semitones = 0,
  more: Partial<StringNote> = {},
): readonly Struck[] {
  const upwards = [...places].sort((a, b) => b.string - a.string);
  return upwards.flatMap((place, i) => {
    const midi = midiAtPlace(instrument, place);
    if (midi === undefined) return [];
    const note: StringNote = {
      start: i * SPREAD_SECONDS,
      length: SECONDS,
      midi: midi + semitones,
      force: FORCE,
      attack: 'pick',
      ...more,
    };
    return [{ string: place.string, note }];
  });
}
