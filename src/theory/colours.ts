/** Degrees outside a chord that players lean on, in the order in which they reach for them. */
import { degreeOf, parseDegree, semitonesOf } from './degrees.ts';
import { pitchClass } from './notes.ts';
import type { Chord, Degree } from './types.ts';

/** A colour tone and a word on what it does. The order and the words are common practice. */
export interface Colour {
  readonly degree: Degree;
  readonly why: string;
}

type Row = readonly [degree: string, why: string];

const MAJOR: readonly Row[] = [
  ['9', 'opens the chord without changing it'],
  ['6', 'sweet, at rest'],
  ['4', 'hangs, and falls to the 3'],
  ['7', 'a half step under the root, dreamy'],
  ['b3', 'the blue third, sliding up to the 3'],
  ['#11', 'bright, floating'],
  ['b7', 'turns the chord into a dominant'],
];
const MINOR: readonly Row[] = [
  ['b7', 'rounds the minor chord off'],
  ['4', 'the pentatonic fourth, stable here'],
  ['9', 'leans on the ♭3'],
  ['6', 'brightens the minor'],
  ['b5', 'the blue fifth, on its way to 4 or 5'],
  ['b6', 'dark, falls to the 5'],
  ['7', 'pulls up to the root'],
];
const DOMINANT: readonly Row[] = [
  ['9', 'warm, never wrong over a plain seventh'],
  ['13', 'the sixth, sweet on a dominant'],
  ['#9', 'the blue third against the 3'],
  ['b9', 'pulls down to the 5 of the chord to come'],
  ['4', 'hangs, and falls to the 3'],
  ['#11', 'bright, away from the blues'],
  ['b13', 'falls to the 9 of the chord to come'],
  ['b5', 'the blue fifth'],
];
const HALF_DIMINISHED: readonly Row[] = [
  ['11', 'the safe one over a flat fifth'],
  ['9', 'leans on the ♭3'],
  ['b6', 'belongs to the key, soft'],
  ['b9', 'belongs to the key, dark'],
];
const DIMINISHED: readonly Row[] = [
  ['7', 'a half step under the root'],
  ['9', 'a whole step over a chord tone, as each colour here'],
  ['4', 'a whole step over the ♭3'],
  ['b6', 'a whole step over the ♭5'],
];
const SUSPENDED: readonly Row[] = [
  ['3', 'what the suspension falls to'],
  ['9', 'opens the chord'],
  ['13', 'the sixth over the hanging fourth'],
  ['b7', 'turns it into a dominant'],
];

const has = (chord: Chord, number: number, alter: number): boolean =>
  chord.tones.some((tone) => tone.number === number && tone.alter === alter);

function rowsFor(chord: Chord): readonly Row[] {
  const flatFifth = has(chord, 5, -1);
  if (has(chord, 3, -1)) {
    if (flatFifth) return has(chord, 7, -1) ? HALF_DIMINISHED : DIMINISHED;
    return MINOR;
  }
  if (!has(chord, 3, 0)) return SUSPENDED;
  return has(chord, 7, -1) ? DOMINANT : MAJOR;
}

const offsetOf = (degree: Degree): number => pitchClass(semitonesOf(degree));

/** Colour tones for a chord, those first that players use first; tones the chord has are left out. */
export function coloursFor(chord: Chord): readonly Colour[] {
  const taken = new Set<number>(chord.tones.map(offsetOf));
  if (chord.bass !== undefined) taken.add(offsetOf(degreeOf(chord.root, chord.bass)));
  return rowsFor(chord).flatMap(([text, why]) => {
    const degree = parseDegree(text);
    return degree.ok && !taken.has(offsetOf(degree.value)) ? [{ degree: degree.value, why }] : [];
  });
}
