import type { Place, Reading, Tone } from './types.ts';

/** One place on the neck as two readings see it; absent where only one of them has a tone there. */
export interface ComparedPlace extends Place {
  readonly first?: Tone;
  readonly second?: Tone;
}

const keyOf = (place: Place): number => place.string * 100 + place.fret;

/** Only what the shape holds, or every chord tone. Colour tones are never compared. */
export type CompareWhat = 'shapes' | 'tones';

function tonesOf(reading: Reading, what: CompareWhat): readonly Tone[] {
  return reading.tones.filter((tone) =>
    what === 'shapes' ? tone.kind === 'shape' : tone.kind !== 'colour',
  );
}

/**
 * Two forms or two chords laid over each other: every place that either of them has, thinnest
 * string first, from the nut up. Places with both `first` and `second` are what they share.
 */
export function compareReadings(
  first: Reading,
  second: Reading,
  what: CompareWhat,
): readonly ComparedPlace[] {
  const places = new Map<number, ComparedPlace>();
  for (const tone of tonesOf(first, what)) {
    places.set(keyOf(tone), { string: tone.string, fret: tone.fret, first: tone });
  }
  for (const tone of tonesOf(second, what)) {
    const known = places.get(keyOf(tone));
    const place = known ?? { string: tone.string, fret: tone.fret };
    places.set(keyOf(tone), { ...place, second: tone });
  }
  return [...places.entries()].sort(([a], [b]) => a - b).map(([, place]) => place);
}
