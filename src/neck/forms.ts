import { midiOf, type NoteName, pitchClass, pitchClassOf, plainName } from '#theory';
import type { Frets } from './fingers.ts';
import { openShapes } from './open-shapes.ts';
import type { Form, Instrument } from './types.ts';

/** Semitones between neighbouring strings of a standard guitar, from string 1 down. */
const STANDARD_STEPS = [5, 4, 5, 5, 5] as const;
const STANDARD_FIRST = 64;

/**
 * The five open chords of standard tuning, strings 6 to 1 (common practice), in the order in which
 * they follow each other up the neck.
 */
const OPEN_CHORDS = [
  { letter: 'C', grip: 'x32010' },
  { letter: 'A', grip: 'x02220' },
  { letter: 'G', grip: '320003' },
  { letter: 'E', grip: '022100' },
  { letter: 'D', grip: 'xx0232' },
] as const;

const readGrip = (grip: string): Frets =>
  [...grip].reverse().map((sign) => (sign === 'x' ? null : Number(sign)));

/** How many strings thinner than the standard six lie above them; undefined in any other tuning. */
function standardAt(midis: readonly number[]): number | undefined {
  for (let skip = 0; skip + 6 <= midis.length; skip++) {
    const fits = STANDARD_STEPS.every(
      (step, i) => (midis[skip + i] ?? 0) - (midis[skip + i + 1] ?? 0) === step,
    );
    if (fits) return skip;
  }
  return undefined;
}

const NATURAL = { C: 0, A: 9, G: 7, E: 4, D: 2 } as const;

function transposedRoot(letter: keyof typeof NATURAL, semitones: number): NoteName {
  if (semitones % 12 === 0) return { letter, alter: 0 };
  return plainName(pitchClass(NATURAL[letter] + semitones));
}

function standardForms(midis: readonly number[], skip: number): readonly Form[] {
  const shift = (midis[skip] ?? STANDARD_FIRST) - STANDARD_FIRST;
  const around = (inner: Frets): Frets =>
    midis.map((_, i) => (i < skip || i >= skip + 6 ? null : (inner[i - skip] ?? null)));
  return OPEN_CHORDS.map(({ letter, grip }) => ({
    name: letter,
    root: transposedRoot(letter, shift),
    frets: around(readGrip(grip)),
  }));
}

const cache = new WeakMap<Instrument, readonly Form[]>();

function computeForms(instrument: Instrument): readonly Form[] {
  const midis = instrument.strings.map((string) => midiOf(string.pitch));
  const skip = standardAt(midis);
  const forms = skip === undefined ? openShapes(midis) : standardForms(midis, skip);
  return [...forms, ...(instrument.ownForms ?? [])];
}

/**
 * The forms of an instrument: C A G E D wherever six neighbouring strings keep the intervals of
 * standard tuning, at whatever pitch; in any other tuning the most playable open major triads of
 * that tuning, named by their roots. A player's own forms follow.
 */
export function formsOf(instrument: Instrument): readonly Form[] {
  const known = cache.get(instrument);
  if (known !== undefined) return known;
  const forms = computeForms(instrument);
  cache.set(instrument, forms);
  return forms;
}

/** Lowest fret at which a form's open strings come to lie for a root, at or above the capo. */
export function lowestAnchor(form: Form, root: NoteName, capo: number): number {
  const anchor = pitchClass(pitchClassOf(root) - pitchClassOf(form.root));
  return anchor + 12 * Math.max(0, Math.ceil((capo - anchor) / 12));
}
