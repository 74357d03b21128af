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

/** Tones of the form's grip that the hand has without moving, as a share 0 … 1. */
export const shareUnder = ({ under, of }: FormAtHand): number => (of === 0 ? 0 : under / of);
