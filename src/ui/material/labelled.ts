/** What stands at tones that are drawn over the neck: the same as in the tones themselves. */
import type { Labels } from '#lesson';
import type { Place, Reading, Tone } from '#neck';
import { type Chord, type Degree, makeDegree, makeNoteName, noteAt, plainName } from '#theory';

/** A tone of a form in degrees, notes or fingers. */
export function toneLabel({ degree, pitch, finger }: Tone, labels: Labels): string {
  if (labels === 'notes') return makeNoteName(pitch, 'sign');
  if (labels === 'fingers') return String(finger ?? '');
  return labels === 'none' ? '' : makeDegree(degree, 'sign');
}

/** What is said of a degree of this chord or the next, at a place. */
export type Says = (degree: Degree, of: 'now' | 'next', place: Place) => string;

export const saysDegree: Says = (degree) => makeDegree(degree, 'sign');

interface Spoken {
  readonly labels: Labels;
  readonly spelling: 'exact' | 'plain';
  readonly now: Reading | undefined;
  readonly next: Reading | undefined;
}

function noteOf({ root }: Chord, degree: Degree, spelling: Spoken['spelling']): string {
  const note = noteAt(root, degree);
  return makeNoteName(spelling === 'plain' ? plainName(note) : note, 'sign');
}

/** A finger only where a form has one, as in the tones. */
const fingerAt = (reading: Reading, { string, fret }: Place): string =>
  String(
    reading.tones.find(
      (tone) => tone.string === string && tone.fret === fret && tone.kind === 'shape',
    )?.finger ?? '',
  );

/** Degrees, notes, fingers or nothing, as the labels are set. A bend reaches a tone that lies elsewhere. */
export const saysAs =
  ({ labels, spelling, ...readings }: Spoken): Says =>
  (degree, of, place) => {
    const reading = readings[of];
    if (labels === 'degrees' || !reading) return saysDegree(degree, of, place);
    if (labels === 'notes') return noteOf(reading.chord, degree, spelling);
    return labels === 'none' ? '' : fingerAt(reading, place);
  };
