/** Note names, pitches, note numbers and frequencies. */
import { ok, type Result, type TextError } from './result.ts';
import { textError } from './text-error.ts';
import {
  LETTERS,
  type Letter,
  type Midi,
  type NoteName,
  type Pitch,
  type PitchClass,
} from './types.ts';

/** How accidentals are written: `F#`, `Bbb` or `F♯`, `B𝄫`. */
export type AccidentalStyle = 'ascii' | 'sign';
export type NoteErrorCode = 'letter' | 'accidental' | 'octave';

/** Semitones of the natural notes above C. */
const NATURALS: Readonly<Record<Letter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

const ACCIDENTALS: Readonly<Record<string, number>> = {
  '#': 1,
  '♯': 1,
  b: -1,
  '♭': -1,
  x: 2,
  '𝄪': 2,
  '𝄫': -2,
};

const A4_MIDI = 69;
const A4_HERTZ = 440;
const LETTER_EXPECTED = ['a note letter from A to G'];
const ACCIDENTAL_EXPECTED = ['# or b, all of one kind'];
/** Chord tones of a doubly altered root can need four. */
const MOST_SEMITONES = 6;

/** The pitch class `n` semitones above C; any integer is wrapped into 0 … 11. */
export function pitchClass(n: number): PitchClass {
  if (!Number.isInteger(n)) throw new RangeError(`not a pitch class: ${n}`);
  return (((n % 12) + 12) % 12) as PitchClass;
}

/** A MIDI note number, C4 = 60. Throws a RangeError unless `n` is an integer. */
export function midi(n: number): Midi {
  if (!Number.isInteger(n)) throw new RangeError(`not a note number: ${n}`);
  return n as Midi;
}

/** Semitones of a natural note above C: C 0 … B 11. */
export const naturalOf = (letter: Letter): number => NATURALS[letter];

/** The letter `steps` letters above (or, negative, below) another: `B` + 1 = `C`. */
export function letterAbove(letter: Letter, steps: number): Letter {
  const index = (((LETTERS.indexOf(letter) + steps) % 7) + 7) % 7;
  return LETTERS[index] ?? letter;
}

/** The semitones that the accidentals at the start of `text` add up to, and the UTF-16 units read. */
export interface AccidentalRun {
  readonly alter: number;
  readonly length: number;
}

/**
 * Reads the accidentals at `from`: # b ♯ ♭ 𝄪 𝄫 x in any mixture of one direction (`b♭`, `♯#`).
 * Stops before one that would turn back or go beyond `most` semitones.
 */
export function readAccidentals(text: string, from: number, most = MOST_SEMITONES): AccidentalRun {
  let alter = 0;
  let at = from;
  for (;;) {
    const sign = String.fromCodePoint(text.codePointAt(at) ?? 0);
    const step = ACCIDENTALS[sign];
    if (step === undefined || alter * step < 0 || Math.abs(alter + step) > most) break;
    alter += step;
    at += sign.length;
  }
  return { alter, length: at - from };
}

/** `#`, `bb`, … or `♯`, `𝄫`, …; nothing for 0. Of three or more, double signs come first. */
export function makeAccidentals(alter: number, style: AccidentalStyle = 'ascii'): string {
  const count = Math.abs(alter);
  if (style === 'ascii') return (alter < 0 ? 'b' : '#').repeat(count);
  const [single, double] = alter < 0 ? ['♭', '𝄫'] : ['♯', '𝄪'];
  return double.repeat(Math.floor(count / 2)) + single.repeat(count % 2);
}

export const isLetter = (text: string): text is Letter => text.length === 1 && text in NATURALS;

type Read<T> = Result<{ readonly value: T; readonly end: number }, TextError<NoteErrorCode>>;

function readNoteName(text: string): Read<NoteName> {
  const letter = text.charAt(0);
  if (!isLetter(letter)) {
    const capital = letter.toUpperCase();
    const suggestion = isLetter(capital) ? capital + text.slice(1) : undefined;
    return textError('letter', text, 0, 1, LETTER_EXPECTED, suggestion);
  }
  const { alter, length } = readAccidentals(text, 1);
  return ok({ value: { letter, alter }, end: 1 + length });
}

/**
 * Reads `F#`, `B♭`, `E𝄫`, `Gx`: a capital letter and its accidentals, up to six semitones of them.
 * Error codes: `letter`, `accidental` (whatever follows that is not one).
 */
