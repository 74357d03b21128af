import { type Chord, type Degree, parseChord, sameDegree } from '#theory';
import { formPlaces } from './grips.ts';
import type { Form, Grip, GripTone, Instrument, StringNumber } from './types.ts';

/** What one string does when a form is turned; a fret is absent where the string is not played. */
export interface TurnedString {
  readonly string: StringNumber;
  readonly from?: GripTone;
  readonly to?: GripTone;
}

/** A form of one chord turned into another quality on the same root. */
export interface Turned {
  readonly chord: Chord;
  readonly grip: Grip;
  /** The strings that change, thinnest first; all others keep still. */
  readonly moves: readonly TurnedString[];
}

/** The chord's root and bass with another quality; the chord itself when it is that already. */
export function turnChord(chord: Chord, suffix: string): Chord {
  const turned = parseChord(`C${suffix}`);
  if (!turned.ok) throw new Error(`no such quality: ${suffix}`);
  const same =
    turned.value.tones.length === chord.tones.length &&
    turned.value.tones.every((tone, i) => sameDegree(tone, chord.tones[i] ?? tone));
  return same ? chord : { ...chord, tones: turned.value.tones };
}

const sameTone = (a: GripTone | undefined, b: GripTone | undefined): boolean =>
  a?.fret === b?.fret && sameMaybe(a?.degree, b?.degree);

const sameMaybe = (a: Degree | undefined, b: Degree | undefined): boolean =>
  a === undefined || b === undefined ? a === b : sameDegree(a, b);

function movesBetween(before: Grip, after: Grip): readonly TurnedString[] {
  const strings = [...new Set([...before.tones, ...after.tones].map((tone) => tone.string))];
  return strings
    .sort((a, b) => a - b)
    .flatMap((string) => {
      const from = before.tones.find((tone) => tone.string === string);
      const to = after.tones.find((tone) => tone.string === string);
      if (sameTone(from, to)) return [];
      return [{ string, ...(from && { from }), ...(to && { to }) }];
    });
}

function gripIn(chord: Chord, form: Form, anchor: number, on: Instrument): Grip | undefined {
  const places = formPlaces(chord, on);
  return places.find((place) => place.form === form && place.anchor === anchor)?.grip;
}

/**
 * A form at its place turned into another quality: which tone moves where, everything else keeping
 * still. Undefined when four fingers cannot hold the new chord in this form.
 */
export function turnForm(
  chord: Chord,
  grip: Grip,
  suffix: string,
  instrument: Instrument,
): Turned | undefined {
  const turned = turnChord(chord, suffix);
  const after = gripIn(turned, grip.form, grip.anchor, instrument);
  if (after === undefined) return undefined;
  return { chord: turned, grip: after, moves: movesBetween(grip, after) };
}
