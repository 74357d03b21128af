import { stringNumber } from './places.ts';
import type { Grip, StringNumber } from './types.ts';

/** Strings between the outermost of a grip that must not sound, thickest first. */
export function mutedWithin({ tones }: Grip): readonly StringNumber[] {
  return tones
    .flatMap(({ string }, i) => {
      const next = tones[i + 1]?.string ?? string + 1;
      return Array.from({ length: next - string - 1 }, (_, k) => stringNumber(string + 1 + k));
    })
    .reverse();
}
