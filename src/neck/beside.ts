import { copyAt, type Hand } from './at-hand.ts';
import { gripWidth, likeness } from './grips.ts';
import { samePlace, stringNumber } from './places.ts';
import { spanLength } from './reach.ts';
import type { FormAtHand, GripTone, Reading, StringNumber, Tone } from './types.ts';

/** The bass that the symbol names, where the hand cannot come to its place in the grip. */
export function bassBeyondHand({ chord, chosen, tones }: Reading): Tone | undefined {
  const lowest = chord.bass && chosen?.grip?.tones.at(-1);
  const bass = lowest && tones.find((tone) => samePlace(tone, lowest));
  return bass?.reach === 'out' || bass?.reach === 'bend' ? bass : undefined;
}

/** Less than any ruler shows, mm. */
const NEARLY = 1e-6;

/** Whether a form's grip is wider than this player's hand comes apart: not to be held as a whole. */
export function isBeyondSpan(at: FormAtHand | undefined, { instrument, span }: Hand): boolean {
  if (at?.grip === undefined) return false;
  return gripWidth(at.grip, instrument) > spanLength(span, instrument.scale) + NEARLY;
}

/** What sets the chosen grip apart from its form's open shape, lowest string first. */
export interface BesideShape {
  /** Tones elsewhere than in the shape. */
  readonly changed: readonly GripTone[];
  /** Tones on strings that the shape does not play. */
  readonly added: readonly GripTone[];
  /** Strings of the shape above or below the grip. */
  readonly silent: readonly StringNumber[];
}

export function besideShape({ chosen }: Reading): BesideShape {
  const grip = chosen?.grip;
  if (grip === undefined || grip.form.own) return { changed: [], added: [], silent: [] };
  const { form, anchor, tones } = grip;
  const shapeAt = (string: number) => form.frets[string - 1] ?? null;
  const [first = 0, last = 0] = [tones[0]?.string, tones.at(-1)?.string];
  const strings = form.frets.map((_, i) => stringNumber(i + 1)).reverse();
  const apart = [...tones]
    .reverse()
    .filter(({ string, fret }) => shapeAt(string) !== fret - anchor);
  return {
    changed: apart.filter(({ string }) => shapeAt(string) !== null),
    added: apart.filter(({ string }) => shapeAt(string) === null),
    silent: strings.filter((s) => (s < first || s > last) && shapeAt(s) !== null),
  };
}

/**
 * What a grip of which half or less lies as in the open shape still has of that, lowest string first,
 * beside its roots; undefined of any other.
 */
export function keptOfShape({ chosen }: Reading): readonly GripTone[] | undefined {
  const grip = chosen?.grip;
  if (grip === undefined || grip.form.own || likeness(grip) * 2 > grip.tones.length)
    return undefined;
  const { form, anchor, tones } = grip;
  return tones
    .filter(
      ({ string, fret, degree }) => degree.number !== 1 && form.frets[string - 1] === fret - anchor,
    )
    .reverse();
}

/** Whether the lowest string of a shape or a grip, by frets from string 1, holds its highest or lowest fret. */
function extremeOf(frets: readonly number[]): 'highest' | 'lowest' | undefined {
  const root = frets.at(-1) ?? 0;
  if (frets.every((f) => f <= root)) return 'highest';
  return frets.every((f) => f >= root) ? 'lowest' : undefined;
}

/**
 * Whether the lowest tone of the chosen grip lies as in the open shape: at the highest fret (C and G) or at
 * the lowest (A, E and D).
 */
export function rootExtreme({ chosen }: Reading): 'highest' | 'lowest' | undefined {
  const grip = chosen?.grip;
  const extreme = grip && extremeOf(grip.tones.map(({ fret }) => fret));
  return extreme === extremeOf(grip?.form.frets.flatMap((f) => f ?? []) ?? [])
    ? extreme
    : undefined;
}

/** Frets that a hand is told to move; further away another form lies under it. */
const FEW = 3;

/** The nearest position, a few frets off, at which the hand has all of the chosen grip. */
export function positionForAll({ chord, chosen }: Reading, hand: Hand): number | undefined {
  if (chosen === undefined || chosen.under === chosen.of) return undefined;
  const { form, anchor, of } = chosen;
  for (let by = 1; by <= FEW; by++) {
    for (const position of [hand.position + by, hand.position - by]) {
      const there = { ...hand, position };
      const copy = position > 0 ? copyAt(chord, there, form.name, anchor) : undefined;
      if (copy?.grip === chosen.grip && copy?.under === of) return position;
    }
  }
  return undefined;
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
