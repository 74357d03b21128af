import { samePlace, stringNumber } from './places.ts';
import type {
  FormAtHand,
  FormReason,
  Grip,
  Instrument,
  Reading,
  StringNumber,
  Tone,
} from './types.ts';

/** Strings of a grip that hold the root, thickest first. */
const rootsOf = ({ tones }: Grip): readonly StringNumber[] =>
  tones
    .filter(({ degree }) => degree.number === 1)
    .map(({ string }) => string)
    .reverse();

/**
 * Why a place of the neck bears a form's name: how far up the open shape has been moved, whether a
 * flat finger lies where that has the nut, and which strings hold the root.
 */
export function formReason({ anchor, grip }: FormAtHand, { capo }: Instrument): FormReason {
  return {
    roots: grip ? rootsOf(grip) : [],
    up: anchor - capo,
    barre: anchor > capo && grip !== undefined && grip.barres.some(({ fret }) => fret === anchor),
  };
}

/** Strings between the outermost of a grip that must not sound, thickest first. */
export function mutedWithin({ tones }: Grip): readonly StringNumber[] {
  return tones
    .flatMap(({ string }, i) => {
      const next = tones[i + 1]?.string ?? string + 1;
      return Array.from({ length: next - string - 1 }, (_, k) => stringNumber(string + 1 + k));
    })
    .reverse();
}

/** The bass that the symbol names, where the hand cannot come to its place in the grip. */
export function bassBeyondHand({ chord, chosen, tones }: Reading): Tone | undefined {
  const lowest = chord.bass && chosen?.grip?.tones.at(-1);
  const bass = lowest && tones.find((tone) => samePlace(tone, lowest));
  return bass?.reach === 'out' || bass?.reach === 'bend' ? bass : undefined;
}

/** Another form's grip that is place for place the chosen one's. */
export function sameGripAs({ forms, chosen }: Reading): FormAtHand['overlaps'][number] | undefined {
  return chosen?.overlaps.find(
    ({ form, shared }) =>
      shared.length === chosen.of &&
      forms.some((other) => other.form === form && other.of === shared.length),
  );
}

/** Frets from the index within which a form without a grip counts as lying under the hand. */
const HERE = 1;

/** The form that lies under the hand although no hand can grip the chord in it. */
export const formWithoutGrip = ({ forms, chosen, position }: Reading): FormAtHand | undefined =>
  forms.find(
    (at) => !at.grip && at.form !== chosen?.form && Math.abs(at.anchor - position) <= HERE,
  );
