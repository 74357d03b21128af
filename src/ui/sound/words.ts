/** What the sound's settings are called. */
import type { Pedal } from '#lesson';
import type { StudyName } from '#line';
import type { FeelName, GuitarSound, PartName } from '#sound';

type Options<T extends string> = readonly (readonly [value: T, name: string])[];

export const STUDY_OPTIONS: Options<StudyName> = [
  ['none', 'backing only'],
  ['strum', 'grips'],
  ['singles', 'tone by tone'],
  ['connect', 'what leads on'],
];

/** What one hears of the line, in one sentence. */
export const STUDY_HINTS: Readonly<Record<StudyName, string>> = {
  none: 'The line is yours: nothing is played over the backing.',
  strum: 'The grip under the hand, struck once for every chord.',
  singles: 'The tones of the grip one after the other, up and down in eighths.',
  connect: 'Into every change one tone of this chord, and the tone of the next that it leads to.',
};

export const FEEL_OPTIONS: Options<FeelName> = [
  ['straight', 'straight'],
  ['shuffle', 'shuffle'],
  ['ballad', 'ballad'],
  ['sixteen', 'sixteen'],
];

export const GUITAR_OPTIONS: Options<GuitarSound> = [
  ['clean', 'clean'],
  ['driven', 'driven'],
];

export const PEDAL_OPTIONS: Options<Pedal> = [
  ['plays', 'starts, stops, goes back'],
  ['steps', 'steps through the chords'],
];

export const PART_WORDS: Readonly<Record<PartName, string>> = {
  line: 'line',
  comp: 'chords',
  bass: 'bass',
  drums: 'drums',
  click: 'click',
  count: 'count-in',
};

const STEPS = ['', 'a half step', 'a whole step'];

/** How much higher or lower everything sounds, in words. */
export function soundingInWords(semitones: number): string {
  if (semitones === 0) return 'as tuned';
  const far = Math.abs(semitones);
  return `${STEPS[far] ?? `${far} half steps`} ${semitones < 0 ? 'down' : 'up'}`;
}

const SHORT_STEPS = ['', '½ step', 'whole step'];

/** The same for a line of few words: `½ step down`. */
export function stepsInWords(semitones: number): string {
  const far = Math.abs(semitones);
  return `${SHORT_STEPS[far] ?? `${far} half steps`} ${semitones < 0 ? 'down' : 'up'}`;
}

/** What the keys of a pedal do on the practice screen. */
export const PEDAL_DOES: Readonly<Record<Pedal, string>> = {
  plays: 'Pedal: on plays and stops, back starts over',
  steps: 'Pedal: steps on and back through the chords',
};

export const percent = (share: number): string => `${Math.round(share * 100)} %`;