export function parseNoteName(text: string): Result<NoteName, TextError<NoteErrorCode>> {
  const read = readNoteName(text);
  if (!read.ok) return read;
  const { value, end } = read.value;
  if (end < text.length)
    return textError('accidental', text, end, text.length, ACCIDENTAL_EXPECTED);
  return ok(value);
}

/** `F#`, `Bbb` or, in style `sign`, `F♯`, `B𝄫`. */
export const makeNoteName = (name: NoteName, style: AccidentalStyle = 'ascii'): string =>
  name.letter + makeAccidentals(name.alter, style);

/**
 * Reads a scientific pitch: a note name and an octave from -1 to 9, `F#4`, `Bb-1`. The octave
 * belongs to the letter: `Cb4` sounds as B3. Error codes: `letter`, `accidental`, `octave`.
 */
export function parsePitch(text: string): Result<Pitch, TextError<NoteErrorCode>> {
  const read = readNoteName(text);
  if (!read.ok) return read;
  const { value, end } = read.value;
  const octave = text.slice(end);
  if (/^(?:-1|\d)$/.test(octave)) return ok({ ...value, octave: Number(octave) });
  return textError('octave', text, end, text.length, ['an octave from -1 to 9']);
}

/** `F#4`, `Bbb3`; octave as the letter has it. */
export const makePitch = (pitch: Pitch, style: AccidentalStyle = 'ascii'): string =>
  makeNoteName(pitch, style) + pitch.octave;

/** What a spelled note sounds as, regardless of octave: C♭ and B are both 11. */
export const pitchClassOf = (name: NoteName): PitchClass =>
  pitchClass(NATURALS[name.letter] + name.alter);

/** The note number of a pitch; C4 = 60 (J. Wolfe, UNSW, "Note names, MIDI numbers and frequencies"). */
export const midiOf = (pitch: Pitch): Midi =>
  midi(12 * (pitch.octave + 1) + NATURALS[pitch.letter] + pitch.alter);

/** `name` in the octave in which it sounds at `sounding`. Throws a RangeError if it cannot sound there. */
export function pitchAt(name: NoteName, sounding: Midi): Pitch {
  const octave = (sounding - NATURALS[name.letter] - name.alter) / 12 - 1;
  if (!Number.isInteger(octave)) {
    throw new RangeError(`${makeNoteName(name)} cannot sound at note number ${sounding}`);
  }
  return { letter: name.letter, alter: name.alter, octave };
}

/** Hz in equal temperament, A4 = 440 Hz (ISO 16): 440·2^((n−69)/12). */
export const frequencyOf = (note: Midi): number => A4_HERTZ * 2 ** ((note - A4_MIDI) / 12);

const PLAIN: readonly NoteName[] = [
  { letter: 'C', alter: 0 },
  { letter: 'C', alter: 1 },
  { letter: 'D', alter: 0 },
  { letter: 'E', alter: -1 },
  { letter: 'E', alter: 0 },
  { letter: 'F', alter: 0 },
  { letter: 'F', alter: 1 },
  { letter: 'G', alter: 0 },
  { letter: 'A', alter: -1 },
  { letter: 'A', alter: 0 },
  { letter: 'B', alter: -1 },
  { letter: 'B', alter: 0 },
];

function blackKey(pc: PitchClass, direction: number): NoteName {
  const letter = LETTERS.find((l) => NATURALS[l] === pitchClass(pc - direction)) ?? 'C';
  return { letter, alter: direction };
}

/**
 * The simplest spelling: never E♯, C♭ or a double accidental. A name keeps its direction (G♭ stays
 * G♭, E𝄪 becomes F♯); a bare pitch class takes C♯ E♭ F♯ A♭ B♭. A name that is simple already is
 * returned as it is (same reference).
 */
export function plainName(note: PitchClass | NoteName): NoteName {
  const pc = typeof note === 'number' ? note : pitchClassOf(note);
  const common = PLAIN[pc] ?? { letter: 'C', alter: 0 };
  if (typeof note === 'number') return common;
  const plain = common.alter === 0 ? common : blackKey(pc, Math.sign(note.alter) || common.alter);
  return plain.letter === note.letter && plain.alter === note.alter ? note : plain;
}

export const sameNote = (a: NoteName, b: NoteName): boolean =>
  a.letter === b.letter && a.alter === b.alter;
