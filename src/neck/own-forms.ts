import { type Chord, midiOf, type NoteName, pitchClass, pitchClassOf, plainName } from '#theory';
import { demandsOf, type ToneDemand } from './demands.ts';
import type { Frets } from './fingers.ts';
import type { Form, Instrument } from './types.ts';

/** The tone of the chord that a string stopped at a fret sounds. */
function toneAt(
  instrument: Instrument,
  chord: Chord,
  index: number,
  f: number,
): ToneDemand | undefined {
  const string = instrument.strings[index];
  if (string === undefined) return undefined;
  return demandsOf(chord).byOffset[pitchClass(midiOf(string.pitch) + f - pitchClassOf(chord.root))];
}

/** The fret that becomes the anchor: the capo or nut under open strings, else the lowest held. */
function anchorOf(frets: Frets, capo: number): number {
  const played = frets.filter((f): f is number => f !== null);
  return played.some((f) => f === capo) ? capo : Math.min(...played);
}

const lowered = (root: NoteName, semitones: number): NoteName =>
  semitones === 0 ? root : plainName(pitchClass(pitchClassOf(root) - semitones));

/**
 * Makes a form of a player's own from a fingering (frets with string 1 first) that is named as a
 * chord. It moves along the neck like the five, keeps its lowest tone, and turns into other
 * qualities by moving as few tones as possible. Undefined when a string sounds no tone of the chord.
 */
export function ownForm(
  name: string,
  frets: Frets,
  chord: Chord,
  instrument: Instrument,
): Form | undefined {
  const tones = frets.map((f, i) => (f === null ? null : toneAt(instrument, chord, i, f)));
  const lowest = tones[tones.findLastIndex((tone) => tone !== null)];
  if (lowest === undefined || lowest === null || tones.includes(undefined)) return undefined;
  const anchor = anchorOf(frets, instrument.capo);
  return {
    name,
    root: lowered(chord.root, anchor),
    frets: frets.map((f) => (f === null ? null : f - anchor)),
    own: {
      bass: lowest.degree,
      rootless: !tones.some((tone) => tone?.degree.number === 1),
    },
  };
}

/** The instrument with another list of own forms; the same instrument where nothing changes. */
export const withOwnForms = (instrument: Instrument, ownForms: readonly Form[]): Instrument =>
  instrument.ownForms === ownForms ? instrument : { ...instrument, ownForms };
