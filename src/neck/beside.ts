import type { Hand } from './at-hand.ts';
import { gripWidth, likeness } from './grips.ts';
import { samePlace } from './places.ts';
import { spanLength } from './reach.ts';
import type { FormAtHand, Reading, Tone } from './types.ts';

/** The bass that the symbol names, where the hand cannot come to its place in the grip. */
export function bassBeyondHand({ chord, chosen, tones }: Reading): Tone | undefined {
  const lowest = chord.bass && chosen?.grip?.tones.at(-1);
  const bass = lowest && tones.find((tone) => samePlace(tone, lowest));
  return bass?.reach === 'out' || bass?.reach === 'bend' ? bass : undefined;
}

/** Less than any ruler shows, mm. */
const NEARLY = 1e-6;

/** Whether the chosen grip is wider than this player's hand comes apart: not to be held as a whole. */
export function isBeyondSpan({ chosen }: Reading, { instrument, span }: Hand): boolean {
  if (chosen?.grip === undefined) return false;
  return gripWidth(chosen.grip, instrument) > spanLength(span, instrument.scale) + NEARLY;
}

/** Whether most of a chosen grip's tones lie elsewhere than in its form's open shape. */
export function isMostlyMoved({ chosen }: Reading): boolean {
  const grip = chosen?.grip;
  if (grip === undefined || grip.form.own) return false;
  return likeness(grip) * 2 < grip.tones.length;
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
