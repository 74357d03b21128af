/** Keys: reading, writing, signatures, steps. */
import {
  type AccidentalStyle,
  letterAbove,
  makeNoteName,
  naturalOf,
  parseNoteName,
  pitchClass,
  pitchClassOf,
  sameNote,
} from './notes.ts';
import { ok, type Result, type TextError } from './result.ts';
import { textError } from './text-error.ts';
import {
  type Key,
  LETTERS,
  type Letter,
  type Mode,
  type NoteName,
  type PitchClass,
} from './types.ts';

export type KeyErrorCode = 'tonic' | 'mode';

/** Semitones of the scale steps; minor is the natural minor. */
export const SCALES: Readonly<Record<Mode, readonly number[]>> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  minor: [0, 2, 3, 5, 7, 8, 10],
};

const MODE_WORDS: Readonly<Record<string, Mode>> = {
  '': 'major',
  maj: 'major',
  major: 'major',
  dur: 'major',
  m: 'minor',
  min: 'minor',
  '-': 'minor',
  minor: 'minor',
  moll: 'minor',
};

const KEY = /^\s*([A-Ga-g])([#b♯♭𝄪𝄫x]*)\s*-?\s*(.*?)\s*$/su;
const TONIC_EXPECTED = ['a tonic from A to G, with # or b'];
const MODE_EXPECTED = ['major', 'minor', 'm'];

const modeOf = (word: string): Mode | undefined => {
  if (word === 'M') return 'major';
  const lower = word.toLowerCase();
  return Object.hasOwn(MODE_WORDS, lower) ? MODE_WORDS[lower] : undefined;
};

/**
 * Reads `Am`, `F# minor`, `E♭`, `Bb major`, `c minor`. A small letter needs the mode's word beside
 * it. Error codes: `tonic`, `mode`.
 */
export function parseKey(text: string): Result<Key, TextError<KeyErrorCode>> {
  const [, letter, accidentals, word] = KEY.exec(text) ?? [];
  const tonic = parseNoteName(`${letter?.toUpperCase()}${accidentals}`);
  const small = letter !== letter?.toUpperCase() && word === '';
  if (letter === undefined || word === undefined || !tonic.ok || Math.abs(tonic.value.alter) > 2) {
    return textError('tonic', text, 0, text.length, TONIC_EXPECTED);
  }
  if (small) {
    return textError('tonic', text, 0, text.length, TONIC_EXPECTED, makeNoteName(tonic.value));
  }
  const mode = modeOf(word);
  if (mode !== undefined) return ok({ tonic: tonic.value, mode });
  const at = text.lastIndexOf(word);
  return textError('mode', text, at, at + word.length, MODE_EXPECTED);
}

/** `A minor`, `E♭ major`; in style `ascii` `Eb major`. */
export const makeKey = (key: Key, style: AccidentalStyle = 'sign'): string =>
  `${makeNoteName(key.tonic, style)} ${key.mode}`;

export const sameKey = (a: Key, b: Key): boolean => a.mode === b.mode && sameNote(a.tonic, b.tonic);

const FIFTHS: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/** Place on the line of fifths: F -1, C 0, G 1, … F♯ 6, B♭ -2. */
export const fifthsOf = (name: NoteName): number =>
  FIFTHS.indexOf(name.letter) - 1 + 7 * name.alter;

/** Sharps in the key signature, flats negative: D major 2, C minor -3. */
export const sharpsOf = (key: Key): number => fifthsOf(key.tonic) - (key.mode === 'minor' ? 3 : 0);

const MOST_ACCIDENTALS = 7;

/** Every key at a pitch class that has a signature, of at most seven sharps or flats. */
export function keysAt(pc: PitchClass, mode: Mode): readonly Key[] {
  const names = LETTERS.flatMap((letter) =>
    [-1, 0, 1].map((alter): NoteName => ({ letter, alter })),
  );
  return names
    .filter((tonic) => pitchClassOf(tonic) === pc)
    .map((tonic): Key => ({ tonic, mode }))
    .filter((key) => Math.abs(sharpsOf(key)) <= MOST_ACCIDENTALS);
}

/** The scale's notes from the tonic up, a letter each; of minor the natural form. */
export function scaleNotes(key: Key): readonly NoteName[] {
  const tonic = naturalOf(key.tonic.letter) + key.tonic.alter;
  return SCALES[key.mode].map((semitones, step) => {
    const letter = letterAbove(key.tonic.letter, step);
    const octave = LETTERS.indexOf(key.tonic.letter) + step >= LETTERS.length ? 12 : 0;
    return { letter, alter: tonic + semitones - naturalOf(letter) - octave };
  });
}

const byFewest =
  (towards: number) =>
  (a: Key, b: Key): number =>
    Math.abs(sharpsOf(a)) - Math.abs(sharpsOf(b)) || (sharpsOf(b) - sharpsOf(a)) * towards;

/**
 * The key `semitones` above (negative: below), in the spelling with the fewest accidentals; F♯ and
 * G♭ follow the side of the key one comes from, or else the direction of the step. Whole octaves
 * give the same key (same reference).
 */
export function stepKey(key: Key, semitones: number): Key {
  const pc = pitchClass(pitchClassOf(key.tonic) + semitones);
  if (pc === pitchClassOf(key.tonic)) return key;
  const towards = Math.sign(sharpsOf(key)) || Math.sign(semitones);
  return keysAt(pc, key.mode).toSorted(byFewest(towards))[0] ?? key;
}
