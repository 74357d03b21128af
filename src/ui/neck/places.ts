import type { FormAtHand, Reading } from '#neck';
import { remembered } from './remembered.ts';

/** One copy of a form along the neck, as a bracket over the strings. Frets from the nut. */
export interface Bracket {
  readonly key: string;
  /** Its number from the nut up. What is drawn is kept by it, so that a new chord moves the brackets. */
  readonly order: number;
  readonly name: string;
  readonly anchor: number;
  /** Lowest and highest fret of the grip; an open chord begins at 0. */
  readonly first: number;
  readonly last: number;
  /** Row of the bracket, 0 next to the strings. */
  readonly level: number;
  /** Whether a hand can grip the chord there. */
  readonly playable: boolean;
}

function extentOf(place: FormAtHand): { readonly first: number; readonly last: number } {
  const frets = (place.grip?.tones ?? []).map((tone) => Number(tone.fret));
  if (frets.length === 0) return { first: place.anchor, last: place.anchor + 3 };
  return { first: Math.min(...frets), last: Math.max(...frets) };
}

const keyOf = ({ form, anchor }: FormAtHand): string => `${form.name}:${anchor}`;

/** The key of the bracket of the chosen form. */
export const bracketKey = (reading: Reading | undefined): string | undefined =>
  reading?.chosen && keyOf(reading.chosen);

const overlap = (a: Bracket, first: number): boolean => a.last >= first;

/** The lowest row on which nothing reaches `first`; three rows hold the forms of any chord. */
function freeLevel(placed: readonly Bracket[], first: number, levels: number): number {
  for (let level = 0; level < levels; level += 1) {
    if (!placed.some((bracket) => bracket.level === level && overlap(bracket, first))) return level;
  }
  return placed.length % levels;
}

/** Brackets for every place of every form, from the nut up, on as many rows as `levels`. */
export const brackets = remembered((places: readonly FormAtHand[], levels: number) => {
  const placed: Bracket[] = [];
  const inOrder = [...places].sort((a, b) => extentOf(a).first - extentOf(b).first);
  for (const place of inOrder) {
    const { first, last } = extentOf(place);
    const level = freeLevel(placed, first, levels);
    placed.push({
      key: keyOf(place),
      order: placed.length,
      name: place.form.name,
      anchor: place.anchor,
      first,
      last,
      level,
      playable: place.grip !== undefined,
    });
  }
  return placed as readonly Bracket[];
});
