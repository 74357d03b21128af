import type { FormAtHand } from '#neck';
import { roman } from './roman.ts';

/** The lowest fret of a form's grip, 0 for one with open strings. */
export function lowestFret({ grip, anchor }: FormAtHand): number {
  const frets = (grip?.tones ?? []).map((tone) => Number(tone.fret));
  return frets.length === 0 ? anchor : Math.min(...frets);
}

/** Where a form lies: `VII`, or `open`. */
export function formPlace(form: FormAtHand): string {
  const lowest = lowestFret(form);
  return lowest === 0 ? 'open' : roman(lowest);
}

/** `at VII`, or `open`. */
export function whereIs(form: FormAtHand): string {
  const place = formPlace(form);
  return place === 'open' ? place : `at ${place}`;
}

/** Tones of the form's grip that the hand has without moving, as a share 0 … 1. */
export const shareUnder = ({ under, of }: FormAtHand): number => (of === 0 ? 0 : under / of);

const SIGNS: Readonly<Record<string, string>> = { '#': '♯', b: '♭' };

/** A form's name for people: `Eb` is `E♭`. A name that is no note (a player's own) stays as it is. */
export const formName = ({ name }: { readonly name: string }): string =>
  /^[A-G](?:##?|bb?)$/.test(name) ? name.replace(/[#b]/g, (sign) => SIGNS[sign] ?? sign) : name;

/** How much of a form's grip the hand has, as one reads it: `6 of 6 places`. */
export const shareInWords = ({ under, of }: FormAtHand): string =>
  `${under} of ${of} ${of === 1 ? 'place' : 'places'}`;

/** `string 5`, `strings 6, 4 and 1`. */
export const stringsInWords = (strings: readonly number[]): string =>
  (strings.length > 1 ? `strings ${strings.slice(0, -1).join(', ')} and ` : 'string ') +
  strings[strings.length - 1];
