import type { Pitch } from '#theory';
import { midiOf } from '#theory';
import type { Fret, Instrument, Millimetres, Place, StringNumber } from './types.ts';

export const fret = (n: number): Fret => n as Fret;
export const stringNumber = (n: number): StringNumber => n as StringNumber;
export const millimetres = (n: number): Millimetres => n as Millimetres;

export const samePlace = (a: Place, b: Place): boolean =>
  a.string === b.string && a.fret === b.fret;

/** MIDI number of every open string, string 1 first; a capo is not counted in. */
export const openMidis = (instrument: Instrument): readonly number[] =>
  instrument.strings.map((string) => midiOf(string.pitch));

/** MIDI number that sounds at a place; undefined off the neck or behind the capo. */
export function midiAtPlace(instrument: Instrument, place: Place): number | undefined {
  const open: Pitch | undefined = instrument.strings[place.string - 1]?.pitch;
  if (open === undefined || place.fret < instrument.capo || place.fret > instrument.frets) {
    return undefined;
  }
  return midiOf(open) + place.fret;
}
