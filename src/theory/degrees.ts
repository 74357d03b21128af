/** Degrees: how far a note lies above a root, counted in letters and semitones. */
import {
  type AccidentalStyle,
  letterAbove,
  makeAccidentals,
  naturalOf,
  readAccidentals,
} from './notes.ts';
import { ok, type Result, type TextError } from './result.ts';
import { textError } from './text-error.ts';
import { type Degree, LETTERS, type NoteName } from './types.ts';

export type DegreeErrorCode = 'degree';

const HIGHEST_DEGREE = 13;

/** Semitones of the major scale. */
const MAJOR = [0, 2, 4, 5, 7, 9, 11] as const;

const EXPECTED = ['R', 'a number from 1 to 13, with # or b before it'];

/** Semitones above the root: R 0, ♭3 3, 9 14, 13 21. */
export function semitonesOf(degree: Degree): number {
  const step = degree.number - 1;
  return (MAJOR[step % 7] ?? 0) + 12 * Math.floor(step / 7) + degree.alter;
}

/**
 * Reads `R`, `3`, `b3`, `♭3`, `#9`, `bb7`, `𝄫7`; the accidental stands before the number.
 * Error code: `degree`, at the first thing that is not understood.
 */
export function parseDegree(text: string): Result<Degree, TextError<DegreeErrorCode>> {
  if (text === 'R') return ok({ number: 1, alter: 0 });
  const { alter, length } = readAccidentals(text, 0);
  const digits = text.slice(length);
  const number = Number(digits);
  if (/^[1-9]\d?$/.test(digits) && number <= HIGHEST_DEGREE) return ok({ number, alter });
  return textError('degree', text, length, text.length, EXPECTED);
}

/** `R`, `b3`, `#9`, `bb7`, or in style `sign` `♭3`, `♯9`, `𝄫7`. The unaltered 1 is `R`. */
export function makeDegree(degree: Degree, style: AccidentalStyle = 'ascii'): string {
  if (degree.number === 1 && degree.alter === 0) return 'R';
  return makeAccidentals(degree.alter, style) + degree.number;
}

/**
 * The note that is a degree of a root, spelled letter by letter: the number fixes the letter
 * (9 = the letter of 2), accidentals make up the semitones. E and ♯9 give F𝄪.
 */
export function noteAt(root: NoteName, degree: Degree): NoteName {
  const letter = letterAbove(root.letter, degree.number - 1);
  const sounding = naturalOf(root.letter) + root.alter + semitonesOf(degree);
  const octaves = Math.floor((LETTERS.indexOf(root.letter) + degree.number - 1) / 7);
  return { letter, alter: sounding - 12 * octaves - naturalOf(letter) };
}

/** The degree from 1 to 7 that a spelled note is of a root; the letters fix the number. */
export function degreeOf(root: NoteName, name: NoteName): Degree {
  const steps = (LETTERS.indexOf(name.letter) - LETTERS.indexOf(root.letter) + 7) % 7;
  const octave = LETTERS.indexOf(name.letter) < LETTERS.indexOf(root.letter) ? 12 : 0;
  const distance =
    naturalOf(name.letter) + name.alter + octave - naturalOf(root.letter) - root.alter;
  return { number: steps + 1, alter: distance - (MAJOR[steps] ?? 0) };
}

export const sameDegree = (a: Degree, b: Degree): boolean =>
  a.number === b.number && a.alter === b.alter;

/** The order of tones in a chord: by number, then by alteration. */
export const compareDegrees = (a: Degree, b: Degree): number =>
  a.number - b.number || a.alter - b.alter;
