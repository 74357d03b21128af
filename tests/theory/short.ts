/** Short notations for the theory tests. */
import {
  type Chord,
  chordNotes,
  type Degree,
  makeDegree,
  makeNoteName,
  parseChord,
  parseDegree,
  pitchClassOf,
  semitonesOf,
} from '#theory';

/** The chord of a symbol that has to be readable. */
export function chord(symbol: string): Chord {
  const result = parseChord(symbol);
  if (!result.ok) throw new Error(`unreadable: ${symbol}`);
  return result.value;
}

/** `R b3 5`. */
export const shownTones = (tones: readonly Degree[]): string =>
  tones.map((tone) => makeDegree(tone)).join(' ');

/** `R b3 5`, followed by ` /E` for a bass; or `code at position` for what cannot be read. */
export function meaning(symbol: string): string {
  const result = parseChord(symbol);
  if (!result.ok) return `${result.error.code} at ${result.error.at}`;
  const { tones, bass } = result.value;
  return bass ? `${shownTones(tones)} /${makeNoteName(bass)}` : shownTones(tones);
}

/**
 * `0 3 7 /10`: the semitones above the root that sound, within the octave and in order, and the
 * bass; or `code at position` for what cannot be read.
 */
export function sounding(symbol: string): string {
  const result = parseChord(symbol);
  if (!result.ok) return `${result.error.code} at ${result.error.at}`;
  const { root, tones, bass } = result.value;
  const classes = new Set(tones.map((tone) => (semitonesOf(tone) + 12) % 12));
  const heard = [...classes].sort((a, b) => a - b).join(' ');
  const low = bass && (pitchClassOf(bass) - pitchClassOf(root) + 12) % 12;
  return low === undefined ? heard : `${heard} /${low}`;
}

/** `C Eb G`. */
export const notes = (symbol: string): string =>
  chordNotes(chord(symbol))
    .map((name) => makeNoteName(name))
    .join(' ');

/** The degrees of `R b3 5`. */
export const degrees = (text: string): readonly Degree[] =>
  text.split(' ').map((word) => {
    const degree = parseDegree(word);
    if (!degree.ok) throw new Error(`not a degree: ${word}`);
    return degree.value;
  });

/** Every root with up to two accidentals. */
export const ALL_ROOTS: readonly string[] = [...'CDEFGAB'].flatMap((letter) =>
  ['', '#', 'b', '##', 'bb'].map((signs) => letter + signs),
);
